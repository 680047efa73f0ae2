package org.gaugebench.sim.scenario;

import org.gaugebench.sim.scenario.Expectation.Reading;
import org.gaugebench.sim.units.QuantityFormat;
import org.gaugebench.sim.units.RecordUnit;

/** An expectation as one line for people. */
final class ExpectationText {
    private ExpectationText() {}

    static String of(Expectation it) {
        String subject = subject(it);
        String state =
                it.trueStateAtLeastPartsPerMillion() < 0
                        ? ""
                        : ", each with the true state at least "
                                + QuantityFormat.format(
                                        it.trueStateAtLeastPartsPerMillion(),
                                        RecordUnit.PARTS_PER_MILLION);
        return subject + when(it) + ": " + claim(it) + state + times(it);
    }

    private static String when(Expectation it) {
        String span = " from " + time(it.fromMillis()) + " to " + time(it.toMillis());
        return switch (it.kind()) {
            case AT -> " at " + time(it.fromMillis());
            case THROUGHOUT, EVENTS -> span;
            case BY ->
                    (it.fromMillis() == 0 ? "" : " from " + time(it.fromMillis()))
                            + " by "
                            + time(it.toMillis());
            case NEVER -> " never" + span;
            case ONCE -> " once" + span;
        };
    }

    private static String times(Expectation it) {
        return span(", the first", it.times().firstFromMillis(), it.times().firstToMillis())
                + span(", the last", it.times().lastFromMillis(), it.times().lastToMillis());
    }

    private static String span(String what, long from, long to) {
        if (from == 0 && to == Long.MAX_VALUE) {
            return "";
        }
        return what
                + (from == 0 ? "" : " from " + time(from))
                + (to == Long.MAX_VALUE ? "" : " to " + time(to));
    }

    private static String subject(Expectation it) {
        String what = it.event() == null ? "" : "'" + SettingUnits.key(it.event()) + "'";
        if (it.fault() != null) {
            what += " of '" + SettingUnits.key(it.fault()) + "'";
        }
        if (it.reading() != null) {
            what = it.reading().key();
        }
        if (it.register() != null) {
            what = "register " + SettingUnits.key(it.register());
        }
        boolean ofGauge = it.reading() == null || !it.reading().isOfTruthAlone();
        return ofGauge && !it.gauge().equals(GaugeReader.FIRST) ? it.gauge() + " " + what : what;
    }

    private static String claim(Expectation it) {
        String value = value(it, it.value());
        return switch (it.comparison()) {
            case WITHIN_OF_TRUTH -> "within " + value(it, it.tolerance()) + " of the truth";
            case BAND_HOLDS_TRUTH -> "the truth within the gauge's own band";
            case WITHIN_OF_VALUE -> "within " + value(it, it.tolerance()) + " of " + value;
            case AT_LEAST -> "at least " + value;
            case AT_MOST -> "at most " + value;
            case EXACTLY -> it.isOfEvents() ? value : "exactly " + value;
            case NOT_KNOWN -> "not known";
            case MORE_THAN -> "more than " + value;
        };
    }

    /** A value in the reading's unit, or a number of events. */
    static String value(Expectation it, long value) {
        if (it.register() != null) {
            return value + " " + it.register().unit();
        }
        if (it.reading() == null) {
            return value + (value == 1 ? " time" : " times");
        }
        if (it.reading().looksAhead() && value == Reading.NEVER) {
            return "never";
        }
        RecordUnit unit = SettingUnits.of(it.reading());
        // Hours stay hours: "more than 99 h" is what the display says, not "4 d 3 h".
        return unit == RecordUnit.MINUTES && value % 60 == 0
                ? value / 60 + " h"
                : QuantityFormat.format(value, unit);
    }

    private static String time(long millis) {
        return QuantityFormat.format(millis, RecordUnit.MILLIS);
    }
}
