package org.gaugebench.sim.advice;

/** How large a battery a daily use asks for. */
final class BatteryNeed {
    private BatteryNeed() {}

    /**
     * The printed charge, in the order of an off-grid worksheet: use, days, depth, temperature,
     * margins (IEEE Std 485 multiplies in the same way).
     *
     * @param ampHoursPerDay taken
     * @param days without charging
     * @param depth part of the charge that may be drawn, above 0 to 1
     * @param coldFactor by how much larger for the cold; 1 at 25 °C
     * @param margins for growth and ageing; 1 for none
     */
    static double ampHours(
            double ampHoursPerDay, double days, double depth, double coldFactor, double margins) {
        return ampHoursPerDay * days / depth * coldFactor * margins;
    }
}
