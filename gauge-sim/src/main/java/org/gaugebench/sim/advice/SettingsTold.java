package org.gaugebench.sim.advice;

import org.gaugebench.sim.scenario.Chemistry;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;

/**
 * What an owner typed into the gauge, and the volts of the chargers beside it. Null stands for "not
 * known": then it is taken to be as usual for the battery.
 *
 * @param chemistry that the gauge is told
 * @param milliampHours that it is told
 * @param shunt that it is told
 * @param fullMillivolts from which it looks for full; 0 where it never does
 * @param fullPartsPerMillion current per hour of capacity to which it has to have fallen
 * @param fullMinutes for how long
 * @param keptBackPartsPerMillion charge below which its hours read zero
 * @param chargerMicrovolts highest steady volts of all chargers
 */
public record SettingsTold(
        @Nullable Chemistry chemistry,
        @Nullable Long milliampHours,
        @Nullable ShuntRating shunt,
        @Nullable Long fullMillivolts,
        @Nullable Long fullPartsPerMillion,
        @Nullable Long fullMinutes,
        @Nullable Long keptBackPartsPerMillion,
        @Nullable Long chargerMicrovolts) {

    /** Settings of which nothing is known. */
    public static final SettingsTold UNKNOWN =
            new SettingsTold(null, null, null, null, null, null, null, null);
}
