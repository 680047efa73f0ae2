package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.judge.FullCharge;
import org.gaugebench.sim.logs.MeasuredLog;
import org.gaugebench.sim.rig.LogReplay;
import org.gaugebench.sim.rig.ReplayListener;
import org.gaugebench.sim.rig.ReplaySetup;
import org.gaugebench.sim.scenario.GaugeSpec;
import org.gaugebench.sim.scenario.Mistake;

/**
 * How a gauge goes over a log that has no truth.
 *
 * @param fulls minutes at which it set itself to full
 * @param early of them, after which more went in than a full battery lacks
 * @param mostAfter most that went in after one of those, in amp-hours
 * @param unsupported of all, without signs of a full charge near them
 * @param missed whether there were such signs and it set itself never
 * @param swingPoints the log's largest swing as it counts it
 * @param netPoints all that went in less what went out, as it counts it
 */
record LogWatch(
        List<Integer> fulls,
        int early,
        double mostAfter,
        int unsupported,
        boolean missed,
        double swingPoints,
        double netPoints) {

    /** Points over the whole log below which nobody sees a difference. */
    private static final double NOTICED_POINTS = 2;

    /** Signs so long before belong to the same charge. */
    private static final int SAME_CHARGE_MINUTES = 12 * 60;

    /** Minutes at which a gauge sets itself to full over a log. */
    static List<Integer> fulls(MeasuredLog log, ReplaySetup setup, GaugeSpec gauge) {
        List<Integer> fulls = new ArrayList<>();
        new LogReplay(
                        log,
                        setup,
                        gauge,
                        (event, uptimeMillis, value) -> {
                            if (event == Event.SET_TO_FULL) {
                                fulls.add((int) (uptimeMillis / 60_000));
                            }
                        })
                .run(ReplayListener.NONE);
        return fulls;
    }

    /**
     * Runs one.
     *
     * @param facts of the log
     * @param signs minutes at which the log looks like a full charge; empty for none
     */
    static LogWatch of(
            MeasuredLog log,
            ReplaySetup setup,
            GaugeSpec gauge,
            LogFacts facts,
            List<Integer> signs,
            double printedAmpHours) {
        List<Integer> fulls = fulls(log, setup, gauge);
        double lacks = (1 - FullCharge.FALSE_BELOW_PARTS / 1e6) * printedAmpHours;
        int early = 0;
        int unsupported = 0;
        double most = 0;
        for (int each : fulls) {
            int until = facts.overAfter(each);
            // Signs before it, or after it in the same charge; what goes in after them is loss.
            int sign =
                    signs.stream()
                            .filter(it -> it >= each - SAME_CHARGE_MINUTES && it <= until)
                            .findFirst()
                            .orElse(-1);
            double after = sign < 0 ? facts.wentInAfter(each) : facts.wentIn(each, sign);
            if (after > lacks) {
                early++;
                most = Math.max(most, after);
            }
            unsupported += signs.isEmpty() || sign >= 0 ? 0 : 1;
        }
        double told =
                gauge.settings().get(Setting.SHUNT_RATED_CURRENT)
                        * 1e3
                        / gauge.settings().get(Setting.SHUNT_RATED_DROP);
        double fitted = (double) setup.shunt().microamps() / setup.shunt().microvolts();
        double perAmpHour = 100 * told / fitted / (gauge.settings().get(Setting.CAPACITY) / 1e3);
        boolean weighs =
                gauge.kind() == GaugeSpec.Kind.CORE
                        || gauge.mistakes().contains(Mistake.EFFICIENCY_PER_SAMPLE);
        double efficiency = weighs ? gauge.settings().get(Setting.COULOMBIC_EFFICIENCY) / 1e6 : 1;
        return new LogWatch(
                List.copyOf(fulls),
                early,
                most,
                unsupported,
                fulls.isEmpty() && !signs.isEmpty(),
                facts.swingAmpHours() * perAmpHour,
                (facts.inAmpHours() * efficiency - facts.outAmpHours()) * perAmpHour);
    }

    /** In plain words. */
    String words() {
        String set =
                fulls.isEmpty()
                        ? "never set to 100 %"
                                + (missed ? ", though the log has signs of a full charge" : "")
                        : "set to 100 % "
                                + FullWatchResult.times(fulls.size())
                                + (early == 0
                                        ? ""
                                        : text(
                                                ", %s too early: up to %.1f Ah went in after it",
                                                FullWatchResult.times(early), mostAfter))
                                + (unsupported == 0
                                        ? ""
                                        : text(
                                                ", %s without signs of a full charge",
                                                FullWatchResult.times(unsupported)));
        return set
                + text(
                        "; counts the log's largest swing as %.1f points, in less out as %+.1f",
                        swingPoints, netPoints);
    }

    /** Whether this is clearly worse than another one, with its settings put right. */
    boolean isWorseThan(LogWatch other) {
        return early > other.early
                || unsupported > other.unsupported
                || (missed && !other.missed)
                || Math.abs(swingPoints - other.swingPoints) > NOTICED_POINTS
                || Math.abs(netPoints - other.netPoints) > NOTICED_POINTS;
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
