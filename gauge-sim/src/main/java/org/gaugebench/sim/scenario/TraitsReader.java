package org.gaugebench.sim.scenario;

import static org.gaugebench.sim.units.RecordUnit.MICROAMP_HOURS;
import static org.gaugebench.sim.units.RecordUnit.MICROOHMS;
import static org.gaugebench.sim.units.RecordUnit.MICROVOLTS;
import static org.gaugebench.sim.units.RecordUnit.MILLICELSIUS;
import static org.gaugebench.sim.units.RecordUnit.MILLIKELVIN;
import static org.gaugebench.sim.units.RecordUnit.MILLIKELVIN_PER_WATT;
import static org.gaugebench.sim.units.RecordUnit.MILLIS;
import static org.gaugebench.sim.units.RecordUnit.PARTS_PER_MILLION;

import org.gaugebench.sim.scenario.BatteryTraits.Ageing;
import org.gaugebench.sim.scenario.BatteryTraits.Kinetic;
import org.gaugebench.sim.scenario.BatteryTraits.Thermal;
import org.gaugebench.sim.scenario.BatteryTraits.WeakCell;
import org.gaugebench.sim.units.QuantityFormat;

/** Reads what a battery has beyond the plain model. A key that is left out is off. */
final class TraitsReader {
    static final long WARMEST_MILLIS = 15 * 3_600_000L;

    private static final String NONE = "none";
    private static final long MOST_MICROAMP_HOURS = 10_000_000_000L;
    private static final long MOST_MICROOHMS = 10_000_000;
    private static final long DAY_MILLIS = 86_400_000;
    private static final long LEAST_STRING_PARTS_PER_MILLION = 50_000;

    private final Block battery;
    private final BatterySpec plain;

    private TraitsReader(Block battery, BatterySpec plain) {
        this.battery = battery;
        this.plain = plain;
    }

    /**
     * Reads the traits.
     *
     * @param battery the whole block
     * @param plain what else it says
     */
    static BatteryTraits read(Block battery, BatterySpec plain) {
        return new TraitsReader(battery, plain).traits();
    }

    private BatteryTraits traits() {
        BatteryTraits traits = BatteryTraits.NONE;
        if (isOn("kinetic")) {
            traits = kinetic(traits);
        }
        if (isOn("slow-polarization")) {
            traits = slowPolarization(traits);
        }
        traits =
                traits.withHysteresis(
                        battery.quantityOrNone("hysteresis", MICROVOLTS, 0, 100_000, 0));
        if (battery.either("capacity-by-temperature", "on", "off", false)) {
            traits = traits.withCapacityFollowingTemperature();
        }
        if (battery.either("efficiency-near-full", "falls", "constant", false)) {
            if (!plain.chemistry().isLeadAcid()) {
                battery.valueProblem(
                        "efficiency-near-full",
                        "the efficiency of '"
                                + plain.chemistry().key()
                                + "' does not fall near full;"
                                + " expected 'efficiency-near-full: constant'");
            }
            traits = traits.withEfficiencyFallingNearFull();
        }
        if (isOn("surroundings")) {
            traits = surroundings(traits);
        }
        if (isOn("ageing")) {
            traits = ageing(traits);
        }
        return isOn("weak-cell") ? weakCell(traits) : traits;
    }

    private boolean isOn(String key) {
        return battery.has(key) && !battery.isWord(key, NONE);
    }

    private BatteryTraits kinetic(BatteryTraits traits) {
        Block block = battery.block("kinetic", "kinetic");
        long whole = plain.capacityMicroampHours();
        // Ratios of a published lead-acid battery of 100 Ah: always a pair that wells can give.
        long tenHours = whole * 93 / 100;
        long oneHour = whole * 60 / 100;
        block.require("capacity-10-h", "capacity-10-h: " + ampHours(tenHours));
        block.require("capacity-1-h", "capacity-1-h: " + ampHours(oneHour));
        Kinetic ratings =
                new Kinetic(
                        block.quantity(
                                "capacity-10-h", MICROAMP_HOURS, 1, MOST_MICROAMP_HOURS, tenHours),
                        block.quantity(
                                "capacity-1-h", MICROAMP_HOURS, 1, MOST_MICROAMP_HOURS, oneHour));
        block.finish();
        if (ratings.wells(whole) != null) {
            return traits.withKinetic(ratings);
        }
        battery.valueProblem(
                "kinetic",
                "no battery of available and bound charge gives "
                        + ampHours(whole)
                        + " in 20 h, "
                        + ampHours(ratings.tenHourMicroampHours())
                        + " in 10 h and "
                        + ampHours(ratings.oneHourMicroampHours())
                        + " in 1 h; expected less from each faster discharge, such as"
                        + " '{capacity-10-h: "
                        + ampHours(tenHours)
                        + ", capacity-1-h: "
                        + ampHours(oneHour)
                        + "}'");
        return traits;
    }

