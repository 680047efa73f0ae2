package org.gaugebench.sim.scenario;

/**
 * How a load's draw moves within its on part, faster than a tick. The amount of the load is what a
 * shape is a multiple of.
 */
public sealed interface LoadShape {
    /**
     * Switched on and off by pulse-width modulation: all of the amount, then nothing.
     *
     * @param millihertz pulses in 1000 s, above 0
     * @param dutyPartsPerMillion part of each pulse that is on, above 0 and below one
     * @param phasePartsPerMillion where in its pulse the load begins, 0 to below one
     */
    record PulseWidth(long millihertz, long dutyPartsPerMillion, long phasePartsPerMillion)
            implements LoadShape {}

    /**
     * What an inverter draws: a raised cosine at twice the frequency of its output, with the amount
     * as its mean.
     *
     * @param lineMillihertz frequency of the inverter's output, above 0
     * @param depthPartsPerMillion amplitude over mean, above 0 to one
     * @param phasePartsPerMillion where in its period the load begins; at 0 the draw is least
     */
    record Ripple(long lineMillihertz, long depthPartsPerMillion, long phasePartsPerMillion)
            implements LoadShape {}

    /**
     * What a motor draws as it starts: a peak that decays to the amount.
     *
     * @param peakPartsPerMillion draw at the first instant over the amount, above one
     * @param timeConstantMillis of the decay, above 0
     */
    record Inrush(long peakPartsPerMillion, long timeConstantMillis) implements LoadShape {}
}
