package org.gaugebench.sim.scenario;

import static org.gaugebench.sim.units.RecordUnit.MICROOHMS;
import static org.gaugebench.sim.units.RecordUnit.MICROVOLTS;
import static org.gaugebench.sim.units.RecordUnit.MILLIHERTZ;
import static org.gaugebench.sim.units.RecordUnit.MILLIS;
import static org.gaugebench.sim.units.RecordUnit.PARTS_PER_MILLION;

import org.gaugebench.sim.units.QuantityFormat;
import org.jspecify.annotations.Nullable;

/** Reads and writes what goes beyond a charger's three phases. */
final class ChargerTraitsReader {
    private static final long HOUR_MILLIS = 3_600_000;
    private static final long DAY_MILLIS = 24 * HOUR_MILLIS;
    private static final long USUAL_MILLIS = 2 * HOUR_MILLIS;
    private static final long USUAL_EVERY_MILLIS = 30 * DAY_MILLIS;

    private static final String PULSES = "pulse-frequency";
    private static final long HIGHEST_MILLIHERTZ = 100_000_000;

    /** One pulse in one tick: 1,000 mHz times 1,000 ms. */
    private static final long MILLIHERTZ_MILLIS = 1_000_000;

    private ChargerTraitsReader() {}

    static ChargerTraits read(
            Block charger,
            long absorptionMicrovolts,
            long limitMicroamps,
            long tickMillis,
            @Nullable ProfileSpec profile) {
        return new ChargerTraits(
                charger.quantityOrNone("cable-resistance", MICROOHMS, 1, 1_000_000, 0),
                charger.quantity("meter-error", PARTS_PER_MILLION, -200_000, 200_000, 0),
                charger.quantityOrNone("runs-for", MILLIS, 1_000, 365 * DAY_MILLIS, 0),
                charger.has("equalizing")
                        ? equalizing(
                                charger.block("equalizing", "equalizing"), absorptionMicrovolts)
                        : null,
                pulses(charger, tickMillis),
                WindReader.read(charger, limitMicroamps),
                profile);
    }

    /** A pulse that is longer than a tick would be a load of its own to the plant's step. */
    private static long pulses(Block charger, long tickMillis) {
        long millihertz = charger.quantityOrNone(PULSES, MILLIHERTZ, 1_000, HIGHEST_MILLIHERTZ, 0);
        if (millihertz > 0 && millihertz * tickMillis < MILLIHERTZ_MILLIS) {
            charger.valueProblem(
                    PULSES,
                    "the mean of a tick holds the voltage, so at least one whole pulse has to fit"
                            + " into a 'tick' of %s ms; expected a 'pulse-frequency' such as 100 Hz"
                                    .formatted(tickMillis));
        }
        return millihertz;
    }

    private static ChargerTraits.Equalizing equalizing(Block block, long absorptionMicrovolts) {
        block.require("voltage", "voltage: 15.5 V");
        ChargerTraits.Equalizing it =
                new ChargerTraits.Equalizing(
                        block.quantity(
                                "voltage",
                                MICROVOLTS,
                                absorptionMicrovolts,
                                120_000_000,
                                absorptionMicrovolts),
                        block.quantity("for", MILLIS, 1_000, 10 * DAY_MILLIS, USUAL_MILLIS),
                        block.quantity(
                                "every", MILLIS, 1_000, 3_650 * DAY_MILLIS, USUAL_EVERY_MILLIS));
        block.finish();
        return it;
    }

    static void write(ChargerTraits it, long limitMicroamps, Lines lines) {
        if (it.cableMicroohms() > 0) {
            lines.value("cable-resistance", QuantityFormat.format(it.cableMicroohms(), MICROOHMS));
        }
        if (it.meterErrorPartsPerMillion() != 0) {
            lines.quantity("meter-error", PARTS_PER_MILLION, it.meterErrorPartsPerMillion(), 0);
        }
        if (it.runsForMillis() > 0) {
            lines.value("runs-for", ScenarioWriter.time(it.runsForMillis()));
        }
        WindReader.write(it.wind(), limitMicroamps, lines);
        equalizing(it.equalizing(), lines);
        if (it.pulseMillihertz() > 0) {
            lines.value(PULSES, QuantityFormat.format(it.pulseMillihertz(), MILLIHERTZ));
        }
        ProfileBlock.write(it.profile(), ProfileBlock.KEY, lines);
    }

    private static void equalizing(ChargerTraits.@Nullable Equalizing it, Lines lines) {
        if (it == null) {
            return;
        }
        lines.open("equalizing");
        lines.value("voltage", QuantityFormat.format(it.microvolts(), MICROVOLTS));
        lines.quantity("for", MILLIS, it.forMillis(), USUAL_MILLIS);
        lines.quantity("every", MILLIS, it.everyMillis(), USUAL_EVERY_MILLIS);
        lines.close();
    }
}
