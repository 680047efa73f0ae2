package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.advice.TrialRun.Moment;
import org.gaugebench.sim.judge.FullCharge;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;

/**
 * The settings of an owner's gauge, held against his own system: a scenario of days on which the
 * charger can fill the battery, and what {@link SettingsAudit} finds in it.
 *
 * <p>Where he told what his gauge does, such a gauge is judged, and only what it can be told is
 * looked at. Where he told nothing, our core stands in for it.
 */
public final class OwnAudit {
    private OwnAudit() {}

    /**
     * What came of it.
     *
     * @param scenario that was run
     * @param text of that scenario
     * @param result what was found
     * @param assumed what was taken where nothing was told
     * @param told what the owner's gauge does beside that; null where he told nothing of it
     */
    public record Result(
            Scenario scenario,
            String text,
            SettingsAudit.Result result,
            List<String> assumed,
            @Nullable Told told) {}

    /**
     * How an owner's gauge goes whatever is typed into it.
     *
     * @param gauge what the gauge that was run does, one sentence each
     * @param atWorst how it goes if each answer that is not known is a bad one; null where all are
     *     known that matter here
     * @param ours how our core with the same settings goes beside it
     * @param noSettingCures what it does wrong whatever is typed in
     */
    public record Told(
            List<String> gauge,
            @Nullable String atWorst,
            String ours,
            List<String> noSettingCures) {}

    /**
     * Audits.
     *
     * @param system as it was told
     * @param gauge the owner's
     * @param settings as they were typed into it
     * @param shunt that is fitted
     */
    public static Result of(
            OwnSystem system, OwnersGauge gauge, SettingsTold settings, ShuntRating shunt) {
        AuditedGauge audited = new AuditedGauge(gauge, settings);
        AuditScenario days = new AuditScenario(system, audited, settings, shunt);
        if (!audited.isTold()) {
            String text = days.write(List.of());
            Scenario scenario = MonthAhead.read(text);
            SettingsAudit.Result result = SettingsAudit.of(scenario);
            return new Result(scenario, text, result, List.copyOf(days.assumed()), null);
        }
        String text = write(system, audited, settings, shunt, days);
        Scenario scenario = MonthAhead.read(text);
        List<String> assumed = new ArrayList<>(days.assumed());
        assumed.addAll(audited.assumed());
        assumed.add("its wire stays on");
        if (audited.gauge().isSetByHand()) {
            assumed.add("its owner sets it at 18 h of each day on which the battery is full then");
        }
        Told told =
                new Told(
                        ComposedGauge.of(audited.gauge()).words(audited.holdMinutes()),
                        atWorst(system, audited, settings, shunt),
                        FullWatchResult.of(scenario, 1).words(),
                        audited.noSettingCures());
        return new Result(
                scenario,
                text,
                SettingsAudit.of(scenario.withMainGaugeAlone(), audited.has()),
                List.copyOf(assumed),
                told);
    }

    /** Its owner sets it when the charger has finished: that takes a run to know. */
    private static String write(
            OwnSystem system,
            AuditedGauge audited,
            SettingsTold settings,
            ShuntRating shunt,
            AuditScenario days) {
        if (!audited.gauge().isSetByHand()) {
            return days.write(List.of());
        }
        AuditScenario first = new AuditScenario(system, audited, settings, shunt);
        Scenario scenario = MonthAhead.read(first.write(List.of())).withMainGaugeAlone();
        List<Integer> full = new ArrayList<>();
        for (Moment each : TrialRun.of(scenario, 60)) {
            double sinceDay = each.hours() % 24;
            if (sinceDay == AuditScenario.CHARGED_HOUR
                    && each.truth() >= FullCharge.IS_FULL_PARTS / 1e4) {
                full.add((int) (each.hours() / 24));
            }
        }
        return days.write(system.chargerAmps() == 0 ? List.of() : full);
    }

    private static @Nullable String atWorst(
            OwnSystem system, AuditedGauge audited, SettingsTold settings, ShuntRating shunt) {
        OwnersGauge worst = ComposedGauge.worse(audited.gauge());
        if (worst == null) {
            return null;
        }
        AuditedGauge bad = new AuditedGauge(worst, settings);
        AuditScenario days = new AuditScenario(system, bad, settings, shunt);
        Scenario scenario = MonthAhead.read(write(system, bad, settings, shunt, days));
        return FullWatchResult.of(scenario.withMainGaugeAlone()).words();
    }
}
