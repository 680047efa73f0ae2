package org.gaugebench.sim.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * Something that a scenario can be evidence for.
 *
 * @param number as scenarios name it in {@code covers}
 * @param text what it asks for; may be empty
 */
public record Requirement(String number, String text) {
    /** Number, a tab, and the sentence of {@code rules.md}; a test holds the two together. */
    static final String RULES = "rules.tsv";

    /**
     * The numbered rules of the core's page {@code rules.md}.
     *
     * @return in the order of the page
     */
    public static List<Requirement> rules() {
        List<Requirement> rules = new ArrayList<>();
        try (InputStream in = Requirement.class.getResourceAsStream(RULES)) {
            if (in == null) {
                throw new IllegalStateException("the program lacks its table of rules");
            }
            for (String line :
                    new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList()) {
                int tab = line.indexOf('\t');
                rules.add(new Requirement(line.substring(0, tab), line.substring(tab + 1)));
            }
        } catch (IOException e) {
            throw new UncheckedIOException("the program's table of rules", e);
        }
        return List.copyOf(rules);
    }
}
