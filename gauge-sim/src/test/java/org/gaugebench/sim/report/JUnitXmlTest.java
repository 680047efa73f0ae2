package org.gaugebench.sim.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javax.xml.parsers.DocumentBuilderFactory;
import org.gaugebench.sim.judge.ShelfCase;
import org.gaugebench.sim.judge.ShelfCase.Ending;
import org.gaugebench.sim.scenario.Scenario;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.InputSource;

/**
 * What a continuous-integration server finds. The form has no standard; the table of what may stand
 * where is the schema that is commonly used for it, written here from memory.
 */
class JUnitXmlTest {
    private static final String HOLDS = "at: 1 h, reading: voltage, at-least: 1 V";
    private static final String FAILS = "at: 1 h, reading: voltage, at-least: 90 V";
    private static final String KNOWN = FAILS + ", expected-to-fail: \"a small battery\"";
    private static final String MENDED = HOLDS + ", expected-to-fail: \"a small battery\"";

    /** Children in the order that a sequence asks for. */
    private static final Map<String, List<String>> CHILDREN =
            Map.of(
                    "testsuites", List.of("testsuite"),
                    "testsuite", List.of("properties", "testcase", "system-out", "system-err"),
                    "properties", List.of("property"),
                    "testcase", List.of("skipped", "error", "failure", "system-out", "system-err"));

    private static final Map<String, Set<String>> ATTRIBUTES =
            Map.of(
                    "testsuites",
                    Set.of("name", "tests", "failures", "errors", "skipped", "time", "disabled"),
                    "testsuite",
                    Set.of(
                            "name",
                            "tests",
                            "failures",
                            "errors",
                            "skipped",
                            "time",
                            "disabled",
                            "timestamp",
                            "hostname",
                            "id",
                            "package"),
                    "property",
                    Set.of("name", "value"),
                    "testcase",
                    Set.of("name", "classname", "time", "assertions", "status"),
                    "skipped",
                    Set.of("message"),
                    "error",
                    Set.of("message", "type"),
                    "failure",
                    Set.of("message", "type"));

    private static final Map<String, List<String>> REQUIRED =
            Map.of(
                    "testsuite", List.of("name", "tests"),
                    "testcase", List.of("name", "classname"),
                    "property", List.of("name", "value"));

    private static ShelfCase ran(String... claims) {
        return ShelfCase.finished(Samples.run(Samples.expecting(claims)), 1_500_000_000);
    }

    private static ShelfCase ended(Ending ending, String why) {
        Scenario hut = Samples.read(Samples.hut());
        return new ShelfCase(hut, 5, ending, null, why, null, 250_000_000);
    }

    private static List<ShelfCase> everyKind() {
        return List.of(
                ran(HOLDS, FAILS, KNOWN, MENDED, "at: 9 d, reading: voltage, at-least: 1 V"),
                ShelfCase.finished(Samples.run(Samples.hut()), 1),
                ended(Ending.CRASHED, "java.lang.IllegalStateException: a <planted> \"defect\" &"),
                ended(Ending.TIMED_OUT, "it did not end within 1 s"),
                ended(Ending.SKIPPED, "it has the tag 'long', --skip"));
    }

    private static Element parse(String xml) {
        try {
            return DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .parse(new InputSource(new StringReader(xml)))
                    .getDocumentElement();
        } catch (Exception e) {
            throw new AssertionError(xml, e);
        }
    }

    private static List<Element> children(Element parent) {
        List<Element> children = new ArrayList<>();
        for (Node n = parent.getFirstChild(); n != null; n = n.getNextSibling()) {
            if (n instanceof Element element) {
                children.add(element);
            }
        }
        return children;
    }

    private static void assertFits(Element element) {
        String name = element.getTagName();
        List<String> allowed = CHILDREN.getOrDefault(name, List.of());
        int before = 0;
        for (Element child : children(element)) {
            int place = allowed.indexOf(child.getTagName());
            assertTrue(place >= before, child.getTagName() + " in " + name);
            before = place;
            assertFits(child);
        }
        for (int i = 0; i < element.getAttributes().getLength(); i++) {
            String attribute = element.getAttributes().item(i).getNodeName();
            assertTrue(
                    ATTRIBUTES.getOrDefault(name, Set.of()).contains(attribute),
                    attribute + " of " + name);
        }
        for (String attribute : REQUIRED.getOrDefault(name, List.of())) {
            assertTrue(element.hasAttribute(attribute), attribute + " of " + name);
        }
    }

