package org.gaugebench.sim.advice;

import java.util.List;
import org.gaugebench.sim.scenario.Chemistry;
import org.gaugebench.sim.units.ConverterRange;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;

/**
 * A small system as its owner tells it. Null stands for "not known"; what is assumed then is told
 * with every answer.
 *
 * @param nominalVolts 12, 24, 36 or 48
 * @param chemistry of the battery
 * @param ampHours printed on the battery, or on all of them that stand in parallel
 * @param loads in the owner's order; none twice
 * @param inverter or null for none
 * @param chargerAmps most that all chargers give together; 0 for none
 * @param coldestCelsius of the battery while it is needed, or null
 * @param shunt that is there already, or null to have one proposed
 * @param converter of the gauge, or null
 * @param usablePart of the charge that its owner lets be drawn, above 0 to 1, or null
 */
public record OwnSystem(
        int nominalVolts,
        Chemistry chemistry,
        double ampHours,
        List<OwnLoad> loads,
        @Nullable OwnInverter inverter,
        double chargerAmps,
        @Nullable Double coldestCelsius,
        @Nullable ShuntRating shunt,
        @Nullable ConverterRange converter,
        @Nullable Double usablePart) {

    /** Keeps its own list. */
    public OwnSystem {
        loads = List.copyOf(loads);
    }

    /** One whose owner does not say what part may be drawn. */
    public OwnSystem(
            int nominalVolts,
            Chemistry chemistry,
            double ampHours,
            List<OwnLoad> loads,
            @Nullable OwnInverter inverter,
            double chargerAmps,
            @Nullable Double coldestCelsius,
            @Nullable ShuntRating shunt,
            @Nullable ConverterRange converter) {
        this(
                nominalVolts,
                chemistry,
                ampHours,
                loads,
                inverter,
                chargerAmps,
                coldestCelsius,
                shunt,
                converter,
                null);
    }
}
