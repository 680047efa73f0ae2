package org.gaugebench.sim.cli;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.gaugebench.sim.report.Requirement;
import org.gaugebench.sim.units.Texts;

/** Reads the user's own requirements: a CSV file, a number and a text in each row. */
final class RequirementsFile {
    private static final String NUMBER = "[A-Za-z0-9][A-Za-z0-9._/-]{0,63}";
    private static final String BY_SEMICOLON = "(?s)\\s*\"?" + NUMBER + "\"? *;.*";
    private static final String EXAMPLE = "; an example is REQ-7,The reading never jumps.";

    private final Path path;
    private final List<Requirement> requirements = new ArrayList<>();
    private final Set<String> numbers = new HashSet<>();
    private final List<String> problems = new ArrayList<>();

    private RequirementsFile(Path path) {
        this.path = path;
    }

    /**
     * Reads the file. A first row whose first cell is {@code number} is a header. Where a semicolon
     * ends the first cell, semicolons part all of them: no number can hold one, and table programs
     * of many countries write nothing else.
     *
     * @throws InputException with every problem of the file
     */
    static List<Requirement> read(Path path) throws InputException {
        return new RequirementsFile(path).readAll();
    }

    private List<Requirement> readAll() throws InputException {
        try (CsvReader<CsvRecord> csv = reader()) {
            boolean first = true;
            for (CsvRecord row : csv) {
                if (!first || !row.getField(0).strip().equalsIgnoreCase("number")) {
                    add(row);
                }
                first = false;
            }
        } catch (IOException | UncheckedIOException e) {
            throw new InputException(
                    "--requirements: cannot read %s: %s; expected a CSV file in UTF-8%s"
                            .formatted(path, FileTrouble.words(e), EXAMPLE));
        } catch (CsvParseException e) {
            throw new InputException(path + ": is not well-formed CSV: " + e.getMessage());
        }
        if (requirements.isEmpty() && problems.isEmpty()) {
            problems.add(path + ":1:1: no requirement in this file" + EXAMPLE);
        }
        if (!problems.isEmpty()) {
            throw new InputException(String.join(System.lineSeparator(), problems));
        }
        return requirements;
    }

    private CsvReader<CsvRecord> reader() throws IOException {
        if (!Files.isRegularFile(path)) {
            throw new IOException(Files.exists(path) ? "it is not a file" : "it does not exist");
        }
        String text = Files.readString(path);
        if (text.startsWith("\uFEFF")) {
            text = text.substring(1);
        }
        return CsvReader.builder()
                .fieldSeparator(text.matches(BY_SEMICOLON) ? ';' : ',')
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .ofCsvRecord(text);
    }

    private void add(CsvRecord row) {
        String number = row.getField(0).strip();
        String place = path + ":" + row.getStartingLineNumber() + ":1: ";
        if (!number.matches(NUMBER)) {
            problems.add(
                    "%sexpected a number of letters, digits and . _ / -, at most 64, found '%s'%s"
                            .formatted(place, Texts.shortened(number), EXAMPLE));
        } else if (!numbers.add(number)) {
            problems.add(place + "'" + number + "' stands twice");
        } else {
            String text = row.getFieldCount() > 1 ? row.getField(1).strip() : "";
            requirements.add(new Requirement(number, text));
        }
    }
}
