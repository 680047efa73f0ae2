package org.gaugebench.sim.report;

import java.util.Locale;

/** Figures on the sheet: no more places than they are worth, the unit after a thin space. */
final class SheetFigures {
    private static final String THIN = "\u202f";

    private SheetFigures() {}

    static String amps(double amps) {
        double size = Math.abs(amps);
        return size < 0.1 && size > 0
                ? with("mA", "%.1f", amps * 1e3)
                : with("A", size < 10 ? "%.2f" : "%.1f", amps);
    }

    /** As a screen shows it: no finer than its usual steps. */
    static String screenAmps(double amps) {
        return with("A", "%.2f", amps);
    }

    static String volts(double volts) {
        return with("V", "%.2f", volts);
    }

    static String ampHours(double ampHours) {
        return with("Ah", ampHours == Math.rint(ampHours) ? "%.0f" : "%.1f", ampHours);
    }

    static String percent(double percent) {
        return with("%", "%.0f", percent);
    }

    /** Points with one place, and which way. */
    static String points(double points) {
        return with("points", "%.1f", points);
    }

    static String hours(double hours) {
        return hours < 48 ? with("h", "%.1f", hours) : with("days", "%.1f", hours / 24);
    }

    private static String with(String unit, String pattern, double value) {
        String figure = String.format(Locale.ROOT, pattern, value);
        // A zero has no side.
        String plain = figure.matches("-0(\\.0*)?") ? figure.substring(1) : figure;
        return plain.replace('-', '\u2212') + THIN + unit;
    }
}