    private static void assertCounted(Element suite, String attribute, String tag) {
        assertEquals(
                Integer.parseInt(suite.getAttribute(attribute)),
                suite.getElementsByTagName(tag).getLength(),
                attribute + " of " + suite.getAttribute("name"));
    }

    @Test
    void theDocumentHasTheFormAndItsCountsAreRight() {
        Element root = parse(JUnitXml.of(everyKind(), "1.2.3"));
        assertEquals("testsuites", root.getTagName());
        assertFits(root);
        List<Element> all = new ArrayList<>(children(root));
        assertEquals(5, all.size());
        all.add(root);
        for (Element suite : all) {
            assertCounted(suite, "tests", "testcase");
            assertCounted(suite, "failures", "failure");
            assertCounted(suite, "errors", "error");
            assertCounted(suite, "skipped", "skipped");
        }
    }

    @Test
    void eachKindOfEndingIsWhatAServerTakesItFor() {
        List<Element> suites = children(parse(JUnitXml.of(everyKind(), "1.2.3")));
        List<String> kinds = new ArrayList<>();
        for (Element each : children(suites.get(0))) {
            List<Element> inside = children(each);
            kinds.add(inside.isEmpty() ? "" : inside.get(0).getTagName());
        }
        assertEquals(
                List.of("property", "", "", "failure", "system-out", "failure", "failure"), kinds);
        Element mended = (Element) suites.get(0).getElementsByTagName("failure").item(1);
        assertEquals("held, though expected to fail", mended.getAttribute("type"));
        assertTrue(mended.getAttribute("message").endsWith("because a small battery"));
        assertEquals(1, suites.get(1).getElementsByTagName("failure").getLength(), "hollow");
        Element crash = (Element) suites.get(2).getElementsByTagName("error").item(0);
        assertEquals("crashed", crash.getAttribute("type"));
        assertTrue(crash.getAttribute("message").endsWith("a <planted> \"defect\" &"));
        Element late = (Element) suites.get(3).getElementsByTagName("error").item(0);
        assertEquals("timed out", late.getAttribute("type"));
        Element skipped = (Element) suites.get(4).getElementsByTagName("skipped").item(0);
        assertEquals("it has the tag 'long', --skip", skipped.getAttribute("message"));
    }

    @Test
    void aFailureIsTheWholeReportOfTheDefect() {
        Element root = parse(JUnitXml.of(List.of(ran(FAILS)), "1.2.3"));
        String text = root.getElementsByTagName("failure").item(0).getTextContent();
        assertTrue(text.contains("at 0 d 01:00:00 gauge shows 58.0"), text);
        assertTrue(text.contains("full-charge rule waiting"), text);
        assertTrue(text.contains("--at '0 d 01:00:00' hut.yaml"), text);
    }

    @Test
    void propertiesCarryCoversSeedDigestAndVersion() {
        String marked = Samples.expecting(HOLDS) + "covers: [F4, REQ-7]\ntags: [winter]\n";
        ShelfCase each = ShelfCase.finished(Samples.run(marked), 0);
        String xml = JUnitXml.of(List.of(each), "1.2.3");
        assertTrue(xml.contains("<property name=\"covers\" value=\"F4 REQ-7\"/>"), xml);
        assertTrue(xml.contains("<property name=\"tags\" value=\"winter\"/>"), xml);
        assertTrue(xml.contains("<property name=\"seed\" value=\"1\"/>"), xml);
        assertTrue(xml.contains("<property name=\"version\" value=\"1.2.3\"/>"), xml);
        String digest = RunJson.hex(each.result() == null ? 0 : each.result().digest());
        assertTrue(xml.contains("<property name=\"digest\" value=\"" + digest + "\"/>"), xml);
    }

    @Test
    void charactersThatXmlDoesNotAllowAreReplaced() {
        String nasty = "]]>\u0000\u001b[31m\ufffe\ud800x\ud83d\ude00\t\n";
        Element root = parse(JUnitXml.of(List.of(ended(Ending.SKIPPED, nasty)), "1"));
        String read =
                ((Element) root.getElementsByTagName("skipped").item(0)).getAttribute("message");
        assertEquals("]]>\ufffd\ufffd[31m\ufffd\ufffdx\ud83d\ude00\t\n", read);
        assertFalse(JUnitXml.of(List.of(ended(Ending.CRASHED, "\u0000")), "1").contains("\u0000"));
    }
}
