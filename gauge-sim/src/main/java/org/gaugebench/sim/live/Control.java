package org.gaugebench.sim.live;

import org.gaugebench.sim.scenario.Change;

/**
 * One thing on the page that somebody can move.
 *
 * @param key the address in scenario files, such as "lamp" or "lamp.current"
 * @param group where it stands: "loads", "chargers", "battery", "sensor", "settings" or "power"
 * @param word what it is called, as a key of the page's words
 * @param target part that owns it
 * @param name of the part, as {@link Change#name()}
 * @param first value at the start
 * @param range what it runs over
 */
record Control(
        String key,
        String group,
        String word,
        Change.Target target,
        String name,
        long first,
        Range range) {

    /** Whether it is on or off, and no figure. */
    boolean isSwitch() {
        return range.perUnit() == 0;
    }

    /**
     * What a slider runs over, in the change's own steps.
     *
     * @param minimum its left end
     * @param maximum its right end
     * @param step between two places
     * @param perUnit steps of the change to one of the unit; 0 for a switch
     * @param unit as scenario files write it; for a switch the words "one|zero"
     */
    record Range(long minimum, long maximum, long step, long perUnit, String unit) {
        static Range ofSwitch(String one, String zero) {
            return new Range(0, 1, 1, 0, one + "|" + zero);
        }
    }
}
