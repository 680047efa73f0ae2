package org.gaugebench.sim.device;

import org.gaugebench.sim.report.Samples;
import org.junit.jupiter.api.Test;

/** What a program does with a tick belongs to that tick's time, however late it does it. */
class PipeBatchTest {
    @Test
    void aFaultThatBeginsAfterTheTickOfASaveDoesNotReachThatSave() {
        // Declared at 0 s, so saved with the first tick; a batch is told a minute later.
        String text =
                Samples.expecting("at: 1 h, reading: voltage, at-least: 1 V")
                        + "gauge: {start: 60 %, memory: {slots: 8, faults: ["
                        + "{kind: program-error, slot: all, from: 30 s}]}}\n";
        PipeLoopbackTest.check(Samples.read(text), "form frames", "batch 1024", "restart message");
    }
}
