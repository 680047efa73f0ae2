package org.gaugebench.sim.advice;

import java.util.List;

/**
 * Something that draws from the battery, as its owner knows it.
 *
 * @param name as the owner calls it
 * @param amps drawn from the battery while it is on and nothing surges
 * @param hoursPerDay how long it is on
 * @param idleAmps drawn for the rest of the day, such as by a converter that stays plugged in
 * @param surgeAmps drawn for moments when it starts; as {@code amps} where nothing is known
 * @param byInverter whether the inverter feeds it, whose rating then stands for its amps
 * @param assumed what was taken where nothing was told, in plain words
 */
public record OwnLoad(
        String name,
        double amps,
        double hoursPerDay,
        double idleAmps,
        double surgeAmps,
        boolean byInverter,
        List<String> assumed) {

    private static final double HOURS_A_DAY = 24;

    /** Keeps its own list. */
    public OwnLoad {
        assumed = List.copyOf(assumed);
    }

    /** Charge that it takes in a day. */
    public double ampHoursPerDay() {
        return amps * hoursPerDay + idleAmps * (HOURS_A_DAY - hoursPerDay);
    }
}
