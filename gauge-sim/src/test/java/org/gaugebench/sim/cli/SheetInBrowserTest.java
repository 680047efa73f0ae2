package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.browser.Browser;
import org.gaugebench.sim.browser.BrowserExtension;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** The sheet of a system as its owner meets it: from disk, on a telephone, on paper. */
@ExtendWith(BrowserExtension.class)
class SheetInBrowserTest {
    /** Points of the two kinds of paper, across and down: A4, and Letter. */
    private static final double[][] PAPERS_INCHES = {{8.27, 11.69}, {8.5, 11}};

    @TempDir static Path folder;
    private static final List<Path> SHEETS = new ArrayList<>();

    @BeforeAll
    static void writeSheets() {
        sheet("hut", "--load", "lamp: 1.2 A, 5 h", "--charger", "20 A", "--source", "solar");
        sheet("bare");
        List<String> many = new ArrayList<>();
        for (int i = 1; i <= 11; i++) {
            many.addAll(List.of("--load", "lamp number " + i + ": " + i + " A, 1 h"));
        }
        many.addAll(List.of("--load", "<b>a name</b> that is \"much\" longer & longer: 1 A, 1 h"));
        many.addAll(List.of("--source", "mains", "--source", "solar", "--charger", "40 A"));
        sheet("many", many.toArray(new String[0]));
    }

    private static void sheet(String name, String... more) {
        Path file = folder.resolve(name + ".html");
        List<String> all = new ArrayList<>(List.of("handover", file.toString()));
        all.addAll(List.of("--name", "Sheet " + name, "--voltage", "12 V"));
        all.addAll(List.of("--chemistry", "lead-acid-agm", "--capacity", "100 Ah"));
        all.addAll(List.of(more));
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(ExitCodes.OK, terminal.run(all.toArray(new String[0])), terminal.err());
        SHEETS.add(file);
    }

    private static String name(Path sheet) {
        return String.valueOf(sheet.getFileName()).replace(".html", "");
    }

    @Test
    void itOpensFromDiskWithoutAComplaintAndAsksNobody(Browser browser) {
        for (Path sheet : SHEETS) {
            browser.online(false);
            browser.open(sheet);
            assertEquals(List.of(), browser.complaints(), sheet::toString);
            assertEquals(List.of(), browser.requests(), sheet::toString);
        }
    }

    @Test
    void onATelephoneItDoesNotScrollSideways(Browser browser) {
        for (Path sheet : SHEETS) {
            browser.size(390, 844);
            browser.open(sheet);
            browser.assertNoSidewaysScroll(name(sheet));
            browser.wholePicture("sheet-" + name(sheet) + "-390");
            // Letters of the drawing are as large as a telephone can show and an eye can read.
            double letters =
                    browser.number(
                            "const svg = document.querySelector('svg.wiring');"
                                    + "return 12 * svg.getBoundingClientRect().width"
                                    + " / svg.viewBox.baseVal.width");
            assertTrue(letters >= 8, "letters of " + letters + " pixels");
        }
    }

    @Test
    void axeFindsNothing(Browser browser) {
        for (Path sheet : SHEETS) {
            for (String scheme : List.of("light", "dark")) {
                browser.scheme(scheme);
                browser.open(sheet);
                assertEquals(List.of(), browser.violations(), sheet + " " + scheme);
            }
        }
    }

    /** No two words of a drawing lie over each other, and none sticks out of it. */
    @Test
    void nothingInADrawingLiesOverAnotherThing(Browser browser) {
        for (Path sheet : SHEETS) {
            browser.size(390, 844);
            browser.open(sheet);
            String clashes =
                    browser.text(
                            "const out = [];"
                                    + "for (const svg of document.querySelectorAll('svg.wiring')) {"
                                    + "  const frame = svg.getBoundingClientRect();"
                                    + "  const all = [...svg.querySelectorAll('text')].map(it =>"
                                    + "    [it.textContent, it.getBoundingClientRect()]);"
                                    + "  for (const [word, a] of all) {"
                                    + "    if (a.left < frame.left || a.right > frame.right"
                                    + "        || a.top < frame.top || a.bottom > frame.bottom)"
                                    + "      out.push(word + ' sticks out');"
                                    + "    for (const [other, b] of all)"
                                    + "      if (a !== b && a.left < b.right - 1"
                                    + "          && b.left < a.right - 1 && a.top < b.bottom - 3"
                                    + "          && b.top < a.bottom - 3)"
                                    + "        out.push(word + ' over ' + other);"
                                    + "  }"
                                    + "}"
                                    + "return out.join('; ')");
            assertEquals("", clashes, name(sheet));
        }
    }

    @Test
    void onPaperTheDrawingStaysOnOnePage(Browser browser) throws Exception {
        for (Path sheet : SHEETS) {
            browser.open(sheet);
            for (double[] paper : PAPERS_INCHES) {
                byte[] pdf = browser.pdf(paper[0], paper[1]);
                Files.createDirectories(Path.of("target", "screenshots"));
                Files.write(
                        Path.of(
                                "target",
                                "screenshots",
                                "sheet-%s-%.0f.pdf".formatted(name(sheet), paper[1])),
                        pdf);
                assertTrue(pdf.length > 10_000, sheet.toString());
            }
            browser.print();
            browser.size(794, 1123);
            double tall =
                    browser.number(
                            "return document.querySelector('svg.wiring')"
                                    + ".getBoundingClientRect().height");
            // Letter less its margins: 279 mm less 2 x 14 mm, at 96 pixels an inch.
            assertTrue(tall <= (279 - 28) / 25.4 * 96, name(sheet) + " is " + tall);
        }
    }
}
