package org.gaugebench.sim.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.gaugebench.sim.judge.RunRecorder;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.scenario.Scenario;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/**
 * The picture of a run. {@code golden/a-day-at-the-pier.svg} holds one byte for byte: {@code
 * -Dgolden.update=true} rewrites it.
 */
class PictureTest {
    private static final Path GOLDEN = Path.of("src/test/resources/golden/a-day-at-the-pier.svg");
    private static final List<PictureSeries> ALL = Arrays.asList(PictureSeries.values());

    private static String picture(String scenario, List<PictureSeries> shows) {
        Scenario read = Samples.read(scenario);
        PictureTrace trace = new PictureTrace(shows);
        RunResult result = RunRecorder.run(read, read.seed(), trace);
        return Picture.of(result, trace, "test");
    }

    /** Two gauges beside, a fault, a restart, and a count that is set: many kinds of line. */
    private static String crowded() {
        return Samples.hut()
                + "  - {from: 2 h, to: 3 h, set: {gauge.power: off}}\n"
                + "  - {at: 4 h, set: {gauge.declare: 30 %}}\n"
                + "  - {at: 4 h 2 min, set: {gauge.declare: 31 %}}\n"
                + "  - {at: 23 h 58 min, set: {gauge.capacity: 40 Ah}}\n"
                + "beside:\n"
                + "  - {name: plain, kind: plain-counter, start: 40 %}\n"
                + "  - {name: a-name-of-thirty-one-characters, kind: core, start: 20 %}\n";
    }

    @Test
    void aSmallRunGivesTheSameBytesEverywhere() throws IOException {
        String svg = picture(Samples.hut(), PictureSeries.USUAL);
        if (Boolean.getBoolean("golden.update")) {
            Files.writeString(GOLDEN, svg);
        }
        assertEquals(Files.readString(GOLDEN), svg, "-Dgolden.update=true rewrites it");
    }

    @Test
    void shouldBeAPictureThatNeedsNothingElse() {
        for (String scenario : List.of(Samples.hut(), crowded())) {
            String svg = picture(scenario, ALL);
            Document document = SvgLabels.parse(svg);
            Element root = document.getDocumentElement();
            assertEquals("svg", root.getTagName());
            assertEquals("img", root.getAttribute("role"));
            for (String name : root.getAttribute("aria-labelledby").split(" ", -1)) {
                assertEquals(1, SvgLabels.elements(document, name).size(), name);
                assertTrue(svg.contains(" id=\"" + name + "\""), name);
            }
            String rest = svg.replace("xmlns=\"http://www.w3.org/2000/svg\"", "");
            for (String foreign : List.of("http", "href", "<script", "url(", "@import", "<style")) {
                assertFalse(rest.contains(foreign), foreign);
            }
        }
    }

    @Test
    void aTitleFromAFileStaysText() {
        String odd = "\"A & B <script>x</script> " + "very long ".repeat(12) + "\"";
        String svg = picture(Samples.hut().replace("A day at the pier", odd), PictureSeries.USUAL);
        Document document = SvgLabels.parse(svg);
        assertEquals(0, SvgLabels.elements(document, "script").size());
        assertTrue(
                SvgLabels.elements(document, "title")
                        .get(0)
                        .getTextContent()
                        .startsWith("A & B <"));
        assertEquals(List.of(), SvgLabels.troubles(svg));
    }

    @Test
    void gaugesBeyondThePensAreCounted() {
        StringBuilder many = new StringBuilder(Samples.hut()).append("beside:\n");
        for (int i = 0; i < 7; i++) {
            many.append(
                    "  - {name: beside-%s, kind: plain-counter, start: %s %%}%n".formatted(i, i));
        }
        String svg = picture(many.toString(), PictureSeries.USUAL);
        assertTrue(svg.contains(">beside-4<") && !svg.contains(">beside-5<"), svg);
        assertTrue(svg.contains(">and 2 more gauges, not drawn<"), svg);
        assertEquals(List.of(), SvgLabels.troubles(svg));
    }

    @Test
    void theShortestRunIsAPictureToo() {
        List<String> lines =
                List.of(
                        "format: 1",
                        "title: One tick",
                        "duration: 1 ms",
                        "tick: 1 ms",
                        "battery: {chemistry: nmc, capacity: 1 Ah}",
                        "sensor: {shunt: 1 A / 75 mV}");
        String shortest = String.join("\n", lines) + "\n";
        assertEquals(List.of(), SvgLabels.troubles(picture(shortest, ALL)));
    }

    @Test
    void figuresTooWideForTheMarginAreSmaller() {
        String large =
                Samples.hut()
                        .replace("capacity: 50 Ah", "capacity: 10000 Ah")
                        .replace("start: 60 %", "start: 60.0001 %");
        String svg = picture(large, List.of(PictureSeries.CHARGE, PictureSeries.TEMPERATURE));
        assertEquals(List.of(), SvgLabels.troubles(svg));
        assertEquals(150, PictureType.fitting("10", 150, 500));
        int size = PictureType.fitting("-10000.0000", 150, 500);
        assertTrue(size < 150 && PictureType.width("-10000.0000", size) <= 500, "" + size);
    }

    @Test
    void allPlacesAreWholeNumbers() {
        Document document = SvgLabels.parse(picture(crowded(), ALL));
        List<Element> paths = SvgLabels.elements(document, "path");
        assertTrue(paths.size() > 20, "only " + paths.size());
        for (Element path : paths) {
            assertTrue(path.getAttribute("d").matches("[MLhvlHz0-9 -]+"), path.getAttribute("d"));
        }
    }

