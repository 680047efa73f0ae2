package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.core.settings.SettingsException;
import org.gaugebench.sim.scenario.GaugeSpec;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.SettingText;
import org.jspecify.annotations.Nullable;

/**
 * Holds a gauge's settings against the battery, the charger and the days of a scenario.
 *
 * <p>What contradicts each other on paper is a suspicion. Then the scenario runs as it is, and once
 * more for each suspicion with that one thing put right. Mistakes hide each other, so it also runs
 * with everything right but that one. What makes either pair differ is shown, the rest is likely.
 */
public final class SettingsAudit {
    private SettingsAudit() {}

    /**
     * What came of an audit.
     *
     * @param summary how 100 % went with the battery's, in plain words
     * @param findings what does not go together, the shown ones first
     * @param putRight how it goes with all of them put right; the summary where nothing was found,
     *     null where their remedies contradict each other
     */
    public record Result(String summary, List<Finding> findings, @Nullable String putRight) {}

    /** Whether a scenario can be audited: its main gauge has settings. */
    public static boolean fits(Scenario scenario) {
        return scenario.gauges().get(0).kind() == GaugeSpec.Kind.CORE;
    }

    /**
     * Audits a scenario's main gauge.
     *
     * @param scenario whose main gauge is a core
     */
    public static Result of(Scenario scenario) {
        return of(scenario, EnumSet.allOf(Setting.class));
    }

    /**
     * Audits a gauge that does not have every setting.
     *
     * @param scenario whose main gauge is any
     * @param has settings that it has; findings whose remedy moves none of them are not raised
     */
    static Result of(Scenario scenario, Set<Setting> has) {
        AuditSubject subject = new AuditSubject(scenario, has);
        List<Suspect> all = new ArrayList<>();
        FittingChecks.check(subject, all);
        CapacityChecks.check(subject, all);
        FullRuleChecks.check(subject, all);
        List<Suspect> suspects =
                all.stream().map(subject::within).filter(Objects::nonNull).toList();
        Runs runs = new Runs(scenario, suspects);
        List<Finding> shown = new ArrayList<>();
        List<Finding> likely = new ArrayList<>();
        for (Suspect each : suspects) {
            if (runs.isWorseCured(each)) {
                continue;
            }
            Finding finding = finding(runs, each);
            (finding.confidence() == Finding.Confidence.SHOWN ? shown : likely).add(finding);
        }
        shown.addAll(likely);
        return new Result(runs.asTyped.words(), List.copyOf(shown), runs.putRight());
    }

    /** The runs that all findings are compared with. */
    private static final class Runs {
        private final Scenario scenario;
        private final GaugeSettings typed;
        private final List<Suspect> suspects;
        private final FullWatchResult asTyped;
        private final @Nullable FullWatchResult allRight;

        Runs(Scenario scenario, List<Suspect> suspects) {
            this.scenario = scenario;
            this.typed = scenario.gauges().get(0).settings();
            this.suspects = suspects;
            this.asTyped = FullWatchResult.of(scenario);
            this.allRight = suspects.size() > 1 ? with(suspects) : null;
        }

        @Nullable String putRight() {
            FullWatchResult right =
                    suspects.isEmpty() ? asTyped : suspects.size() == 1 ? with(suspects) : allRight;
            return right == null ? null : right.words();
        }

        /** The scenario with some things put right; null if they contradict the rest. */
        @Nullable FullWatchResult with(List<Suspect> right) {
            GaugeSettings.Builder changed = typed.toBuilder();
            right.forEach(each -> each.remedy().forEach(changed::set));
            try {
                return FullWatchResult.of(scenario.withSettings(changed.build()));
            } catch (SettingsException e) {
                return null;
            }
        }

        /**
         * Whether its remedy alone makes our core believe a false full where there was none: what
         * looked wrong was right, such as a threshold that waits in the cold for what a charger
         * does not give. A gauge that looks at volts alone has false ones whatever is typed in.
         */
        boolean isWorseCured(Suspect suspect) {
            if (scenario.gauges().get(0).kind() != GaugeSpec.Kind.CORE) {
                return false;
            }
            FullWatchResult put = with(List.of(suspect));
            return put != null && put.earlyFulls() > asTyped.earlyFulls() && !harmsAlone(suspect);
        }

        /** Whether it does harm where everything else is right. */
        boolean harmsAlone(Suspect suspect) {
            FullWatchResult right = allRight;
            if (right == null) {
                return false;
            }
            FullWatchResult but =
                    with(suspects.stream().filter(it -> !it.equals(suspect)).toList());
            return but != null && but.isWorseThan(right);
        }
    }

    private static Finding finding(Runs runs, Suspect suspect) {
        List<String> remedy = new ArrayList<>();
        for (Map.Entry<Setting, Long> each : suspect.remedy().entrySet()) {
            if (runs.typed.get(each.getKey()) != each.getValue()) {
                remedy.add(
                        each.getKey().key()
                                + ": "
                                + SettingText.of(each.getKey(), each.getValue()));
            }
        }
        FullWatchResult put = runs.with(List.of(suspect));
        boolean shown = put != null && runs.asTyped.isWorseThan(put);
        return new Finding(
                suspect.kind().key(),
                suspect.kind().words(),
                suspect.evidence(),
                put == null ? "as typed: " + runs.asTyped.words() : consequence(runs.asTyped, put),
                List.copyOf(remedy),
                shown || runs.harmsAlone(suspect)
                        ? Finding.Confidence.SHOWN
                        : Finding.Confidence.LIKELY);
    }

    private static String consequence(FullWatchResult asTyped, FullWatchResult put) {
        String hours =
                asTyped.hoursDiffer(put)
                        ? String.format(
                                Locale.ROOT,
                                "; hours shown: %.1f h in the mean, put right %.1f h",
                                asTyped.meanHours(),
                                put.meanHours())
                        : "";
        return "as typed: " + asTyped.words() + "; put right: " + put.words() + hours;
    }
}
