package org.gaugebench.core.rules;

import org.gaugebench.core.fixed.FixedMath;

/**
 * What steps of current and voltage from one minute to the next say of the wiring: sign of the
 * shunt, series resistance, and voltage steps to which no current belongs.
 */
final class StepWatch {
    /** So many contradictions in a row are no coincidence (common practice, no source). */
    private static final int CONTRADICTION_COUNT = 3;

    private static final int RESISTANCE_SHIFT = 3;
    private static final int REFERENCE_STEP_COUNT = 16;
    private static final long OHM_MICROOHMS = 1_000_000;
    private static final long LARGEST_MICROOHMS = 1_000_000;

    // Parameters.
    private final long stepMicroamps;
    private final long stillMicroamps;
    private final long stepMicrovolts;
    private final long tellingMicrovolts;

    // State.
    private boolean started;
    private boolean lastCutOff;
    private int lastMicroamps;
    private int lastMicrovolts;
    private int reversedCount;
    private int silentCount;
    private boolean lastSilentUp;
    private int stepCount;
    private long resistanceMicroohms;
    private long referenceMicroohms;

    /**
     * Creates a watch that has seen nothing.
     *
     * @param stepMicroamps least change of current that counts as a step
     * @param stillMicroamps most change of current that counts as none
     * @param stepMicrovolts least change of voltage that needs a current to explain it
     * @param tellingMicrovolts least change of voltage whose direction means anything: where a
     *     charger holds the voltage, what is left of it is noise
     */
    StepWatch(
            long stepMicroamps, long stillMicroamps, long stepMicrovolts, long tellingMicrovolts) {
        this.stepMicroamps = stepMicroamps;
        this.stillMicroamps = stillMicroamps;
        this.stepMicrovolts = stepMicrovolts;
        this.tellingMicrovolts = tellingMicrovolts;
    }

    /**
     * Takes one minute's means.
     *
     * @param cutOff whether a charger's voltage stands on the wires and nothing flows: that voltage
     *     may be another's, and the way to it and from it no step of this battery
     *     <p><b>Range:</b> 1e8 uV x 1e6 below 2^47; the resistance is limited to 1 ohm before it is
     *     filtered.
     */
    void addMinute(int microamps, int microvolts, boolean cutOff) {
        long currentStep = (long) microamps - lastMicroamps;
        long voltageStep = (long) microvolts - lastMicrovolts;
        // A charge lifts the voltage by far more than the resistance does, and by more the fuller
        // the battery: only a step between two discharges tells the resistance. An idle bus may
        // read a little above zero.
        boolean discharging = lastMicroamps <= stillMicroamps && microamps <= stillMicroamps;
        boolean own = !cutOff && !lastCutOff;
        boolean first = !started;
        started = true;
        lastCutOff = cutOff;
        lastMicroamps = microamps;
        lastMicrovolts = microvolts;
        if (first) {
            return;
        }
        if (Math.abs(currentStep) >= stepMicroamps) {
            silentCount = 0;
            if (own) {
                currentStep(currentStep, voltageStep, discharging);
            }
        } else if (Math.abs(currentStep) <= stillMicroamps
                && Math.abs(voltageStep) >= stepMicrovolts) {
            silentStep(voltageStep > 0);
        }
    }

    /**
     * Only steps that go the other way than the last one count: a steady charge lifts the voltage
     * minute after minute and a steady load lowers it, but nothing moves it up and down.
     */
    private void silentStep(boolean up) {
        if (silentCount == 0 || up != lastSilentUp) {
            silentCount = Math.min(silentCount + 1, CONTRADICTION_COUNT);
        }
        lastSilentUp = up;
    }

    private void currentStep(long currentStep, long voltageStep, boolean discharging) {
        boolean reversed = (currentStep < 0) != (voltageStep < 0);
        if (Math.abs(voltageStep) >= tellingMicrovolts) {
            reversedCount = reversed ? Math.min(reversedCount + 1, CONTRADICTION_COUNT) : 0;
        }
        if (reversed || !discharging) {
            return;
        }
        long microohms =
                FixedMath.clamp(
                        Math.abs(voltageStep) * OHM_MICROOHMS / Math.abs(currentStep),
                        0,
                        LARGEST_MICROOHMS);
        stepCount = Math.min(stepCount + 1, REFERENCE_STEP_COUNT + 1);
        resistanceMicroohms =
                stepCount == 1
                        ? microohms
                        : resistanceMicroohms
                                + FixedMath.divideHalfAwayFromZero(
                                        microohms - resistanceMicroohms, 1L << RESISTANCE_SHIFT);
        if (stepCount == REFERENCE_STEP_COUNT) {
            referenceMicroohms = resistanceMicroohms;
        }
    }

    /** Samples were missing: the next minute is no neighbour of the last. */
    void restart() {
        started = false;
    }

    /** Another battery: its resistance is another. */
    void forget() {
        started = false;
        reversedCount = 0;
        silentCount = 0;
        stepCount = 0;
        resistanceMicroohms = 0;
        referenceMicroohms = 0;
    }

    /** Several current steps in a row moved the voltage the wrong way. */
    boolean isReversed() {
        return reversedCount >= CONTRADICTION_COUNT;
    }

    /** Several voltage steps, up and down by turns, had no current step beside them. */
    boolean isSilent() {
        return silentCount >= CONTRADICTION_COUNT;
    }

    /** The resistance is twice what it was over the first steps. */
    boolean isResistanceRisen() {
        return referenceMicroohms > 0 && resistanceMicroohms >= 2 * referenceMicroohms;
    }

    /** Filtered resistance seen at steps; 0 before the first. */
    long resistanceMicroohms() {
        return resistanceMicroohms;
    }
}