    @Test
    void noWordsStandOnOtherWords() {
        for (PictureSeries first : ALL) {
            String svg = picture(crowded(), List.of(first));
            assertEquals(List.of(), SvgLabels.troubles(svg), first.word());
        }
        assertEquals(List.of(), SvgLabels.troubles(picture(crowded(), ALL)));
        // Two kinds of event by turns: forty lines, all within the last hours.
        StringBuilder declared = new StringBuilder(Samples.hut());
        for (int minute = 1; minute <= 40; minute++) {
            String what = minute % 2 == 0 ? "declare: 50 %" : "capacity: 4" + minute % 10 + " Ah";
            declared.append("  - {at: 20 h %s min, set: {gauge.%s}}%n".formatted(minute, what));
        }
        String svg = picture(declared.toString(), PictureSeries.USUAL);
        assertTrue(svg.contains("the report lists them"), "a ledger that is cut says so");
        assertEquals(List.of(), SvgLabels.troubles(svg));
    }

    /** Lowest point of a path, in the picture's units from above. */
    private static int lowest(String data) {
        int y = 0;
        int lowest = 0;
        Matcher matcher =
                Pattern.compile("M\\d+ (\\d+)|v(-?\\d+)|l-?\\d+ ?(-?\\d+)|h-?\\d+").matcher(data);
        while (matcher.find()) {
            if (matcher.group(1) != null) {
                y = Integer.parseInt(matcher.group(1));
            } else if (matcher.group(2) != null) {
                y += Integer.parseInt(matcher.group(2));
            } else if (matcher.group(3) != null) {
                y += Integer.parseInt(matcher.group(3));
            }
            lowest = Math.max(lowest, y);
        }
        return lowest;
    }

    /**
     * A second of 20 A in a day stands between two whole minutes and is a 150th of a pixel wide.
     */
    @Test
    void aSpikeOfOneTickIsKept() {
        String spike =
                Samples.hut()
                                .replace(
                                        "lamp: {current: 1 A}",
                                        "lamp: {current: 1 A}\n  s: {current: 20 A,"
                                                + " switched: off}")
                        + "  - {from: 15 h 30 s, to: 15 h 31 s, set: {s: on}}\n";
        for (String scenario : List.of(spike, spike.replace("20 A", "1 A"))) {
            Document document = SvgLabels.parse(picture(scenario, List.of(PictureSeries.CURRENT)));
            PictureScale scale =
                    new PictureScale(-20_000_000, 100_000, PictureSeries.CURRENT, 5, 0, 800);
            int depth = scale.y(-20_000_000) - scale.y(0);
            List<Element> curves =
                    SvgLabels.elements(document, "path").stream()
                            .filter(it -> !it.getAttribute("d").contains("L"))
                            .filter(it -> it.getAttribute("stroke").equals("#003f87"))
                            .toList();
            assertEquals(1, curves.size());
            String data = curves.get(0).getAttribute("d");
            int first = Integer.parseInt(data.replaceFirst("M\\d+ (\\d+).*", "$1"));
            boolean deep = lowest(data) - first > depth * 9 / 10;
            assertEquals(scenario.contains("20 A"), deep, data);
        }
    }

    @Test
    void aGaugeWithoutPowerDrawsNothing() {
        Document document =
                SvgLabels.parse(picture(crowded(), List.of(PictureSeries.STATE_OF_CHARGE)));
        List<String> gauge =
                SvgLabels.elements(document, "path").stream()
                        .filter(it -> it.getAttribute("stroke").equals("#003f87"))
                        .map(it -> it.getAttribute("d"))
                        .filter(it -> !it.contains("L"))
                        .toList();
        assertEquals(1, gauge.size());
        assertEquals(2, gauge.get(0).chars().filter(c -> c == 'M').count(), gauge.get(0));
    }

    @Test
    void penDashesDifferAndEveryPenIsDarkEnough() {
        HashSet<String> dashes = new HashSet<>();
        for (int i = 0; i < PictureTrace.MOST_GAUGES; i++) {
            PictureInk pen = PictureInk.ofGauge(i);
            assertTrue(dashes.add(pen.dashes()), "the same dashes twice: " + pen);
            assertTrue(contrast(pen.colour()) >= 6, pen + " " + contrast(pen.colour()));
        }
        assertTrue(contrast(PictureInk.TRUTH.colour()) >= 3, "" + contrast("#968d7b"));
        assertTrue(contrast(PictureInk.TEXT) >= 7);
    }

    /** Contrast to the paper as the web's guidelines of accessibility (WCAG 2) reckon it. */
    private static double contrast(String colour) {
        return (luminance(PictureInk.PAPER) + 0.05) / (luminance(colour) + 0.05);
    }

    private static double luminance(String colour) {
        double[] weights = {0.2126, 0.7152, 0.0722};
        double sum = 0;
        for (int i = 0; i < weights.length; i++) {
            double part = Integer.parseInt(colour.substring(1 + 2 * i, 3 + 2 * i), 16) / 255.0;
            sum += weights[i] * StrictMath.pow((part + 0.055) / 1.055, 2.4);
        }
        return sum;
    }

    @Test
    void theFootSaysWhereItComesFrom() {
        Scenario scenario = Samples.read(Samples.hut());
        PictureTrace trace = new PictureTrace(PictureSeries.USUAL);
        RunResult result = RunRecorder.run(scenario, 77, trace);
        String svg = Picture.of(result, trace, "1.2.3");
        assertTrue(svg.contains("simulated; hut.yaml, seed 77<"), svg);
        assertTrue(svg.contains("digest " + RunJson.hex(result.digest()) + ","), svg);
        assertTrue(svg.contains("gauge-sim 1.2.3<"), svg);
    }
}
