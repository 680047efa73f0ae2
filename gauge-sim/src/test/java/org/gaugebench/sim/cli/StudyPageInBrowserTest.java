package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.nio.file.Path;
import java.util.List;
import org.gaugebench.sim.browser.Browser;
import org.gaugebench.sim.browser.BrowserExtension;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** The page that {@code study --report} writes, opened from disk in a browser. */
@ExtendWith(BrowserExtension.class)
class StudyPageInBrowserTest {
    @TempDir static Path folder;
    private static Path page;

    @BeforeAll
    static void writePage() {
        StudyBench bench = new StudyBench(folder);
        bench.write("hours.study", StudyBench.STUDY + "vary: {loads.logger.current: [1 A, 2 A]}\n");
        assertEquals(
                ExitCodes.OK,
                bench.run("study", "--report", "@study.html", "@hours.study"),
                bench.err());
        page = folder.resolve("study.html");
    }

    @Test
    void opensWithoutAComplaintAsksNobodyAndReadsForEverybody(Browser browser) {
        for (String scheme : List.of("light", "dark")) {
            browser.scheme(scheme);
            browser.open(page);
            assertEquals(List.of(), browser.complaints(), scheme);
            assertEquals(List.of(), browser.requests(), scheme);
            assertEquals(List.of(), browser.violations(), scheme);
        }
    }

    @Test
    void noWidthMakesItScrollSidewaysAndATelephoneHasAStripOfItsOwn(Browser browser) {
        browser.open(page);
        for (int width : List.of(390, 1024, 1600)) {
            browser.size(width, 900);
            browser.assertNoSidewaysScroll("at " + width);
            String shown =
                    browser.text(
                            "return [...document.querySelectorAll('#case-1 .plot')].filter(it =>"
                                    + " getComputedStyle(it).display !== 'none').map(it =>"
                                    + " it.classList[1]).join()");
            assertEquals(width == 390 ? "narrow" : "wide-strip", shown);
            browser.wholePicture("study-" + width);
        }
        browser.print();
        browser.wholePicture("study-print");
    }

    @Test
    void theStripFollowsTheScheme(Browser browser) {
        String stroke = "return getComputedStyle(document.querySelector('.plot .median')).stroke";
        browser.open(page);
        browser.scheme("light");
        String light = browser.text(stroke);
        browser.scheme("dark");
        assertNotEquals(light, browser.text(stroke));
        browser.wholePicture("study-dark");
    }
}
