package org.gaugebench.sim.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.gaugebench.house.TopLevelRule;
import org.junit.jupiter.api.Test;

/** The rules of the look and the style sheet say the same, and every colour can be read. */
class LookTest {
    private static final Path PROJECT = TopLevelRule.projectRoot();
    private static final String CSS = PageAsset.LOOK.text();
    private static final Pattern TOKEN = Pattern.compile("--([\\w-]+): ([^;]+);");

    /** One line of the table of colours. */
    private record Colour(String light, String dark, String contrast) {}

    /** WCAG 2.2, criteria 1.4.3 and 1.4.11, level AA; from memory. */
    private static final double TEXT = 4.5;

    private static final double GRAPHIC = 3.0;

    private static Map<String, String> tokens(String selector) {
        int at = CSS.indexOf(selector + " {");
        assertTrue(at >= 0, selector);
        Matcher matcher = TOKEN.matcher(CSS.substring(at, CSS.indexOf('}', at)));
        Map<String, String> tokens = new LinkedHashMap<>();
        while (matcher.find()) {
            tokens.put(matcher.group(1), matcher.group(2));
        }
        return tokens;
    }

    private static Map<String, String> colours(Map<String, String> tokens) {
        Map<String, String> colours = new LinkedHashMap<>(tokens);
        colours.values().removeIf(value -> !value.startsWith("#"));
        return colours;
    }

    private static List<String[]> rows() throws IOException {
        List<String[]> rows = new ArrayList<>();
        for (String line : Files.readAllLines(PROJECT.resolve("gauge-sim/docs/look.md"))) {
            if (line.startsWith("| `--")) {
                rows.add(line.substring(2, line.length() - 2).split(" \\| ", -1));
            }
        }
        return rows;
    }

    private static String bare(String cell) {
        return cell.replace("`", "").replaceFirst("^--", "");
    }

    private static Map<String, Colour> documented() throws IOException {
        Map<String, Colour> colours = new LinkedHashMap<>();
        for (String[] row : rows()) {
            if (row.length == 5) {
                colours.put(bare(row[0]), new Colour(bare(row[1]), bare(row[2]), row[4]));
            }
        }
        return colours;
    }

    @Test
    void theDocumentNamesEveryColourAsTheSheetHasIt() throws IOException {
        Map<String, String> light = new LinkedHashMap<>();
        Map<String, String> dark = new LinkedHashMap<>();
        documented()
                .forEach(
                        (name, colour) -> {
                            light.put(name, colour.light());
                            dark.put(name, colour.dark());
                        });
        assertEquals(light, colours(tokens(":root")));
        assertEquals(dark, tokens(":root[data-theme='dark']"));
    }

    @Test
    void theSystemsDarkIsTheSwitchesDark() {
        assertEquals(tokens(":root[data-theme='dark']"), tokens(":root:not([data-theme='light'])"));
    }

    @Test
    void theDocumentNamesEverySizeAsTheSheetHasIt() throws IOException {
        Map<String, String> sizes = new LinkedHashMap<>(tokens(":root"));
        sizes.values().removeIf(value -> value.startsWith("#"));
        Map<String, String> documented = new LinkedHashMap<>();
        for (String[] row : rows()) {
            if (row.length == 2) {
                documented.put(bare(row[0]), bare(row[1]));
            }
        }
        assertEquals(documented, sizes);
    }

    @Test
    void everyColourHasItsContrastOnEachGroundInLightAndDark() throws IOException {
        Map<String, Colour> all = documented();
        int pairs = 0;
        for (Map.Entry<String, Colour> entry : all.entrySet()) {
            String rule = entry.getValue().contrast();
            if (rule.equals("none") || rule.equals("ground")) {
                continue;
            }
            double least = rule.startsWith("text on ") ? TEXT : GRAPHIC;
            assertTrue(rule.matches("(text|graphic) on .+"), rule);
            for (String ground : rule.substring(rule.indexOf(" on ") + 4).split(", ", -1)) {
                Colour on = all.get(ground);
                Colour colour = entry.getValue();
                String what = entry.getKey() + " on " + ground;
                double light = contrast(colour.light(), on.light());
                double dark = contrast(colour.dark(), on.dark());
                assertFalse(light < least, what + " in light: " + light);
                assertFalse(dark < least, what + " in dark: " + dark);
                pairs++;
            }
        }
        assertFalse(pairs < 50, "pairs judged: " + pairs);
    }

    /** Black on white is 21 to 1; a grey in the middle by hand. */
    @Test
    void contrastIsWorkedOutAsTheStandardHasIt() {
        assertEquals(21.0, contrast("#000000", "#ffffff"), 1e-9);
        // 0x80 is 0.2158605 in linear light: 1.05 / 0.2658605.
        assertEquals(3.9494, contrast("#ffffff", "#808080"), 1e-4);
    }

    @Test
    void theSheetAsksNobody() {
        assertFalse(CSS.contains("url("), "a file from elsewhere");
        assertFalse(CSS.contains("@import"), "a sheet from elsewhere");
        assertFalse(CSS.contains("@font-face"), "a font from elsewhere");
    }

    @Test
    void everyTokenThatIsUsedExists() {
        Matcher used = Pattern.compile("var\\(--([\\w-]+)\\)").matcher(CSS);
        Map<String, String> known = tokens(":root");
        while (used.find()) {
            assertTrue(known.containsKey(used.group(1)), used.group());
        }
    }

    private static double contrast(String one, String other) {
        double a = luminance(one);
        double b = luminance(other);
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }

    private static double luminance(String colour) {
        return 0.2126 * linear(colour, 1) + 0.7152 * linear(colour, 3) + 0.0722 * linear(colour, 5);
    }

    private static double linear(String colour, int at) {
        double part = Integer.parseInt(colour.substring(at, at + 2), 16) / 255.0;
        return part <= 0.04045 ? part / 12.92 : Math.pow((part + 0.055) / 1.055, 2.4);
    }
}
