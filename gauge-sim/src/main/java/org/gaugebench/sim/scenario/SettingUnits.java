package org.gaugebench.sim.scenario;

import java.util.Locale;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.units.QuantityFormat;
import org.gaugebench.sim.units.RecordUnit;

/** Which unit of this side goes with a unit or a code of the core, and with a reading. */
public final class SettingUnits {
    private SettingUnits() {}

    /** The unit of a setting's integer; not for those that {@link SettingText} writes as a word. */
    static RecordUnit of(Setting setting) {
        return switch (setting.unit()) {
            case "uA" -> RecordUnit.MICROAMPS;
            case "mA" -> RecordUnit.MILLIAMPS;
            case "nV" -> RecordUnit.NANOVOLTS;
            case "uV" -> RecordUnit.MICROVOLTS;
            case "mV" -> RecordUnit.MILLIVOLTS;
            case "uOhm" -> RecordUnit.MICROOHMS;
            case "uW" -> RecordUnit.MICROWATTS;
            case "uAh" -> RecordUnit.MICROAMP_HOURS;
            case "mAh" -> RecordUnit.MILLIAMP_HOURS;
            case "ppm" -> RecordUnit.PARTS_PER_MILLION;
            case "ppm/month" -> RecordUnit.PARTS_PER_MILLION_PER_MONTH;
            case "uV/K" -> RecordUnit.MICROVOLTS_PER_KELVIN;
            case "ms" -> RecordUnit.MILLIS;
            case "s" -> RecordUnit.SECONDS;
            case "min" -> RecordUnit.MINUTES;
            case "h" -> RecordUnit.HOURS;
            case "d" -> RecordUnit.DAYS;
            case "bit" -> RecordUnit.BITS;
            case "counts/256" -> RecordUnit.COUNTS_Q8;
            default ->
                    throw new IllegalStateException(
                            "no quantity is written for the unit of setting " + setting.key());
        };
    }

    /** The unit of a reading. */
    public static RecordUnit of(Expectation.Reading reading) {
        return switch (reading) {
            case STATE_OF_CHARGE, LOWER_EDGE, UPPER_EDGE, TRUE_STATE_OF_CHARGE ->
                    RecordUnit.PARTS_PER_MILLION;
            case REMAINING_CHARGE, FULL_CHARGE_CAPACITY, AVAILABLE_CHARGE ->
                    RecordUnit.MICROAMP_HOURS;
            case CURRENT, AVERAGE_CURRENT, TRUE_CURRENT -> RecordUnit.MICROAMPS;
            case VOLTAGE, TRUE_VOLTAGE -> RecordUnit.MICROVOLTS;
            case TIME_TO_EMPTY,
                    TIME_TO_FULL,
                    TRUE_TIME_TO_EMPTY_LOAD_HELD,
                    TRUE_TIME_TO_EMPTY_AS_IT_GOES ->
                    RecordUnit.MINUTES;
            case TEMPERATURE, TRUE_TEMPERATURE -> RecordUnit.MILLICELSIUS;
        };
    }

    static String microamps(long microamps) {
        return QuantityFormat.format(microamps, RecordUnit.MICROAMPS);
    }

    /** The name of an event or a fault in scenario files: SET_TO_FULL is "set-to-full". */
    public static String key(Enum<?> code) {
        return code.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
