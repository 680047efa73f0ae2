package org.gaugebench.core.saved;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** The byte table of {@code docs/saved-state.md} is the table of fields, row by row. */
class SavedStateDocumentTest {
    @Test
    void theDocumentDrawsEveryByteOfThePayload() throws IOException {
        List<String> expected = new ArrayList<>();
        for (SavedField field : SavedField.values()) {
            expected.add(
                    String.format(
                            Locale.ROOT,
                            "| %d | %d | `%s` | %s | %d |",
                            SavedStateLayout.offsetOf(field),
                            field.sizeBytes(),
                            field.name(),
                            field.unit(),
                            field.sinceVersion()));
        }
        List<String> rows =
                Files.readAllLines(Path.of("docs", "saved-state.md")).stream()
                        .filter(line -> line.matches("\\| \\d+ \\| \\d+ \\| `[A-Z0-9_]+` .*"))
                        .map(SavedStateDocumentTest::firstFiveColumns)
                        .toList();
        assertEquals(String.join("\n", expected), String.join("\n", rows));
    }

    @Test
    void theDocumentTellsTheRangeOfEachField() throws IOException {
        List<String> expected = new ArrayList<>();
        for (SavedField field : SavedField.values()) {
            expected.add("| `%s` | %d | %d |".formatted(field, field.lowest(), field.highest()));
        }
        List<String> rows =
                Files.readAllLines(Path.of("docs", "saved-state.md")).stream()
                        .filter(line -> line.matches("\\| `[A-Z0-9_]+` \\| -?\\d+ \\| .*"))
                        .map(row -> row.replaceFirst("^((?:\\|[^|]*){3}\\|).*", "$1"))
                        .toList();
        assertEquals(String.join("\n", expected), String.join("\n", rows));
    }

    private static String firstFiveColumns(String row) {
        int end = 0;
        for (int column = 0; column < 6; column++) {
            end = row.indexOf('|', end) + 1;
        }
        return row.substring(0, end);
    }
}
