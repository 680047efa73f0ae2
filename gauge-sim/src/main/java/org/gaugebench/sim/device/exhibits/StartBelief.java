package org.gaugebench.sim.device.exhibits;

import java.util.Set;
import org.gaugebench.sim.scenario.Mistake;

/** What the gauge believes at the first sample after power-up. */
interface StartBelief {
    /** It believes nothing new: what was known stays known, what was not stays unknown. */
    double NOTHING_NEW = -1;

    /**
     * The part of the capacity that it believes in.
     *
     * @param microvolts voltage of the first sample
     * @return 0 to 1, or {@link #NOTHING_NEW}
     */
    double partAt(int microvolts);

    /** The belief of a set of mistakes. */
    static StartBelief of(Set<Mistake> mistakes, VoltageTable table) {
        if (mistakes.contains(Mistake.START_AT_FULL)) {
            return microvolts -> 1;
        }
        if (mistakes.contains(Mistake.VOLTAGE_GUESS_AT_START)) {
            return table::partAt;
        }
        return microvolts -> NOTHING_NEW;
    }
}
