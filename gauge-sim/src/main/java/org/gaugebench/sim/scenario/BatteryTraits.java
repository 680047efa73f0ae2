package org.gaugebench.sim.scenario;

import org.gaugebench.sim.scenario.KineticWells.Rating;
import org.jspecify.annotations.Nullable;

/**
 * What a scenario may ask of a battery beyond the plain model. Everything is off in {@link #NONE},
 * and off means: the same bits as without it.
 *
 * @param kinetic ratings from which the wells of available and bound charge follow; null for one
 *     well
 * @param slowPolarizationMicroohms resistance of the second RC pair
 * @param slowPolarizationMillis time constant of the second RC pair; 0 for none
 * @param hysteresisMicrovolts half the gap between the charge and discharge branches of the
 *     open-circuit voltage, a cell; 0 for none
 * @param capacityFollowsTemperature whether cold keeps charge back
 * @param efficiencyFallsNearFull whether gassing takes more the fuller the battery is
 * @param thermal surroundings and self-heating; null for a temperature that only the timeline moves
 * @param ageing wear at the start
 * @param weakCell one cell that holds less than the others; null for none
 */
public record BatteryTraits(
        @Nullable Kinetic kinetic,
        long slowPolarizationMicroohms,
        long slowPolarizationMillis,
        long hysteresisMicrovolts,
        boolean capacityFollowsTemperature,
        boolean efficiencyFallsNearFull,
        @Nullable Thermal thermal,
        Ageing ageing,
        @Nullable WeakCell weakCell) {

    /** A battery as new in every respect, of one well, at the timeline's temperature. */
    public static final BatteryTraits NONE =
            new BatteryTraits(null, 0, 0, 0, false, false, null, Ageing.NEW, null);

    /**
     * Two more ratings beside the one at 20 h.
     *
     * @param tenHourMicroampHours what a discharge of 10 h gives
     * @param oneHourMicroampHours what a discharge of 1 h gives
     */
    public record Kinetic(long tenHourMicroampHours, long oneHourMicroampHours) {
        /**
         * The wells.
         *
         * @param twentyHourMicroampHours the battery's capacity
         * @return null where no wells give these ratings
         */
        public @Nullable KineticWells wells(long twentyHourMicroampHours) {
            return KineticWells.through(
                    new Rating(20, twentyHourMicroampHours / 1e6),
                    new Rating(10, tenHourMicroampHours / 1e6),
                    new Rating(1, oneHourMicroampHours / 1e6));
        }
    }

    /**
     * Surroundings and self-heating.
     *
     * @param ambientMillicelsius daily mean of the surroundings
     * @param swingMillicelsius how far above and below the mean a day goes; 0 for constant
     * @param warmestMillis time of day at which it is warmest
     * @param millikelvinPerWatt rise above the surroundings for each watt of heat
     * @param timeConstantMillis of the battery towards its surroundings, above 0
     */
    public record Thermal(
            long ambientMillicelsius,
            long swingMillicelsius,
            long warmestMillis,
            long millikelvinPerWatt,
            long timeConstantMillis) {}

    /**
     * Wear, all of it there at the start and constant.
     *
     * @param capacityLossPartsPerMillion part of the capacity that is gone
     * @param resistanceGrowthPartsPerMillion part by which every resistance has grown
     * @param acceptanceLossPartsPerMillion part of the charge acceptance that is gone
     */
    public record Ageing(
            long capacityLossPartsPerMillion,
            long resistanceGrowthPartsPerMillion,
            long acceptanceLossPartsPerMillion) {
        /** No wear. */
        public static final Ageing NEW = new Ageing(0, 0, 0);
    }

    /**
     * One cell in series that is weaker than the others.
     *
     * @param capacityPartsPerMillion what it holds, in parts of what each other cell holds
     * @param lagPartsPerMillion charge that it lacks, in the same parts, when the others are full
     */
    public record WeakCell(long capacityPartsPerMillion, long lagPartsPerMillion) {}

    /** The same with wells. */
    public BatteryTraits withKinetic(Kinetic ratings) {
        return new BatteryTraits(
                ratings,
                slowPolarizationMicroohms,
                slowPolarizationMillis,
                hysteresisMicrovolts,
                capacityFollowsTemperature,
                efficiencyFallsNearFull,
                thermal,
                ageing,
                weakCell);
    }

    /** The same with a second RC pair. */
    public BatteryTraits withSlowPolarization(long microohms, long millis) {
        return new BatteryTraits(
                kinetic,
                microohms,
                millis,
                hysteresisMicrovolts,
                capacityFollowsTemperature,
                efficiencyFallsNearFull,
                thermal,
                ageing,
                weakCell);
    }

    /** The same with two branches of the open-circuit voltage. */
    public BatteryTraits withHysteresis(long microvoltsPerCell) {
        return new BatteryTraits(
                kinetic,
                slowPolarizationMicroohms,
                slowPolarizationMillis,
                microvoltsPerCell,
                capacityFollowsTemperature,
                efficiencyFallsNearFull,
                thermal,
                ageing,
                weakCell);
    }

    /** The same with a capacity that follows the temperature. */
    public BatteryTraits withCapacityFollowingTemperature() {
        return new BatteryTraits(
                kinetic,
                slowPolarizationMicroohms,
                slowPolarizationMillis,
                hysteresisMicrovolts,
                true,
                efficiencyFallsNearFull,
                thermal,
                ageing,
                weakCell);
    }

    /** The same with an efficiency that falls near full. */
    public BatteryTraits withEfficiencyFallingNearFull() {
        return new BatteryTraits(
                kinetic,
                slowPolarizationMicroohms,
                slowPolarizationMillis,
                hysteresisMicrovolts,
                capacityFollowsTemperature,
                true,
                thermal,
                ageing,
                weakCell);
    }

    /** The same with surroundings. */
    public BatteryTraits withThermal(Thermal surroundings) {
        return new BatteryTraits(
                kinetic,
                slowPolarizationMicroohms,
                slowPolarizationMillis,
                hysteresisMicrovolts,
                capacityFollowsTemperature,
                efficiencyFallsNearFull,
                surroundings,
                ageing,
                weakCell);
    }

    /** The same with wear. */
    public BatteryTraits withAgeing(Ageing wear) {
        return new BatteryTraits(
                kinetic,
                slowPolarizationMicroohms,
                slowPolarizationMillis,
                hysteresisMicrovolts,
                capacityFollowsTemperature,
                efficiencyFallsNearFull,
                thermal,
                wear,
                weakCell);
    }

    /** The same with a weak cell. */
    public BatteryTraits withWeakCell(WeakCell cell) {
        return new BatteryTraits(
                kinetic,
                slowPolarizationMicroohms,
                slowPolarizationMillis,
                hysteresisMicrovolts,
                capacityFollowsTemperature,
                efficiencyFallsNearFull,
                thermal,
                ageing,
                cell);
    }
}
