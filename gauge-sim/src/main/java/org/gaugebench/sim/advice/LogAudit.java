package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.core.settings.SettingsException;
import org.gaugebench.sim.logs.Hold;
import org.gaugebench.sim.logs.MeasuredLog;
import org.gaugebench.sim.rig.LogReplay;
import org.gaugebench.sim.rig.ReplaySetup;
import org.gaugebench.sim.scenario.GaugeSpec;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.SensorSpec;
import org.gaugebench.sim.units.ConverterRange;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;

/**
 * The settings of an owner's gauge, held against a log of his own: the log drives the gauge as it
 * is told, and once more for each suspicion with that one thing put right.
 *
 * <p>A log has no truth. What stands for a full charge are its signs: the volts that its charger
 * holds at the highest, with a current that has fallen to what is usual for the battery for as long
 * as is usual; our core finds them. Nothing is said of the charge at any time.
 */
public final class LogAudit {
    private static final int TICK_MILLIS = 1_000;

    /** So far below the usual threshold a charger does not charge to the end; of 12 V. */
    private static final double NO_CHARGE_VOLTS = 0.1;

    private final MeasuredLog log;
    private final OwnSystem system;
    private final AuditedGauge audited;
    private final AuditSubject subject;
    private final ReplaySetup setup;
    private final LogFacts facts;
    private final GaugeSpec main;
    private final List<Integer> signs;

    /**
     * What came of it.
     *
     * @param log what it holds: days and charges
     * @param charging what it says of the charger and the signs of a full charge
     * @param summary how the gauge goes over it
     * @param putRight how it would go with all findings put right; null for none, or where their
     *     remedies contradict each other
     * @param findings what does not go together, those that the log shows first
     * @param noSettingCures what the gauge does wrong whatever is typed in
     * @param notKnown what the log cannot say
     * @param gauge what the gauge that was run does; empty for our core
     * @param assumed what was taken where nothing was told
     */
    public record Result(
            String log,
            String charging,
            String summary,
            @Nullable String putRight,
            List<Finding> findings,
            List<String> noSettingCures,
            List<String> notKnown,
            List<String> gauge,
            List<String> assumed) {}

    private LogAudit(
            MeasuredLog log,
            Hold hold,
            OwnSystem system,
            AuditedGauge audited,
            Scenario scenario,
            ShuntRating shunt) {
        this.log = log;
        this.system = system;
        this.audited = audited;
        SensorSpec sensor = scenario.sensor();
        ConverterRange converter =
                new ConverterRange(sensor.converterBits(), sensor.fullScaleMicrovolts());
        this.setup =
                new ReplaySetup(
                        shunt,
                        converter,
                        Math.round(system.ampHours() * 1e3),
                        0,
                        TICK_MILLIS,
                        hold);
        GaugeSpec told = scenario.gauges().get(0);
        this.main = with(told, told.settings().toBuilder());
        this.subject = new AuditSubject(scenario, audited.has());
        this.facts = new LogFacts(log, hold, system.ampHours());
        this.signs = signs(told);
    }

    /**
     * Audits.
     *
     * @param log with volts, at least a day long; its peak fits the shunt's converter
     * @param hold what a row means between rows
     * @param system battery, and no more of it is used
     * @param gauge the owner's
     * @param settings as they were typed into it
     * @param shunt that is fitted
     */
    public static Result of(
            MeasuredLog log,
            Hold hold,
            OwnSystem system,
            OwnersGauge gauge,
            SettingsTold settings,
            ShuntRating shunt) {
        AuditedGauge audited = new AuditedGauge(gauge, settings);
        AuditScenario days = new AuditScenario(system, audited, settings, shunt);
        Scenario scenario = MonthAhead.read(days.write(List.of()));
        List<String> assumed = new ArrayList<>(days.assumed());
        // What the days of an audit without a log are made of.
        assumed.removeIf(it -> it.startsWith("charging from") || it.contains("charger"));
        if (audited.isTold()) {
            assumed.addAll(audited.assumed());
        }
        if (!log.hasTemperature()) {
            assumed.add("the battery at 25 °C: the log has no temperature");
        }
        assumed.add("the log's own figures are right: volts at the posts, current at the shunt");
        return new LogAudit(log, hold, system, audited, scenario, shunt).work(assumed);
    }

    private GaugeSpec with(GaugeSpec gauge, GaugeSettings.Builder settings) {
        return new GaugeSpec(
                gauge.name(),
                gauge.kind(),
                LogReplay.told(settings, setup).build(),
                gauge.declaredPartsPerMillion(),
                gauge.power(),
                gauge.clock(),
                gauge.mistakes());
    }

