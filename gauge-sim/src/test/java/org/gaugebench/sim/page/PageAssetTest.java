package org.gaugebench.sim.page;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What goes into a page lies in the jar, whole, and cannot end its own element. */
class PageAssetTest {
    @ParameterizedTest
    @EnumSource
    void everyFileIsThereAndEndsNoElement(PageAsset asset) {
        String text = asset.text();
        assertFalse(text.isEmpty());
        assertFalse(text.contains("</"), "ends the element it stands in");
        assertFalse(text.contains("<!--"), "begins a comment of the page");
    }

    @Test
    void theChartScriptIsTheOneThatThePagesAreWrittenFor() {
        assertTrue(PageAsset.CHART_SCRIPT.text().contains("(v1.6.30)"));
        assertTrue(PageAsset.CHART_SCRIPT.text().contains("var uPlot="));
        assertTrue(PageAsset.CHART_LICENCE.text().contains("MIT"));
    }

    @Test
    void aFileThatIsMissingIsNamed() {
        IllegalStateException e =
                assertThrows(
                        IllegalStateException.class,
                        () -> PageAsset.text(PageAssetTest.class, "nothing.js"));
        assertTrue(e.getMessage().contains("nothing.js"));
    }
}
