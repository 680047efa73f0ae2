package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.advice.TrialRun.Moment;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;

/**
 * How an owner sees on the gauge's own amps that the battery is full, and what it costs to call it
 * full earlier: a run from {@value #FROM_PERCENT} % with everything off, on the owner's charger.
 */
public final class FirstCharge {
    private static final double FROM_PERCENT = 50;
    private static final double DAYS = 4;

    /** A tenth of the amp-hours: gentle to any battery; common practice, no source. */
    private static final double USUAL_CHARGER_PART = 0.1;

    /** The current reads as steady at the set volts when within that of it, for 12 V. */
    private static final double REACHED_VOLTS = 0.05;

    private static final double[] TAPER_PARTS = {0.1, 0.05, 0.02, 0.01};

    /**
     * What comes of it.
     *
     * @param chargerVolts at which it was charged
     * @param chargerAmps most that the charger gave
     * @param fullAmps to which the current has fallen when the battery is full
     * @param holdMinutes so long it must stay there
     * @param hoursToFull from half full to the end of that
     * @param rows what calling it full costs, the earliest first
     * @param isCharger whether the charger was told; else an example
     */
    public record Result(
            double chargerVolts,
            double chargerAmps,
            double fullAmps,
            int holdMinutes,
            double hoursToFull,
            List<Row> rows,
            boolean isCharger) {}

    /**
     * One moment at which somebody may call it full.
     *
     * @param words what is seen
     * @param hours since the start
     * @param amps on the gauge
     * @param costPoints by how much 100 % would be too much
     */
    public record Row(String words, double hours, double amps, double costPoints) {}

    private FirstCharge() {}

    /**
     * Runs the charge.
     *
     * @param system as it was told
     * @param gauge the owner's
     * @param shunt that is fitted
     * @param chargerVolts the charger's highest steady volts; null for the usual ones
     */
    public static Result of(
            OwnSystem system, OwnersGauge gauge, ShuntRating shunt, @Nullable Double chargerVolts) {
        GaugeSettings settings = OwnSettings.of(system, chargerVolts);
        double volts = settings.get(Setting.ABSORPTION) / 1e3;
        boolean told = system.chargerAmps() > 0;
        double amps = told ? system.chargerAmps() : USUAL_CHARGER_PART * system.ampHours();
        List<Moment> moments =
                TrialRun.of(
                        new TrialScenario(system, gauge, shunt)
                                .titled("The first charge")
                                .battery(system.ampHours(), FROM_PERCENT)
                                .chargedToTheEnd(amps, volts)
                                .lasting(DAYS)
                                .unfed()
                                .counter("own", FROM_PERCENT, system.ampHours()),
                        1);
        double reach = volts - REACHED_VOLTS * system.nominalVolts() / 12;
        double fullAmps = Math.min(OwnSettings.taperAmps(settings, system), amps / 2);
        int hold = (int) settings.get(Setting.HOLD);
        List<Row> rows = new ArrayList<>();
        int at = first(moments, 0, reach, Double.MAX_VALUE);
        add(rows, moments, at, "the charger has just come to its highest steady volts");
        for (double part : TAPER_PARTS) {
            double limit = part * system.ampHours();
            if (limit > fullAmps * 1.2 && limit < amps * 0.95) {
                add(
                        rows,
                        moments,
                        first(moments, at, reach, limit),
                        "there, and the current has fallen to " + Sizing.amps(limit));
            }
        }
        int fallen = first(moments, at, reach, fullAmps);
        add(rows, moments, fallen, "there, and it has fallen to " + Sizing.amps(fullAmps));
        int held = Math.min(moments.size() - 1, fallen + hold);
        add(rows, moments, held, "and has stayed there for " + hold + " min: full");
        return new Result(
                volts, amps, fullAmps, hold, moments.get(held).hours(), List.copyOf(rows), told);
    }

    private static void add(List<Row> rows, List<Moment> moments, int at, String words) {
        Moment it = moments.get(at);
        rows.add(new Row(words, it.hours(), it.amps(), 100 - it.truth()));
    }

    private static int first(List<Moment> moments, int from, double volts, double mostAmps) {
        for (int i = Math.max(1, from); i < moments.size(); i++) {
            Moment it = moments.get(i);
            if (it.volts() >= volts && it.amps() <= mostAmps) {
                return i;
            }
        }
        return moments.size() - 1;
    }
}
