package org.gaugebench.sim.advice;

import java.util.Locale;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.units.ConverterRange;
import org.gaugebench.sim.units.QuantityFormat;
import org.gaugebench.sim.units.RecordUnit;
import org.gaugebench.sim.units.ShuntRating;

/**
 * What a system may be so that it can be run. Sizing asks for less; a run needs a gauge that can be
 * told of the shunt, and a front end that its zero error does not fill. The limits are those of the
 * scenario format.
 */
public final class TrialLimits {
    /** Most that one load draws, and that chargers give together. */
    static final double MOST_AMPS = 2_000;

    /** Most amp-hours of a battery. */
    private static final double MOST_AMP_HOURS = 10_000;

    /** Largest zero error, as it stands at the shunt. */
    private static final double MOST_ZERO_VOLTS = 0.1;

    private TrialLimits() {}

    /**
     * Tells what of a system cannot be run.
     *
     * @param system as it was told
     * @param gauge the owner's
     * @param shunt that is fitted
     * @param fields is told of all that is out of limits
     */
    public static void check(
            OwnSystem system, OwnersGauge gauge, ShuntRating shunt, TypedFields fields) {
        if (!allows(Setting.SHUNT_RATED_CURRENT, shunt.microamps() / 1e3)
                || !allows(Setting.SHUNT_RATED_DROP, (double) shunt.microvolts())) {
            fields.wrong(
                    "shunt",
                    0,
                    ("for a run, expected a shunt of %s to %s, in whole milliamps, and %s to %s,"
                                    + " such as 100 A / 75 mV, but found '%s'")
                            .formatted(
                                    amps(Setting.SHUNT_RATED_CURRENT.minimum()),
                                    amps(Setting.SHUNT_RATED_CURRENT.maximum()),
                                    volts(Setting.SHUNT_RATED_DROP.minimum()),
                                    volts(Setting.SHUNT_RATED_DROP.maximum()),
                                    shunt));
        }
        ConverterRange converter = system.converter();
        if (converter != null
                && (!allows(Setting.SHUNT_CONVERTER_BITS, converter.bits())
                        || !allows(Setting.SHUNT_FULL_SCALE, (double) converter.microvolts()))) {
            fields.wrong(
                    "adc",
                    0,
                    ("for a run, expected a converter of %d to %d bit and %s to %s, such as 20"
                                    + " bit, 100 mV, but found '%s'")
                            .formatted(
                                    Setting.SHUNT_CONVERTER_BITS.minimum(),
                                    Setting.SHUNT_CONVERTER_BITS.maximum(),
                                    volts(Setting.SHUNT_FULL_SCALE.minimum()),
                                    volts(Setting.SHUNT_FULL_SCALE.maximum()),
                                    converter));
        }
        loads(system, fields);
        if (system.chargerAmps() > MOST_AMPS) {
            fields.wrong(
                    "charger",
                    0,
                    text(
                            "for a run, expected at most %.0f A of all chargers together, such as"
                                    + " 20 A, but found %.0f A",
                            MOST_AMPS, system.chargerAmps()));
        }
        Double zero = gauge.zeroAmps();
        double most = mostZeroAmps(shunt);
        if (zero != null && zero > most) {
            fields.wrong(
                    "zero-error",
                    0,
                    text(
                            "with the shunt %s, expected a zero error of at most %s, such as 5 mA,"
                                    + " but found %s",
                            shunt, Sizing.amps(most), Sizing.amps(zero)));
        }
    }

    private static void loads(OwnSystem system, TypedFields fields) {
        for (int i = 0; i < system.loads().size(); i++) {
            OwnLoad load = system.loads().get(i);
            if (Math.max(load.amps(), load.idleAmps()) > MOST_AMPS) {
                fields.wrong(
                        "load",
                        i,
                        text(
                                "for a run, expected a load of at most %.0f A, such as \"lamp: 1.2"
                                        + " A, 5 h\", but '%s' draws %.0f A",
                                MOST_AMPS, load.name(), Math.max(load.amps(), load.idleAmps())));
            }
        }
    }

    /**
     * Tells what of a change cannot be run.
     *
     * @param field under which it was typed
     */
    public static void check(OwnSystem system, OwnChange change, String field, TypedFields fields) {
        double both = system.ampHours() + change.amount();
        if (change.what() == OwnChange.What.SECOND_BATTERY && both > MOST_AMP_HOURS) {
            fields.wrong(
                    field,
                    0,
                    text(
                            "expected so much that both batteries hold at most %.0f Ah, such as"
                                    + " 100 Ah beside one of 100 Ah, but both hold %s",
                            MOST_AMP_HOURS, Changes.ampHours(both)));
        }
    }

    /** Largest zero error that a front end has on a shunt. */
    static double mostZeroAmps(ShuntRating shunt) {
        return MOST_ZERO_VOLTS * shunt.microamps() / shunt.microvolts();
    }

    /** In whole steps and between the ends. */
    private static boolean allows(Setting setting, double value) {
        return value == Math.rint(value)
                && value >= setting.minimum()
                && value <= setting.maximum();
    }

    private static String amps(long milliamps) {
        return QuantityFormat.format(milliamps * 1_000, RecordUnit.MICROAMPS);
    }

    private static String volts(long microvolts) {
        return QuantityFormat.format(microvolts, RecordUnit.MICROVOLTS);
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
