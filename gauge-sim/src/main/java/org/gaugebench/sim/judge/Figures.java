package org.gaugebench.sim.judge;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import org.gaugebench.core.port.Readout;
import org.gaugebench.sim.scenario.Expectation.Reading;

/** Integer figures as people read them. */
public final class Figures {
    private Figures() {}

    /** A figure of a reading with its unit: "61.42 %", "-4.200 A", "12.71 V", "38 h 20 min". */
    public static String of(Reading reading, long value) {
        return switch (reading) {
            case STATE_OF_CHARGE, LOWER_EDGE, UPPER_EDGE, TRUE_STATE_OF_CHARGE -> percent(value);
            case REMAINING_CHARGE, FULL_CHARGE_CAPACITY, AVAILABLE_CHARGE ->
                    decimal(value, 6, 3) + " Ah";
            case CURRENT, AVERAGE_CURRENT, TRUE_CURRENT -> decimal(value, 6, 3) + " A";
            case VOLTAGE, TRUE_VOLTAGE -> decimal(value, 6, 3) + " V";
            case TIME_TO_EMPTY,
                    TIME_TO_FULL,
                    TRUE_TIME_TO_EMPTY_LOAD_HELD,
                    TRUE_TIME_TO_EMPTY_AS_IT_GOES ->
                    value == Reading.NEVER ? "never" : duration(value * 60_000);
            case TEMPERATURE, TRUE_TEMPERATURE -> decimal(value, 3, 1) + " °C";
        };
    }

    /** Parts per million as percent with two digits. */
    public static String percent(long partsPerMillion) {
        return decimal(partsPerMillion, 4, 2) + " %";
    }

    /** The band's edges in whole percent, outward, so that the text claims no more: "57 to 65". */
    public static String edges(long lowerPartsPerMillion, long upperPartsPerMillion) {
        return lowerPartsPerMillion / 10_000 + " to " + (upperPartsPerMillion + 9_999) / 10_000;
    }

    static String edges(Readout readout) {
        return edges(readout.lowerEdgePartsPerMillion, readout.upperEdgePartsPerMillion);
    }

    /** An integer shifted by decimal digits and rounded half away from zero; no "-0.0". */
    public static String decimal(long value, int shift, int digits) {
        BigDecimal shifted =
                BigDecimal.valueOf(value, shift).setScale(digits, RoundingMode.HALF_UP);
        return shifted.signum() == 0
                ? BigDecimal.ZERO.setScale(digits).toPlainString()
                : shifted.toPlainString();
    }

    /** A moment of the run: "2 d 03:12:40", with milliseconds only where there are any. */
    public static String moment(long millis) {
        long days = millis / 86_400_000;
        long rest = millis % 86_400_000;
        String clock =
                String.format(
                        Locale.ROOT,
                        "%d d %02d:%02d:%02d",
                        days,
                        rest / 3_600_000,
                        rest / 60_000 % 60,
                        rest / 1_000 % 60);
        return rest % 1_000 == 0
                ? clock
                : clock + String.format(Locale.ROOT, ".%03d", rest % 1_000);
    }

    /** A length of time: "38 h 20 min", "7 d", "45 s". */
    public static String duration(long millis) {
        if (millis == 0) {
            return "0 min";
        }
        StringBuilder text = new StringBuilder();
        long rest = appendUnit(text, millis, 86_400_000, "d");
        rest = appendUnit(text, rest, 3_600_000, "h");
        rest = appendUnit(text, rest, 60_000, "min");
        rest = appendUnit(text, rest, 1_000, "s");
        appendUnit(text, rest, 1, "ms");
        return text.toString();
    }

    private static long appendUnit(StringBuilder text, long millis, long unit, String symbol) {
        if (millis >= unit) {
            text.append(text.isEmpty() ? "" : " ").append(millis / unit).append(' ').append(symbol);
        }
        return millis % unit;
    }
}
