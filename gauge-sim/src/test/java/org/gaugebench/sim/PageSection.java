package org.gaugebench.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** A part of a page that is written by a test: between two marks that bear its name. */
public final class PageSection {
    private PageSection() {}

    /**
     * Holds a section to what it must say; {@code -Dgolden.update=true} rewrites it.
     *
     * @param page under the module's folder
     * @param name in the marks {@code <!-- name: begin -->} and {@code <!-- name: end -->}
     * @param expected whole lines
     */
    public static void check(Path page, String name, String expected) throws IOException {
        String text = Files.readString(page);
        String begin = "<!-- " + name + ": begin -->\n";
        String end = "<!-- " + name + ": end -->";
        int from = text.indexOf(begin) + begin.length();
        int to = text.indexOf(end, from);
        assertTrue(from >= begin.length() && to >= from, page + " has no section " + name);
        if (Boolean.getBoolean("golden.update")) {
            text = text.substring(0, from) + expected + text.substring(to);
            Files.write(page, text.getBytes(StandardCharsets.UTF_8));
            to = text.indexOf(end, from);
        }
        assertEquals(expected, text.substring(from, to), "-Dgolden.update=true rewrites it");
    }
}
