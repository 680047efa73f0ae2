package org.gaugebench.sim.plant;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.gaugebench.sim.PageSection;
import org.junit.jupiter.api.Test;

/**
 * The plant against a 12 V lead-acid battery of 17 Ah: fitted on one cycle of discharge, rest and
 * recharge, judged on the others. As for the lithium cells, between 20 and 90 %, and nothing is
 * adjusted to what is judged; errors are those of the battery, not of a cell.
 */
class MeasuredLeadAcidTest {
    private static final StateRange RANGE = new StateRange(20, 90);
    private static final Path PAGE = Path.of("docs", "models.md");
    private static final int CYCLES = 3;

    @Test
    void predictsAnotherCycleOfTheSameBattery() throws IOException {
        VoltageTable table = new VoltageTable();
        for (int on = 0; on < CYCLES; on++) {
            MeasuredRecord fitted = LeadAcidCycle.record(on);
            LeadAcidCycle whole = LeadAcidCycle.wholePlant(fitted, RANGE);
            LeadAcidCycle alone = LeadAcidCycle.resistanceAlone(fitted, RANGE);
            System.out.println(fitted.label() + ": " + whole.words());
            for (int other = 0; other <= CYCLES; other++) {
                if (other != on) {
                    MeasuredRecord judged =
                            other == CYCLES
                                    ? LeadAcidCycle.slowDischarge()
                                    : LeadAcidCycle.record(other);
                    table.add(
                            "lead-acid, 17 Ah",
                            fitted,
                            judged,
                            whole.rmsVolts(judged, RANGE),
                            alone.rmsVolts(judged, RANGE),
                            VoltageTable.HALF);
                }
            }
        }
        System.out.println(table.markdown());
        assertEquals(List.of(), table.failures());
        PageSection.check(PAGE, "measured lead-acid", table.markdown());
    }
}
