package org.gaugebench.sim.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.gaugebench.sim.report.ReportStarved.Span;
import org.junit.jupiter.api.Test;

/** When the loads were not met, from the start of the first such step to the end of the last. */
class ReportStarvedTest {
    /** Steps of ten seconds, as many as the word has letters; those of an x were not met. */
    private static List<Span> spans(String steps) {
        ReportStarved starved = new ReportStarved(10_000);
        for (int i = 0; i < steps.length(); i++) {
            starved.add(steps.charAt(i) == 'x', i + 1);
        }
        starved.close(steps.length());
        return starved.spans();
    }

    @Test
    void aSpanIsWholeSteps() {
        assertEquals(List.of(new Span(20_000, 50_000)), spans("..xxx.."));
        assertEquals(List.of(new Span(10_000, 20_000), new Span(40_000, 50_000)), spans(".x..x."));
    }

    @Test
    void oneThatBeginsWithTheRunBeginsAtZero() {
        assertEquals(List.of(new Span(0, 10_000)), spans("x."));
    }

    @Test
    void oneUnderWayEndsWithTheRun() {
        assertEquals(List.of(new Span(20_000, 40_000)), spans("..xx"));
    }

    @Test
    void noneIsNone() {
        assertEquals(List.of(), spans("...."));
        assertEquals(List.of(), spans(""));
    }

    @Test
    void aBatteryThatFlickersAtEmptyDoesNotFillThePage() {
        assertEquals(500, spans("x.".repeat(600)).size());
    }
}
