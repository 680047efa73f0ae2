package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.logs.MeterCheck;
import org.gaugebench.sim.units.ShuntRating;

/** The checks with a meter for one system: what to do, what is good, what each cannot see. */
public final class CheckPlan {
    /** A tenth of an amp, where the owner did not tell what the screen shows; no source. */
    private static final double USUAL_STEP_AMPS = 0.1;

    /** Smallest step of the amp-hours on a screen, where nobody told; no source. */
    private static final double USUAL_STEP_AMP_HOURS = 0.1;

    private static final double HOURS_A_MONTH = 720;

    private CheckPlan() {}

    /**
     * One check.
     *
     * @param check which
     * @param how what to do
     * @param good what is well, with this system's own figures
     * @param blind what it cannot see; empty where nothing needs to be said
     */
    public record Line(MeterCheck check, String how, String good, String blind) {}

    /** The smallest current that the gauge's screen shows, told or usual. */
    static double stepAmps(OwnersGauge gauge) {
        Double told = gauge.smallestAmps();
        return told == null || told == 0 ? USUAL_STEP_AMPS : told;
    }

    /** The smallest step of amp-hours on the gauge's screen, told or usual. */
    static double stepAmpHours(OwnersGauge gauge) {
        Double told = gauge.smallestAmpHours();
        return told == null || told == 0 ? USUAL_STEP_AMP_HOURS : told;
    }

    /** The current that flows with everything on, from the battery; never next to nothing. */
    static double workingAmps(OwnSystem system) {
        double out = Sizing.of(system).outAmps();
        return out > 0 ? out : system.ampHours() / 20;
    }

    /** What a zero error of the size that is reckoned with makes in 24 h. */
    static double zeroAmpHours(OwnersGauge gauge, ShuntRating shunt) {
        return zeroAmps(gauge, shunt) * 24;
    }

    static double zeroAmps(OwnersGauge gauge, ShuntRating shunt) {
        Double told = gauge.zeroAmps();
        return told == null ? MonthAhead.usualZeroAmps(shunt) : told;
    }

    /**
     * The checks, in the order in which they are done.
     *
     * @param system as it was told
     * @param gauge the owner's
     * @param shunt that is fitted
     */
    public static List<Line> of(OwnSystem system, OwnersGauge gauge, ShuntRating shunt) {
        double step = stepAmps(gauge);
        double zero = zeroAmpHours(gauge, shunt);
        double stepAmpHours = stepAmpHours(gauge);
        double blindAmps = stepAmpHours / 24;
        List<Line> lines = new ArrayList<>();
        lines.add(
                new Line(
                        MeterCheck.ZERO_TEST,
                        "Every load and charger off. Write down the amp-hours on the screen, wait"
                                + " 24 h, write them down again: the difference, with its sign.",
                        Changes.text(
                                "at most %.2f Ah either way; %.2f Ah would be 10 points in a month",
                                zero, system.ampHours() * 0.1 * 24 / HOURS_A_MONTH),
                        Changes.text(
                                "It sees what is counted while nothing flows. A screen in steps of"
                                        + " %s Ah cannot show less than %s. It sees neither what"
                                        + " the gauge draws past the shunt, nor a wrong scale, nor"
                                        + " what comes only with heat after a large load.",
                                SystemLines.number(stepAmpHours, 6), Sizing.amps(blindAmps))));
        Double own = gauge.ownAmps();
        lines.add(
                new Line(
                        MeterCheck.OWN_CURRENT,
                        "The meter, on its milliamp range, in the gauge's supply wire (not across"
                                + " anything).",
                        own == null
                                ? Changes.text(
                                        "each 10 mA that is not counted is %.1f points in a month",
                                        0.01 * HOURS_A_MONTH / system.ampHours() * 100)
                                : Changes.text(
                                        "as told, %s: %.1f points in a month where it is not"
                                                + " counted",
                                        Sizing.amps(own),
                                        own * HOURS_A_MONTH / system.ampHours() * 100),
                        "It says nothing of what it draws with its light or its radio on, unless"
                                + " they are on."));
        lines.add(
                new Line(
                        MeterCheck.SCALE_AT_REST,
                        "Every load and charger off, a clamp set to zero beside the wire: its"
                                + " amps, and those on the screen.",
                        Changes.text("both within %s of nothing", Sizing.amps(step)),
                        "A clamp of its own drifts by a tenth of an amp; the zero test is finer."));
        lines.add(
                new Line(
                        MeterCheck.SCALE_SMALL,
                        Changes.text(
                                "One small load of 20 to 50 steps of the screen on, here %s to %s.",
                                Sizing.amps(20 * step), Sizing.amps(50 * step)),
                        "within 5 % and half a step",
                        "It does not see a current below one step; leave one on over night for"
                                + " that."));
        lines.add(
                new Line(
                        MeterCheck.SCALE_WORKING,
                        Changes.text(
                                "What you use at most, on for five minutes: here about %s.",
                                Sizing.amps(workingAmps(system))),
                        "within 3 %, and minus while it is drawn",
                        "It is no better than the clamp: 2 to 3 % is usual."));
        lines.add(
                new Line(
                        MeterCheck.VOLTS_UNDER_LOAD,
                        "With the same load on: volts on the battery's own posts, and on the"
                                + " screen.",
                        Changes.text(
                                "less than %.2f V between the two (3 %%)",
                                system.nominalVolts() * 0.03),
                        "It does not see a joint between two cells inside the battery."));
        lines.add(
                new Line(
                        MeterCheck.CAPACITY_TEST,
                        Changes.text(
                                "From full, draw about %s until the battery counts as empty (see"
                                        + " the settings), then charge at once: the amp-hours that"
                                        + " the gauge counted.",
                                Sizing.amps(system.ampHours() / 20)),
                        Changes.text(
                                "%.0f Ah or more; below %.0f Ah the battery is worn",
                                system.ampHours() * 0.95, system.ampHours() * 0.8),
                        "It is as right as the scale above, and costs the battery one deep"
                                + " discharge."));
        return List.copyOf(lines);
    }
}
