package org.gaugebench.sim.report;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.gaugebench.sim.scenario.StudySpec;
import org.gaugebench.sim.units.RecordUnit;

/** Errors of a study as people read them: in their large unit, to the digit that is known. */
final class StudyFigures {
    private static final int CSV_PLACES = 3;

    private final int shift;
    private final String symbol;
    private final int places;

    /**
     * Prepares.
     *
     * @param unit of the errors
     * @param tolerance numerical tolerance in that unit: the last digit shown is finer than it
     */
    StudyFigures(RecordUnit unit, double tolerance) {
        this.shift = shift(unit);
        this.symbol = symbol(unit);
        int finest = shift;
        for (double step = 10; step <= tolerance && finest > 0; step *= 10) {
            finest--;
        }
        this.places = finest;
    }

    /** Decimal places between a step and the unit that people read. */
    static int shift(RecordUnit unit) {
        return switch (unit) {
            case PARTS_PER_MILLION -> 4;
            case MILLICELSIUS -> 3;
            default -> 6;
        };
    }

    static String symbol(RecordUnit unit) {
        return switch (unit) {
            case PARTS_PER_MILLION -> "%";
            case MICROAMPS -> "A";
            case MICROVOLTS -> "V";
            case MICROAMP_HOURS -> "Ah";
            case MILLICELSIUS -> "K";
            default -> throw new IllegalArgumentException("no reading is in " + unit);
        };
    }

    /** "error of the state-of-charge (shown less true)". */
    static String what(StudySpec spec) {
        return "error of the " + spec.reading().key().replace('-', ' ') + " (shown less true)";
    }

    /** Number and unit; "not known" for NaN. */
    String of(double steps) {
        return Double.isNaN(steps) ? "not known" : number(steps) + " " + symbol;
    }

    /** The number alone. */
    String number(double steps) {
        if (Double.isNaN(steps) || Double.isInfinite(steps)) {
            return "-";
        }
        BigDecimal value =
                new BigDecimal(steps).movePointLeft(shift).setScale(places, RoundingMode.HALF_UP);
        return (value.signum() == 0 ? BigDecimal.ZERO.setScale(places) : value).toPlainString();
    }

    /** A figure for programs: steps with three places, exact and the same everywhere. */
    static String plain(double steps) {
        if (Double.isNaN(steps) || Double.isInfinite(steps)) {
            return "";
        }
        BigDecimal value = new BigDecimal(steps).setScale(CSV_PLACES, RoundingMode.HALF_UP);
        return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
    }

    /** A share of one as whole percent, with one place below ten: "96 %", "2.4 %". */
    static String share(double share) {
        if (Double.isNaN(share)) {
            return "-";
        }
        int decimals = share < 0.0995 ? 1 : 0;
        return new BigDecimal(share).movePointRight(2).setScale(decimals, RoundingMode.HALF_UP)
                + " %";
    }

    /** A share of devices, rounded so that it claims no more: down to a tenth of a percent. */
    static String devices(double share, RoundingMode mode) {
        return new BigDecimal(share).movePointRight(2).setScale(1, mode).toPlainString();
    }
}
