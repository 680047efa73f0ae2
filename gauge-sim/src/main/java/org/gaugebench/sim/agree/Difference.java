package org.gaugebench.sim.agree;

import java.util.List;

/**
 * The first step of a script after which a program is no longer as the core.
 *
 * @param step its place among the steps, from 0
 * @param tick how many ticks came before it, itself included
 * @param what in one sentence
 * @param registers all that the program gives and its bus words, with both values
 * @param details lines for people: of a program that failed
 */
public record Difference(
        int step, long tick, String what, List<Pair> registers, List<String> details) {

    /**
     * One register, or word of the bus view, on both sides.
     *
     * @param name of it, as on the pipe
     * @param core the core's value
     * @param program the program's
     */
    public record Pair(String name, long core, long program) {
        /** Whether they differ. */
        public boolean differs() {
            return core != program;
        }
    }
}
