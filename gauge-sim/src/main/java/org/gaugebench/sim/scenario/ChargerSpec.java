package org.gaugebench.sim.scenario;

import org.jspecify.annotations.Nullable;

/**
 * A three-phase charger: bulk at the current limit, absorption at its set voltage, then float.
 *
 * @param name as the scenario calls it
 * @param switchedOn whether it runs at the start
 * @param absorptionMicrovolts set voltage at 25 °C
 * @param floatMicrovolts float voltage at 25 °C; equal to absorption for a charger without float
 * @param currentLimitMicroamps most it gives
 * @param microvoltsPerKelvin temperature compensation of both voltages, whole battery, 0 or below
 * @param floatBelowMicroamps charger output under which absorption ends; 0 for never by current
 * @param absorptionMillis longest absorption; 0 for no time limit
 * @param sun the supply that limits it, or null for a supply without limit
 * @param traits what goes beyond three phases at the bus
 */
public record ChargerSpec(
        String name,
        boolean switchedOn,
        long absorptionMicrovolts,
        long floatMicrovolts,
        long currentLimitMicroamps,
        long microvoltsPerKelvin,
        long floatBelowMicroamps,
        long absorptionMillis,
        @Nullable SunSpec sun,
        ChargerTraits traits) {

    /** A charger without traits. */
    public ChargerSpec(
            String name,
            boolean switchedOn,
            long absorptionMicrovolts,
            long floatMicrovolts,
            long currentLimitMicroamps,
            long microvoltsPerKelvin,
            long floatBelowMicroamps,
            long absorptionMillis,
            @Nullable SunSpec sun) {
        this(
                name,
                switchedOn,
                absorptionMicrovolts,
                floatMicrovolts,
                currentLimitMicroamps,
                microvoltsPerKelvin,
                floatBelowMicroamps,
                absorptionMillis,
                sun,
                ChargerTraits.NONE);
    }

    /**
     * A half-sine sun with seeded clouds.
     *
     * @param peakMicroamps most current at noon
     * @param sunriseMillis time of day; the scenario starts at midnight
     * @param sunsetMillis time of day, after sunrise
     * @param cloudsPartsPerMillion part of the day under cloud
     * @param cloudDepthPartsPerMillion part of the current that a cloud takes away
     */
    public record SunSpec(
            long peakMicroamps,
            long sunriseMillis,
            long sunsetMillis,
            long cloudsPartsPerMillion,
            long cloudDepthPartsPerMillion) {}
}
