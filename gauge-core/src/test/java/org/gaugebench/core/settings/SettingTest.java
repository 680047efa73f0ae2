package org.gaugebench.core.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The one table of settings, and its copy in the documentation. */
class SettingTest {
    private static final Path RULES = Path.of("docs", "rules.md");
    private static final String BEGIN = "<!-- settings: begin -->\n";
    private static final String END = "<!-- settings: end -->";

    /** With {@code -Dgolden.update=true} the documentation is rewritten instead. */
    @Test
    void theTableInTheRulesIsThisTable() throws IOException {
        String page = Files.readString(RULES, StandardCharsets.UTF_8);
        int begin = page.indexOf(BEGIN) + BEGIN.length();
        int end = page.indexOf(END);
        assertTrue(begin >= BEGIN.length() && end >= begin, "marks of the table are missing");
        if (Boolean.getBoolean("golden.update")) {
            page = page.substring(0, begin) + table() + page.substring(end);
            Files.writeString(RULES, page, StandardCharsets.UTF_8);
            end = page.indexOf(END);
        }
        assertEquals(table(), page.substring(begin, end));
    }

    private static String table() {
        StringBuilder table =
                new StringBuilder("| setting | unit | from | to | default | meaning |\n");
        table.append("|---|---|---|---|---|---|\n");
        for (Setting setting : Setting.values()) {
            table.append("| `").append(setting.key()).append("` | ").append(setting.unit());
            table.append(" | ").append(setting.minimum()).append(" | ").append(setting.maximum());
            table.append(" | ").append(setting.defaultValue());
            table.append(" | ").append(setting.meaning()).append(" |\n");
        }
        return table.toString();
    }

    @ParameterizedTest
    @EnumSource(Setting.class)
    void everyRowIsWellFormed(Setting setting) {
        assertTrue(setting.minimum() <= setting.defaultValue(), setting.key());
        assertTrue(setting.defaultValue() <= setting.maximum(), setting.key());
        assertTrue(setting.key().matches("[a-z]+(-([a-z]+|[0-9]+))*"), setting.key());
        assertTrue(setting.meaning().length() > 10 && !setting.meaning().endsWith("."));
    }

    @Test
    void noKeyStandsTwice() {
        Set<String> keys = new HashSet<>();
        for (Setting setting : Setting.values()) {
            assertTrue(keys.add(setting.key()), setting.key());
        }
    }
}
