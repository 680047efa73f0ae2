package org.gaugebench.sim.scenario;

import static org.gaugebench.sim.units.RecordUnit.MICROOHMS;
import static org.gaugebench.sim.units.RecordUnit.MICROVOLTS;
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

    private ChargerTraitsReader() {}

    static ChargerTraits read(
            Block charger, long absorptionMicrovolts, @Nullable ProfileSpec profile) {
        return new ChargerTraits(
                charger.quantityOrNone("cable-resistance", MICROOHMS, 1, 1_000_000, 0),
                charger.quantity("meter-error", PARTS_PER_MILLION, -200_000, 200_000, 0),
                charger.quantityOrNone("runs-for", MILLIS, 1_000, 365 * DAY_MILLIS, 0),
                charger.has("equalizing")
                        ? equalizing(
                                charger.block("equalizing", "equalizing"), absorptionMicrovolts)
                        : null,
                profile);
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

    static void write(ChargerTraits it, Lines lines) {
        if (it.cableMicroohms() > 0) {
            lines.value("cable-resistance", QuantityFormat.format(it.cableMicroohms(), MICROOHMS));
        }
        if (it.meterErrorPartsPerMillion() != 0) {
            lines.quantity("meter-error", PARTS_PER_MILLION, it.meterErrorPartsPerMillion(), 0);
        }
        if (it.runsForMillis() > 0) {
            lines.value("runs-for", ScenarioWriter.time(it.runsForMillis()));
        }
        equalizing(it.equalizing(), lines);
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
