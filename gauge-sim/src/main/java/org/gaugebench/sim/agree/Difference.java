package org.gaugebench.sim.agree;

import java.util.List;
import org.gaugebench.core.port.Register;

/**
 * The first step of a script after which a program is no longer as the core.
 *
 * @param step its place among the steps, from 0
 * @param tick how many ticks came before it, itself included
 * @param what in one sentence
 * @param registers all that the program gives, with both values
 * @param details lines for people: of a program that failed
 */
public record Difference(
        int step, long tick, String what, List<Pair> registers, List<String> details) {

    /**
     * One register on both sides.
     *
     * @param register which
     * @param core the core's value
     * @param program the program's
     */
    public record Pair(Register register, long core, long program) {
        /** Whether they differ. */
        public boolean differs() {
            return core != program;
        }
    }
}
