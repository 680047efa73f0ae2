package org.gaugebench.sim.advice;

import java.util.Comparator;
import java.util.List;
import org.gaugebench.sim.advice.TrialRun.Moment;
import org.gaugebench.sim.units.ShuntRating;

/** What the screen would show with one negative on the battery's side of the shunt. */
public final class WrongSide {
    /** Where nothing was told, to have a number: a lamp of an ampere on for five hours. */
    public static final OwnLoad EXAMPLE = new OwnLoad("a lamp", 1, 5, 0, 1, false, List.of());

    private static final double FROM_PERCENT = 90;
    private static final double CHARGE_FROM_PERCENT = 50;
    private static final int DAYS = 2;

    private WrongSide() {}

    /**
     * One mistake in a run.
     *
     * @param name of what is wired wrongly
     * @param isExample whether nothing was told and an example stands in
     * @param hours after which the figures below were read
     * @param shownPercent on the screen
     * @param truePercent really left
     * @param shownAmps on the screen while it is on
     * @param trueAmps of the battery then
     */
    public record Result(
            String name,
            boolean isExample,
            double hours,
            double shownPercent,
            double truePercent,
            double shownAmps,
            double trueAmps) {}

    /** The load that takes most a day, wired to the battery's own post. */
    public static Result load(OwnSystem system, OwnersGauge gauge, ShuntRating shunt) {
        OwnLoad wrong =
                system.loads().stream()
                        .filter(it -> !it.byInverter() && it.ampHoursPerDay() > 0)
                        .max(Comparator.comparingDouble(OwnLoad::ampHoursPerDay))
                        .orElse(null);
        OwnSystem drawn = wrong == null ? withExample(system) : system;
        OwnLoad load = wrong == null ? EXAMPLE : wrong;
        // As long as the charge lasts, at most two days.
        double perDay = drawn.loads().stream().mapToDouble(OwnLoad::ampHoursPerDay).sum();
        double days = Math.min(DAYS, 0.8 * FROM_PERCENT / 100 * system.ampHours() / perDay);
        List<Moment> moments =
                TrialRun.of(
                        new TrialScenario(drawn, gauge, shunt)
                                .battery(system.ampHours(), FROM_PERCENT)
                                .withLoadPastShunt(load)
                                .unfed()
                                .lasting(days)
                                .counter("own", FROM_PERCENT, system.ampHours()),
                        1);
        Moment end = moments.get(moments.size() - 1);
        Moment on = moments.get(1);
        return new Result(
                load.name(),
                wrong == null,
                end.hours(),
                end.shown().get(0),
                end.truth(),
                on.shownAmps(),
                on.amps());
    }

    private static OwnSystem withExample(OwnSystem system) {
        return new OwnSystem(
                system.nominalVolts(),
                system.chemistry(),
                system.ampHours(),
                List.of(EXAMPLE),
                system.inverter(),
                system.chargerAmps(),
                system.coldestCelsius(),
                system.shunt(),
                system.converter());
    }

    /** The charger's negative on the battery's own post, for one charge from half full. */
    public static Result charger(OwnSystem system, OwnersGauge gauge, ShuntRating shunt) {
        boolean told = system.chargerAmps() > 0;
        double amps = told ? system.chargerAmps() : 0.1 * system.ampHours();
        double volts = OwnSettings.absorptionAt(system, 25);
        double hours = Math.min(12, Math.max(1, 0.4 * system.ampHours() / amps));
        List<Moment> moments =
                TrialRun.of(
                        new TrialScenario(system, gauge, shunt)
                                .battery(system.ampHours(), CHARGE_FROM_PERCENT)
                                .chargedToTheEnd(amps, volts)
                                .chargerPastShunt()
                                .unfed()
                                .lasting(hours / 24)
                                .counter("own", CHARGE_FROM_PERCENT, system.ampHours()),
                        1);
        Moment end = moments.get(moments.size() - 1);
        Moment on = moments.get(1);
        return new Result(
                "the charger",
                !told,
                end.hours(),
                end.shown().get(0),
                end.truth(),
                on.shownAmps(),
                on.amps());
    }
}