    /** Our core, with the preset of the battery and the volts that the log's charger holds. */
    private List<Integer> signs(GaugeSpec told) {
        double scale = system.nominalVolts() / 12.0;
        GaugeSettings.Builder right =
                AuditSubject.preset(system.chemistry()).builder(system.nominalVolts() * 1_000L);
        GaugeSettings usual = right.build();
        double shift =
                OwnSettings.absorptionAt(system, facts.topCelsius())
                        - usual.get(Setting.ABSORPTION) / 1e3;
        double least =
                (usual.get(Setting.ABSORPTION) - usual.get(Setting.ABSORPTION_MARGIN)) / 1e3
                        - NO_CHARGE_VOLTS * scale;
        // A charger without compensation is none that does not charge.
        if (facts.topVolts() < least + Math.min(0, shift)) {
            return List.of();
        }
        right.set(Setting.CAPACITY, setup.capacityMilliampHours())
                .set(Setting.SHUNT_RATED_CURRENT, setup.shunt().microamps() / 1_000)
                .set(Setting.SHUNT_RATED_DROP, setup.shunt().microvolts())
                .set(Setting.TEMPERATURE_COEFFICIENT, 0)
                .set(Setting.ABSORPTION, Math.round(facts.topVolts() * 1e3));
        GaugeSpec core =
                new GaugeSpec(
                        told.name(),
                        GaugeSpec.Kind.CORE,
                        LogReplay.told(right, setup).build(),
                        told.declaredPartsPerMillion(),
                        told.power(),
                        told.clock(),
                        Set.of());
        return LogWatch.fulls(log, setup, core);
    }

    private @Nullable LogWatch watch(List<Suspect> right) {
        GaugeSettings.Builder changed = main.settings().toBuilder();
        right.forEach(each -> each.remedy().forEach(changed::set));
        try {
            return LogWatch.of(log, setup, with(main, changed), facts, signs, system.ampHours());
        } catch (SettingsException e) {
            return null;
        }
    }

    private Result work(List<String> assumed) {
        LogWatch asTyped = Objects.requireNonNull(watch(List.of()));
        List<Suspect> all = new ArrayList<>();
        FittingChecks.check(subject, all);
        CapacityChecks.check(subject, all);
        LogChecks.check(subject, facts, signs.size(), asTyped, all);
        List<Suspect> suspects =
                all.stream().map(subject::within).filter(Objects::nonNull).toList();
        LogWatch right = suspects.isEmpty() ? null : watch(suspects);
        List<Finding> shown = new ArrayList<>();
        List<Finding> likely = new ArrayList<>();
        for (Suspect each : suspects) {
            LogWatch put = watch(List.of(each));
            LogWatch but = watch(suspects.stream().filter(it -> !it.equals(each)).toList());
            boolean is =
                    (put != null && asTyped.isWorseThan(put))
                            || (right != null && but != null && but.isWorseThan(right));
            (is ? shown : likely).add(finding(each, asTyped, put, is));
        }
        shown.addAll(likely);
        return new Result(
                text(
                        "%.1f days; %.1f Ah in, %.1f Ah out, %+.1f Ah in all",
                        facts.days(),
                        facts.inAmpHours(),
                        facts.outAmpHours(),
                        facts.inAmpHours() - facts.outAmpHours()),
                charging(),
                asTyped.words(),
                right == null ? null : right.words(),
                List.copyOf(shown),
                audited.isTold() ? audited.noSettingCures() : List.of(),
                notKnown(),
                audited.isTold()
                        ? ComposedGauge.of(audited.gauge()).words(audited.holdMinutes())
                        : List.of(),
                List.copyOf(assumed));
    }

    private Finding finding(
            Suspect suspect, LogWatch asTyped, @Nullable LogWatch put, boolean isShown) {
        List<String> remedy = TypedWords.of(main.settings(), suspect.remedy());
        return new Finding(
                suspect.kind().key(),
                suspect.kind().words(),
                suspect.evidence(),
                "as typed: " + asTyped.words() + (put == null ? "" : "; put right: " + put.words()),
                remedy,
                isShown ? Finding.Confidence.SHOWN : Finding.Confidence.LIKELY);
    }

    private String charging() {
        if (facts.topVolts() == 0) {
            return "never for " + LogFacts.STEADY_MINUTES + " minutes in one go";
        }
        double near = facts.topVolts() - 0.05 * system.nominalVolts() / 12;
        String held =
                text(
                        "%.2f V at the highest, for %d min in one go; there the current fell to %s",
                        facts.topVolts(),
                        facts.longestMinutes(near, Double.MAX_VALUE),
                        Sizing.amps(facts.endAmps(near)));
        return held
                + (signs.isEmpty()
                        ? "; no sign of a full charge"
                        : "; signs of a full charge "
                                + FullWatchResult.times(signs.size())
                                + ", first at "
                                + moment(signs.get(0)));
    }

    private static String moment(int minute) {
        return text("%d d %02d:%02d", minute / 1_440, minute / 60 % 24, minute % 60);
    }

    private List<String> notKnown() {
        List<String> words = new ArrayList<>();
        words.add("how much was in the battery at any time: a log has no truth");
        words.add("what does not go through the shunt, and what the battery loses by itself");
        if (signs.isEmpty()) {
            words.add(
                    "whether the gauge misses a full charge: the log has no sign of one; take one"
                            + " with a charge to its end");
        }
        if (!audited.gauge().setsItself() && audited.isTold()) {
            words.add(
                    "when it was set by hand; the signs of a full charge above are the moments for"
                            + " it");
        }
        return words;
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
