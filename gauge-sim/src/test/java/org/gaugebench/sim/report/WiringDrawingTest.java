package org.gaugebench.sim.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.gaugebench.sim.advice.OwnSamples;
import org.gaugebench.sim.advice.OwnSystem;
import org.gaugebench.sim.advice.WiringPlan;
import org.gaugebench.sim.advice.WiringPlan.Source;
import org.gaugebench.sim.scenario.Chemistry;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** What is on paper is what is in the plan, and looks like it. */
class WiringDrawingTest {
    private static final String NAME =
            "a \"very\" <long> name & more of it than a rung has room for";

    private static OwnSystem system(int volts, int loads) {
        List<String> words = new ArrayList<>();
        for (int i = 0; i < loads; i++) {
            words.add((i == 0 ? NAME : "lamp " + i) + ": 1 A, 1 h" + (i == 3 ? ", inverter" : ""));
        }
        return OwnSamples.of(volts, Chemistry.LIFEPO4, 100, 5, words.toArray(new String[0]));
    }

    private static List<Element> elements(String svg, String tag) {
        try {
            NodeList found =
                    DocumentBuilderFactory.newInstance()
                            .newDocumentBuilder()
                            .parse(new InputSource(new StringReader(svg)))
                            .getElementsByTagName(tag);
            List<Element> elements = new ArrayList<>();
            for (int i = 0; i < found.getLength(); i++) {
                elements.add((Element) found.item(i));
            }
            return elements;
        } catch (Exception e) {
            throw new AssertionError(svg, e);
        }
    }

    private static List<Element> wires(String svg) {
        return elements(svg, "path").stream().filter(it -> it.hasAttribute("data-from")).toList();
    }

    /** Both ends of a path of M, L, H and V, as "x y". */
    private static List<String> ends(String path) {
        Matcher step = Pattern.compile("([MLHV])?\\s*(-?\\d+)(?:\\s+(-?\\d+))?").matcher(path);
        List<String> points = new ArrayList<>();
        int x = 0;
        int y = 0;
        while (step.find()) {
            int first = Integer.parseInt(step.group(2));
            String kind = String.valueOf(step.group(1));
            if (kind.equals("H")) {
                x = first;
            } else if (kind.equals("V")) {
                y = first;
            } else {
                x = first;
                y = Integer.parseInt(step.group(3));
            }
            points.add(x + " " + y);
        }
        return List.of(points.get(0), points.get(points.size() - 1));
    }

    @ParameterizedTest
    @CsvSource({"12, 0", "12, 1", "24, 5", "48, 12"})
    void everyWireOfThePlanIsDrawnAndNoOther(int volts, int loads) {
        OwnSystem system = system(volts, loads);
        for (List<Source> sources :
                List.of(List.<Source>of(), List.of(Source.SOLAR, Source.MAINS))) {
            WiringPlan plan = WiringPlan.of(system, sources, true);
            String svg = WiringDrawing.of(system, OwnSamples.shunt(), plan, "mine");
            List<String> drawn =
                    wires(svg).stream()
                            .map(
                                    it ->
                                            it.getAttribute("data-from")
                                                    + ">"
                                                    + it.getAttribute("data-to")
                                                    + " "
                                                    + it.getAttribute("class"))
                            .sorted()
                            .toList();
            List<String> planned =
                    plan.wires().stream()
                            .map(
                                    it ->
                                            it.from()
                                                    + ">"
                                                    + it.to()
                                                    + " "
                                                    + it.use()
                                                            .name()
                                                            .toLowerCase(java.util.Locale.ROOT))
                            .sorted()
                            .toList();
            assertEquals(planned, drawn);
            assertEquals(
                    new TreeSet<>(plan.parts().stream().map(WiringPlan.Part::id).toList()),
                    new TreeSet<>(
                            elements(svg, "g").stream()
                                    .map(it -> it.getAttribute("data-part"))
                                    .toList()));
            assertTrue(svg.contains("battery, " + volts + " V"), svg);
        }
    }

    /** By the points on paper, whatever the attributes say. */
    @ParameterizedTest
    @CsvSource({"12, 0", "12, 1", "24, 5", "48, 12"})
    void onPaperOneCableEndsAtTheNegativePost(int volts, int loads) {
        OwnSystem system = system(volts, loads);
        WiringPlan plan = WiringPlan.of(system, List.of(Source.MAINS), true);
        String svg = WiringDrawing.of(system, OwnSamples.shunt(), plan, "mine");
        Map<String, Integer> cablesAt = new HashMap<>();
        for (Element each : wires(svg)) {
            for (String end : ends(each.getAttribute("d"))) {
                if (!each.getAttribute("class").equals("sense")) {
                    cablesAt.merge(end, 1, Integer::sum);
                }
            }
        }
        // The posts stand at 60 and 340 across, 40 down; the bolts of the shunt below the right.
        assertEquals(1, cablesAt.get("340 40"));
        assertEquals(1, cablesAt.get("340 88"));
        assertEquals(2, cablesAt.get("340 152"));
        assertEquals(2, cablesAt.get("60 40"));
    }

    @Test
    void aMistakeIsDrawnToThePostAndMarked() {
        OwnSystem system = system(12, 2);
        WiringPlan plan = WiringPlan.withMistake(system, List.of(), false, "load-2");
        String svg = WiringDrawing.of(system, OwnSamples.shunt(), plan, "wrong");
        List<Element> wrong =
                wires(svg).stream()
                        .filter(it -> it.getAttribute("class").equals("cable wrong"))
                        .toList();
        assertEquals(1, wrong.size());
        assertEquals("340 40", ends(wrong.get(0).getAttribute("d")).get(1));
        assertTrue(svg.contains("wrong-mark"), svg);
    }

    @Test
    void aNameCannotLeaveItsPlace() {
        OwnSystem system = system(12, 1);
        WiringPlan plan = WiringPlan.of(system, List.of(), true);
        String svg = WiringDrawing.of(system, OwnSamples.shunt(), plan, NAME);
        assertFalse(svg.contains("<long>"), svg);
        assertEquals(NAME, elements(svg, "title").get(0).getTextContent());
        String shown =
                elements(svg, "text").stream()
                        .filter(it -> it.getAttribute("class").contains("name"))
                        .findFirst()
                        .orElseThrow()
                        .getTextContent();
        assertEquals("a \"very\" <long> name & more of it th\u2026", shown);
        assertEquals("short", WiringDrawing.shortened("short"));
        // Letters that are twice as wide have half the room.
        assertEquals("\u5927".repeat(18) + "\u2026", WiringDrawing.shortened("\u5927".repeat(40)));
    }

    @Test
    void theWordsTellEveryWire() {
        WiringPlan plan = WiringPlan.of(system(12, 1), List.of(Source.SOLAR), true);
        List<String> words = WiringDrawing.words(plan);
        assertEquals(plan.wires().size(), words.size());
        assertTrue(words.contains("charger (solar) to negative rail"), words.toString());
        assertTrue(
                words.contains("gauge to shunt, battery side (thin, on its small screw)"),
                words.toString());
    }
}
