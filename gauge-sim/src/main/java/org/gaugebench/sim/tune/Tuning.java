package org.gaugebench.sim.tune;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.core.settings.SettingsException;
import org.gaugebench.sim.advice.Finding;
import org.gaugebench.sim.advice.SettingsAudit;
import org.gaugebench.sim.scenario.Scenario;
import org.jspecify.annotations.Nullable;

/**
 * Finds the settings with the fewest false and missed fulls and the smallest error, begins at the
 * loosest rule, and says why it stopped where it stopped. Deterministic: task and seed decide, the
 * number of threads does not.
 */
public final class Tuning {
    private final TuneTask task;
    private final List<TunedSetting> settings;
    private final Comparator<TuneScore> order;
    private final TunePool pool;
    private final Trials trials;

    private Tuning(TuneTask task, TunePool pool) {
        this.task = task;
        this.settings = task.settings();
        this.order = TuneScore.order(settings);
        this.pool = pool;
        this.trials = new Trials(settings, task.cases(), task.definition(), pool);
    }

    /** Searches. */
    public static TuneResult of(TuneTask task, TunePool pool) {
        return new Tuning(task, pool).run();
    }

    private TuneResult run() {
        Search search = new Search(settings, trials);
        TuneScore loosest = trials.of(TuneTask.loosest(settings));
        TuneScore preset = trials.of(TuneTask.preset(settings));
        TuneScore chosen = search.from(loosest.candidate(), task.seed());
        if (order.compare(preset, chosen) < 0) {
            // One setting at a time may end in a corner; the preset is known to be none.
            chosen = search.from(preset.candidate(), task.seed());
        }
        List<TuneReason> reasons = new ArrayList<>();
        for (int i = 0; i < settings.size(); i++) {
            reasons.add(reason(chosen, i));
        }
        List<TuneScore> tried = List.copyOf(trials.all());
        Trials others = new Trials(settings, task.others(), task.definition(), pool);
        List<TuneScore> seen =
                others.of(List.of(loosest.candidate(), preset.candidate(), chosen.candidate()));
        return new TuneResult(
                task,
                loosest,
                preset,
                chosen,
                tried,
                frontier(tried),
                List.copyOf(reasons),
                unmet(chosen, tried),
                seen.get(0),
                seen.get(1),
                seen.get(2));
    }

    private TuneReason reason(TuneScore chosen, int index) {
        TunedSetting setting = settings.get(index);
        long value = chosen.candidate().value(index);
        List<Candidate> steps =
                setting.steps().stream().map(it -> chosen.candidate().with(index, it)).toList();
        List<TuneReason.Step> profile = new ArrayList<>();
        for (TuneScore each : trials.of(steps)) {
            profile.add(new TuneReason.Step(each.candidate().value(index), each));
        }
        List<TuneReason.Step> below = new ArrayList<>();
        List<TuneReason.Step> above = new ArrayList<>();
        for (TuneReason.Step each : profile) {
            if (each.value() < value) {
                below.add(0, each);
            } else if (each.value() > value) {
                above.add(each);
            }
        }
        return new TuneReason(
                setting, value, List.copyOf(profile), first(chosen, below), first(chosen, above));
    }

    /** The nearest step with another number of wrong fulls; else the nearest with another error. */
    private static TuneReason.@Nullable Step first(
            TuneScore chosen, List<TuneReason.Step> outward) {
        for (TuneReason.Step each : outward) {
            if (each.score().falseFulls() != chosen.falseFulls()
                    || each.score().missedFulls() != chosen.missedFulls()) {
                return each;
            }
        }
        return outward.stream().filter(it -> !it.score().isLike(chosen)).findFirst().orElse(null);
    }

    private List<TuneScore> frontier(List<TuneScore> tried) {
        List<TuneScore> safe =
                tried.stream().filter(it -> it.candidate().isSafe(settings)).sorted(order).toList();
        List<TuneScore> frontier = new ArrayList<>();
        for (TuneScore each : safe) {
            boolean isBeaten = safe.stream().anyMatch(it -> it.beats(each));
            boolean isThere = frontier.stream().anyMatch(it -> it.isShownLike(each));
            if (!isBeaten && !isThere) {
                frontier.add(each);
            }
        }
        return List.copyOf(frontier);
    }

    private List<TuneUnmet> unmet(TuneScore chosen, List<TuneScore> tried) {
        List<TuneUnmet> unmet = new ArrayList<>();
        for (int i = 0; i < task.cases().size(); i++) {
            CaseScore own = chosen.cases().get(i);
            if (own.isMet()) {
                continue;
            }
            int index = i;
            TuneScore better =
                    tried.stream()
                            .filter(it -> it.candidate().isSafe(settings))
                            .filter(it -> it.cases().get(index).isMet())
                            .min(order)
                            .orElse(null);
            TuneCase it = task.cases().get(i);
            List<String> hints = new ArrayList<>(reach(it, own));
            hints.addAll(audit(it, chosen.candidate()));
            unmet.add(new TuneUnmet(it, own, better, List.copyOf(hints)));
        }
        return List.copyOf(unmet);
    }

    /** Whether the charger ever gives what the lowest safe threshold looks for. */
    private List<String> reach(TuneCase tried, CaseScore score) {
        long absorption = tried.whole().gauges().get(0).settings().get(Setting.ABSORPTION);
        double given =
                tried.whole().chargers().stream()
                        .mapToDouble(it -> it.absorptionMicrovolts() / 1e6)
                        .max()
                        .orElse(0);
        double lowest = (absorption - settings.get(0).highest()) / 1e3;
        if (score.missedFulls() == 0 || absorption == 0 || given >= lowest) {
            return List.of();
        }
        return List.of(
                String.format(
                        Locale.ROOT,
                        "the charger gives at most %.2f V; told of %.2f V, the gauge looks for no"
                                + " less than %.2f V within the safe range",
                        given,
                        absorption / 1e3,
                        lowest));
    }

    /** What else does not go together in a scenario, with the chosen settings in it. */
    private List<String> audit(TuneCase tried, Candidate chosen) {
        GaugeSettings.Builder changed = tried.whole().gauges().get(0).settings().toBuilder();
        for (int i = 0; i < settings.size(); i++) {
            Setting setting = settings.get(i).setting();
            changed.set(setting, chosen.value(i));
        }
        try {
            Scenario scenario = tried.alone().withSettings(changed.build());
            return SettingsAudit.of(scenario).findings().stream().map(Tuning::words).toList();
        } catch (SettingsException e) {
            return List.of();
        }
    }

    private static String words(Finding finding) {
        return finding.what() + ": " + finding.evidence();
    }
}