    private static String ampHours(long microampHours) {
        return QuantityFormat.format(microampHours, MICROAMP_HOURS);
    }

    private BatteryTraits slowPolarization(BatteryTraits traits) {
        Block block = battery.block("slow-polarization", "slow-polarization");
        block.require("resistance", "resistance: 4 mOhm");
        block.require("time-constant", "time-constant: 30 min");
        BatteryTraits read =
                traits.withSlowPolarization(
                        block.quantity("resistance", MICROOHMS, 1, MOST_MICROOHMS, 1),
                        block.quantity("time-constant", MILLIS, 1_000, 10 * DAY_MILLIS, 1_000));
        block.finish();
        return read;
    }

    private BatteryTraits surroundings(BatteryTraits traits) {
        Block block = battery.block("surroundings", "surroundings");
        block.require("mean", "mean: 15 °C");
        block.require("time-constant", "time-constant: 6 h");
        Thermal thermal =
                new Thermal(
                        block.quantity(
                                "mean",
                                MILLICELSIUS,
                                BatteryReader.COLDEST_MILLICELSIUS,
                                BatteryReader.HOTTEST_MILLICELSIUS,
                                plain.temperatureMillicelsius()),
                        block.quantity("swing", MILLIKELVIN, 0, 50_000, 0),
                        block.quantity("warmest", MILLIS, 0, DAY_MILLIS, WARMEST_MILLIS),
                        block.quantity("rise", MILLIKELVIN_PER_WATT, 0, 10_000, 0),
                        block.quantity(
                                "time-constant", MILLIS, 60_000, 30 * DAY_MILLIS, DAY_MILLIS));
        block.finish();
        long coldest = thermal.ambientMillicelsius() - thermal.swingMillicelsius();
        long warmest = thermal.ambientMillicelsius() + thermal.swingMillicelsius();
        if (coldest < BatteryReader.COLDEST_MILLICELSIUS
                || warmest > BatteryReader.HOTTEST_MILLICELSIUS) {
            block.valueProblem(
                    "swing",
                    "surroundings go from "
                            + QuantityFormat.format(coldest, MILLICELSIUS)
                            + " to "
                            + QuantityFormat.format(warmest, MILLICELSIUS)
                            + "; expected -40 °C to 80 °C, such as 'swing: 8 K'");
        }
        return traits.withThermal(thermal);
    }

    private BatteryTraits ageing(BatteryTraits traits) {
        Block block = battery.block("ageing", "ageing");
        BatteryTraits read =
                traits.withAgeing(
                        new Ageing(
                                block.quantity("capacity-loss", PARTS_PER_MILLION, 0, 800_000, 0),
                                block.quantity(
                                        "resistance-growth", PARTS_PER_MILLION, 0, 9_000_000, 0),
                                block.quantity(
                                        "acceptance-loss", PARTS_PER_MILLION, 0, 900_000, 0)));
        block.finish();
        return read;
    }

    private BatteryTraits weakCell(BatteryTraits traits) {
        Block block = battery.block("weak-cell", "weak-cell");
        block.require("capacity", "capacity: 90 %");
        WeakCell cell =
                new WeakCell(
                        block.quantity("capacity", PARTS_PER_MILLION, 50_000, 1_000_000, 1_000_000),
                        block.quantity("lag", PARTS_PER_MILLION, 0, 950_000, 0));
        block.finish();
        if (cell.capacityPartsPerMillion() - cell.lagPartsPerMillion()
                < LEAST_STRING_PARTS_PER_MILLION) {
            block.valueProblem(
                    "lag",
                    "a weak cell has to give at least 5 % after its lag; expected less, such as"
                            + " 'lag: 5 %'");
            return traits;
        }
        return traits.withWeakCell(cell);
    }
}
