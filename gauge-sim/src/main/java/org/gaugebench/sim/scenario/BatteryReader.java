package org.gaugebench.sim.scenario;

import static org.gaugebench.sim.units.RecordUnit.MICROAMP_HOURS;
import static org.gaugebench.sim.units.RecordUnit.MICROOHMS;
import static org.gaugebench.sim.units.RecordUnit.MICROVOLTS;
import static org.gaugebench.sim.units.RecordUnit.MILLICELSIUS;
import static org.gaugebench.sim.units.RecordUnit.MILLIS;
import static org.gaugebench.sim.units.RecordUnit.PARTS_PER_MILLION;
import static org.gaugebench.sim.units.RecordUnit.PARTS_PER_MILLION_PER_MONTH;

import java.util.List;

/** Reads the battery. */
final class BatteryReader {
    static final long COLDEST_MILLICELSIUS = -40_000;
    static final long HOTTEST_MILLICELSIUS = 80_000;
    private static final long HIGHEST_MICROVOLTS = 100_000_000;
    private static final long HIGHEST_MICROOHMS = 10_000_000;
    private static final long DAY_MILLIS = 86_400_000;
    private static final long STANDING_IN_MICROAMP_HOURS = 100_000_000;

    private BatteryReader() {}

    static BatterySpec read(Block block) {
        block.require("chemistry", "chemistry: lead-acid-agm");
        block.require("capacity", "capacity: 60 Ah @ 20 h");
        Chemistry chemistry =
                block.choice(
                        "chemistry",
                        List.of(Chemistry.values()),
                        Chemistry::key,
                        Chemistry.LEAD_ACID_AGM);
        int nominalVolts = nominalVolts(block);
        long capacity =
                block.capacity(
                        "capacity",
                        MICROAMP_HOURS,
                        100_000,
                        10_000_000_000L,
                        STANDING_IN_MICROAMP_HOURS);
        BatterySpec usual = Defaults.battery(chemistry, nominalVolts, capacity);
        Pair pair = polarization(block, usual);
        BatterySpec battery =
                new BatterySpec(
                        chemistry,
                        nominalVolts,
                        capacity,
                        part(block, "start", 0, usual.startPartsPerMillion()),
                        block.quantity(
                                "series-resistance",
                                MICROOHMS,
                                0,
                                HIGHEST_MICROOHMS,
                                usual.seriesMicroohms()),
                        pair.microohms(),
                        pair.millis(),
                        part(
                                block,
                                "coulombic-efficiency",
                                500_000,
                                usual.coulombicEfficiencyPartsPerMillion()),
                        block.quantity(
                                "self-discharge",
                                PARTS_PER_MILLION_PER_MONTH,
                                0,
                                500_000,
                                usual.selfDischargePartsPerMillionPerMonth()),
                        block.quantity(
                                "temperature",
                                MILLICELSIUS,
                                COLDEST_MILLICELSIUS,
                                HOTTEST_MILLICELSIUS,
                                usual.temperatureMillicelsius()),
                        block.quantityOrNone(
                                "acceptance-time",
                                MILLIS,
                                1_000,
                                10 * DAY_MILLIS,
                                usual.acceptanceMillis()),
                        block.quantity(
                                "end-current",
                                PARTS_PER_MILLION,
                                0,
                                100_000,
                                usual.endCurrentPartsPerMillion()),
                        stop(block, "charge-stop", usual.chargeStopMicrovolts()),
                        stop(block, "discharge-stop", usual.dischargeStopMicrovolts()));
        battery = battery.with(TraitsReader.read(block, battery));
        block.finish();
        if (battery.chargeStopMicrovolts() > 0
                && battery.chargeStopMicrovolts() <= battery.dischargeStopMicrovolts()) {
            block.problem(
                    block.has("charge-stop") ? "charge-stop" : "discharge-stop",
                    "'charge-stop' must be above 'discharge-stop', such as 14.6 V over 10 V");
        }
        return battery;
    }

    private static int nominalVolts(Block block) {
        long microvolts =
                block.quantity(
                        "nominal-voltage",
                        MICROVOLTS,
                        1,
                        HIGHEST_MICROVOLTS,
                        Defaults.NOMINAL_VOLTS * 1_000_000L);
        if (List.of(12_000_000L, 24_000_000L, 36_000_000L, 48_000_000L).contains(microvolts)) {
            return (int) (microvolts / 1_000_000);
        }
        block.valueProblem("nominal-voltage", "'nominal-voltage' must be 12 V, 24 V, 36 V or 48 V");
        return Defaults.NOMINAL_VOLTS;
    }

    private record Pair(long microohms, long millis) {}

    private static Pair polarization(Block block, BatterySpec usual) {
        if (block.isWord("polarization", "none")) {
            return new Pair(0, 0);
        }
        Block pair = block.block("polarization", "polarization");
        Pair read =
                new Pair(
                        pair.quantity(
                                "resistance",
                                MICROOHMS,
                                0,
                                HIGHEST_MICROOHMS,
                                usual.polarizationMicroohms()),
                        pair.quantity(
                                "time-constant",
                                MILLIS,
                                0,
                                DAY_MILLIS,
                                usual.polarizationMillis()));
        pair.finish();
        return read;
    }

    private static long part(Block block, String key, long minimum, long usual) {
        return block.quantity(key, PARTS_PER_MILLION, minimum, Defaults.WHOLE, usual);
    }

    private static long stop(Block block, String key, long usual) {
        return block.quantityOrNone(key, MICROVOLTS, 1_000_000, HIGHEST_MICROVOLTS, usual);
    }
}
