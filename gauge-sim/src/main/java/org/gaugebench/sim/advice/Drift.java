package org.gaugebench.sim.advice;

/**
 * One reason why a count leaves the truth a little more every day.
 *
 * @param cause which
 * @param ampHoursPerDay by how much, at most; 0 or more
 * @param isEitherWay whether it can go up or down; else the gauge shows too much
 */
public record Drift(Cause cause, double ampHoursPerDay, boolean isEitherWay) {
    /** Reasons, in words for the owner, with what to change. */
    public enum Cause {
        /** What the gauge draws itself. */
        OWN_CURRENT(
                "the gauge's own current",
                "let its supply wire end on the load side of the shunt, or type its current in"
                        + " where it can be told"),
        /** A load on the wrong side. */
        PAST_SHUNT(
                "current that does not go through the shunt",
                "move that wire to the other side of the shunt"),
        /** Coulombic efficiency. */
        HEAT(
                "charge lost as heat while charging",
                "set the charge efficiency to that of this kind of battery"),
        /** Loss at rest. */
        SELF_DISCHARGE(
                "charge that leaks away inside the battery",
                "nothing on the gauge: charge fully before you count on it"),
        /** Zero error. */
        ZERO_ERROR(
                "zero error: current that it counts when none flows",
                "do the 24-hour zero test and its zero adjustment; a smaller shunt helps too"),
        /** What it does not see. */
        SMALLEST_STEP(
                "standing currents below its smallest step",
                "find out whether it counts them: leave one small load on over night"),
        /** Unlike scales of the two directions. */
        ASYMMETRY(
                "charging and discharging not counted quite alike",
                "nothing on the gauge: charge fully more often while you use much each day");

        private final String words;
        private final String remedy;

        Cause(String words, String remedy) {
            this.words = words;
            this.remedy = remedy;
        }

        /** What it is. */
        public String words() {
            return words;
        }

        /** What to change. */
        public String remedy() {
            return remedy;
        }
    }
}
