package org.gaugebench.sim.adopt;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.gaugebench.sim.logs.LogException;
import org.gaugebench.sim.logs.LogProblem;
import org.gaugebench.sim.logs.MeasuredLog;
import org.gaugebench.sim.units.QuantityFormat;
import org.gaugebench.sim.units.RecordUnit;

/** What happens in the scenario beside the current: gaps, restarts, temperatures. */
final class Steps {
    /** A scenario makes at most 10,000 changes; a gap makes two, a restart too. */
    private static final int MOST_CHANGES = 9_000;

    /** Twice the smallest step a battery's own warmth is worth, doubled until they are few. */
    private static final double FINEST_KELVIN = 1;

    private static final int MOST_TEMPERATURES = 1_000;
    private static final double COLDEST = -40;
    private static final double HOTTEST = 80;

    private final List<Step> steps = new ArrayList<>();
    private double kelvin = FINEST_KELVIN;
    private double firstCelsius;

    private record Step(long atMillis, String text) {}

    Steps(FieldLog field) throws LogException {
        for (LogSpan gap : field.gaps()) {
            long to = Math.min(gap.toMillis(), field.durationMillis());
            if (gap.fromMillis() < to) {
                add(
                        gap.fromMillis(),
                        "{from: %s, to: %s, set: {sensor.samples: missing}}"
                                .formatted(time(gap.fromMillis()), time(to)));
            }
        }
        for (LogSpan restart : field.restarts()) {
            if (restart.fromMillis() < field.durationMillis()) {
                add(
                        restart.fromMillis(),
                        "{at: %s, set: {gauge.power: off}}".formatted(time(restart.fromMillis())));
                long on = Math.min(restart.toMillis(), field.durationMillis());
                add(on, "{at: %s, set: {gauge.power: on}}".formatted(time(on)));
            }
        }
        if (2 * steps.size() > MOST_CHANGES) {
            throw new LogException(
                    List.of(
                            new LogProblem(
                                    field.log().file(),
                                    0,
                                    0,
                                    field.gaps().size()
                                            + " gaps and "
                                            + field.restarts().size()
                                            + " restarts are more than a scenario can hold; give a"
                                            + " longer --gap, or cut the log")));
        }
        if (field.log().hasTemperature()) {
            addTemperatures(field);
        }
        steps.sort(Comparator.comparingLong(Step::atMillis));
    }

    private void addTemperatures(FieldLog field) throws LogException {
        MeasuredLog log = field.log();
        firstCelsius = celsius(log, 0);
        List<Step> found = temperatures(field);
        while (found.size() > MOST_TEMPERATURES) {
            kelvin *= 2;
            found = temperatures(field);
        }
        steps.addAll(found);
    }

    private List<Step> temperatures(FieldLog field) throws LogException {
        List<Step> found = new ArrayList<>();
        double last = firstCelsius;
        for (int row = 1; row < field.log().rows(); row++) {
            double now = celsius(field.log(), row);
            long at = field.logMillis(row);
            if (Math.abs(now - last) >= kelvin && at < field.durationMillis()) {
                found.add(
                        new Step(
                                at,
                                "{at: %s, set: {battery.temperature: %s}}"
                                        .formatted(time(at), temperature(now))));
                last = now;
            }
        }
        return found;
    }

    private static double celsius(MeasuredLog log, int row) throws LogException {
        double celsius = log.temperatureCelsius(row);
        if (celsius < COLDEST || celsius > HOTTEST) {
            throw new LogException(
                    List.of(
                            new LogProblem(
                                    log.file(),
                                    log.line(row),
                                    0,
                                    "temperature: expected -40 to 80 °C, but found "
                                            + celsius
                                            + "; is the unit °C?")));
        }
        return celsius;
    }

    private void add(long at, String text) {
        steps.add(new Step(at, text));
    }

    /** Entries of a timeline in order of time. */
    List<String> texts() {
        return steps.stream().map(Step::text).toList();
    }

    /** Of the first row; 0 without temperatures. */
    String firstTemperature() {
        return temperature(firstCelsius);
    }

    /** By how much the log's temperature moves until the scenario follows. */
    double kelvin() {
        return kelvin;
    }

    static String time(long millis) {
        return QuantityFormat.format(millis, RecordUnit.MILLIS);
    }

    private static String temperature(double celsius) {
        return QuantityFormat.format(Math.round(celsius * 10) * 100, RecordUnit.MILLICELSIUS);
    }
}
