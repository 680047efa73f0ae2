package org.gaugebench.sim.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.tune.CaseScore;
import org.gaugebench.sim.tune.FullDefinition;
import org.gaugebench.sim.tune.TuneReason;
import org.gaugebench.sim.tune.TuneResult;
import org.gaugebench.sim.tune.TuneScore;
import org.gaugebench.sim.tune.TuneTask;
import org.gaugebench.sim.tune.TuneUnmet;
import org.gaugebench.sim.tune.TunedSetting;

/** A search of settings for people: the answer first, the evidence below. */
public final class TuneText {
    private static final int MOST_OF_FRONTIER = 12;

    /** Fewer cannot hold a false full, a missed one, a cloud, a cold day and a pump. */
    private static final int ENOUGH = 5;

    private final TuneResult result;
    private final Page page = new Page();

    private TuneText(TuneResult result) {
        this.result = result;
    }

    /**
     * Writes the page.
     *
     * @param part where the settings were written to; empty for nowhere
     * @return lines of at most {@value Page#WIDTH} columns
     */
    public static String of(TuneResult result, String part) {
        return new TuneText(result).write(part);
    }

    private String write(String part) {
        page.paragraph(0, (result.isGood() ? "MET: " : "NOT MET: ") + TuneWords.answer(result));
        settings();
        scores();
        reasons();
        frontier();
        unmet();
        cases();
        rest(part);
        return page.toString();
    }

    private void settings() {
        page.gap().line("The full-charge rule for " + TuneWords.battery(result));
        page.line("  setting              chosen       preset       safe range");
        List<TunedSetting> settings = result.task().settings();
        for (int i = 0; i < settings.size(); i++) {
            TunedSetting it = settings.get(i);
            page.line(
                    String.format(
                            Locale.ROOT,
                            "  %-20s %-12s %-12s %s to %s",
                            it.setting().key(),
                            TuneWords.value(it, result.chosen().candidate().value(i)),
                            TuneWords.value(it, it.preset()),
                            TuneWords.value(it, it.lowest()),
                            TuneWords.value(it, it.highest())));
        }
        page.paragraph(
                2,
                "The threshold is the charger's absorption voltage less the margin; the charger's"
                        + " own voltages are no part of the search.");
        few();
    }

    private void few() {
        int count = result.task().scenarios().size();
        if (count < ENOUGH) {
            page.labelled(
                    2,
                    2,
                    "!",
                    "Only %s of this kind: what it does not show was not searched."
                            .formatted(count == 1 ? "one scenario" : count + " scenarios"));
        }
    }

    private void scores() {
        TuneTask task = result.task();
        page.gap().line("How it went                      false  missed   mean off  worst off");
        block(TuneWords.runs(task.cases().size()) + " of the search, seeds " + seeds(task.seeds()));
        score("loosest rule", result.loosest());
        score("preset", result.preset());
        score("chosen", result.chosen());
        block(
                TuneWords.runs(task.others().size())
                        + " it never saw, seeds "
                        + seeds(task.otherSeeds()));
        score("loosest rule", result.otherLoosest());
        score("preset", result.otherPreset());
        score("chosen", result.otherChosen());
        FullDefinition it = task.definition();
        page.paragraph(
                2,
                ("False: set to full with less than %s %% in the battery. Missed: a charger held"
                                + " a battery of 99 %% and more for %s at absorption or %s h at"
                                + " float, and the gauge did not know. Off: points between shown"
                                + " and true.")
                        .formatted(
                                it.falseBelowParts() / 10_000,
                                it.heldMinutes() % 60 == 0
                                        ? it.heldMinutes() / 60 + " h"
                                        : it.heldMinutes() + " min",
                                it.floatedMinutes() / 60));
    }

    static String seeds(org.gaugebench.sim.scenario.SeedRange seeds) {
        return seeds.first() == seeds.last()
                ? String.valueOf(seeds.first())
                : seeds.first() + " to " + seeds.last();
    }

    private void block(String words) {
        page.line("  " + words);
    }

    private void score(String label, TuneScore score) {
        page.line(
                String.format(
                        Locale.ROOT,
                        "    %-26s %7d %7d %10s %10s",
                        label,
                        score.falseFulls(),
                        score.missedFulls(),
                        TuneWords.finePoints(score.meanErrorParts()),
                        TuneWords.points(score.worstErrorParts())));
    }

    private void reasons() {
        page.gap().line("Why these, and not their neighbours");
        for (TuneReason reason : result.reasons()) {
            TunedSetting it = reason.setting();
            page.line("  " + it.setting().key() + " " + TuneWords.value(it, reason.value()));
            for (String words : TuneWords.reasons(result, reason)) {
                page.labelled(4, 2, "-", words);
            }
        }
    }

    private void frontier() {
        page.gap().line("What can be traded for what (nothing tried is better in one figure and");
        page.line("worse in none; * chosen)");
        page.line("    false  missed   mean off  worst off  other than chosen");
        List<TuneScore> frontier = result.frontier();
        if (!frontier.contains(result.chosen())) {
            traded(result.chosen());
        }
        int shown = Math.min(MOST_OF_FRONTIER, frontier.size());
        frontier.subList(0, shown).forEach(this::traded);
        if (shown < frontier.size()) {
            page.line("    and " + (frontier.size() - shown) + " more, with --json");
        }
        if (!frontier.contains(result.chosen())) {
            page.paragraph(
                    2,
                    "The chosen settings are the usual ones where nobody would notice the"
                            + " difference: a tenth of a point in the mean, one at worst.");
        }
    }

    private void traded(TuneScore score) {
        String figures =
                String.format(
                        Locale.ROOT,
                        "%s %6d %7d %10s %10s",
                        score.equals(result.chosen()) ? " *" : "  ",
                        score.falseFulls(),
                        score.missedFulls(),
                        TuneWords.finePoints(score.meanErrorParts()),
                        TuneWords.points(score.worstErrorParts()));
        page.labelled(
                0,
                41,
                figures,
                figures.length(),
                TuneWords.differences(result, score, result.chosen()));
    }

    private void unmet() {
        if (result.unmet().isEmpty()) {
            return;
        }
        page.gap().line("Not met by these settings");
        for (TuneUnmet each : result.unmet()) {
            page.paragraph(
                    2,
                    "%s, seed %s: %s"
                            .formatted(
                                    TuneWords.name(each.tried().whole()),
                                    each.tried().seed(),
                                    what(each.score())));
            TuneScore better = each.better();
            if (better == null) {
                page.labelled(4, 2, "-", "no settings that were tried meet it");
            } else {
                page.labelled(
                        4,
                        2,
                        "-",
                        "%s meets it, at a price: %s"
                                .formatted(
                                        TuneWords.differences(result, better, result.chosen()),
                                        TuneWords.change(result, better)));
            }
            for (String found : each.audit()) {
                page.labelled(4, 2, "-", "put right first: " + found);
            }
        }
    }

    private static String what(CaseScore score) {
        List<String> words = new ArrayList<>();
        if (score.falseFulls() > 0) {
            words.add(
                    "%s of %s fulls false, the lowest at a true %s %%"
                            .formatted(
                                    score.falseFulls(),
                                    score.fulls(),
                                    TuneWords.points(score.lowestTrueParts())));
        }
        if (score.missedFulls() > 0) {
            words.add("%s of %s missed".formatted(score.missedFulls(), score.heldFulls()));
        }
        return String.join("; ", words);
    }

    private void cases() {
        TuneTask task = result.task();
        page.gap().line("Each scenario with the chosen settings, seed " + task.seeds().first());
        page.line("  fulls  false  missed  mean off  worst off  scenario");
        for (int i = 0; i < task.cases().size(); i++) {
            if (task.cases().get(i).seed() != task.seeds().first()) {
                continue;
            }
            CaseScore it = result.chosen().cases().get(i);
            page.line(
                    String.format(
                            Locale.ROOT,
                            "  %5d %6d %7d %9s %10s  %s",
                            it.fulls(),
                            it.falseFulls(),
                            it.missedFulls(),
                            TuneWords.finePoints(it.meanErrorParts()),
                            TuneWords.points(it.worstErrorParts()),
                            TuneWords.name(task.cases().get(i).whole())));
        }
    }

    private void rest(String part) {
        TuneTask task = result.task();
        stated();
        if (!task.skipped().isEmpty()) {
            page.gap().line("Left out");
            Map<String, Integer> reasons = new LinkedHashMap<>();
            task.skipped().forEach(it -> reasons.merge(it.reason(), 1, Integer::sum));
            reasons.forEach(
                    (reason, count) ->
                            page.labelled(
                                    2,
                                    2,
                                    "-",
                                    count + (count == 1 ? " file: " : " files: ") + reason));
        }
        page.gap();
        page.paragraph(
                0,
                "%s settings tried, %s runs. Search seed %s."
                        .formatted(result.tried().size(), result.runs(), task.seed()));
        if (!part.isEmpty()) {
            page.paragraph(0, "Written to " + part + ".");
        }
        page.gap().paragraph(0, Cautions.DEFER);
        page.paragraph(0, Cautions.NO_PROTECTION);
    }

    private void stated() {
        List<String> found = new ArrayList<>();
        for (Scenario scenario : result.task().scenarios()) {
            List<String> keys = result.task().stated(scenario).stream().map(Setting::key).toList();
            if (!keys.isEmpty()) {
                found.add(TuneWords.name(scenario) + ": " + String.join(", ", keys));
            }
        }
        if (!found.isEmpty()) {
            page.gap().line("State some of these settings themselves");
            page.paragraph(
                    2,
                    "They were tried with the searched values all the same. A part stands under a"
                            + " scenario's own keys: take these out of it for a part to count.");
            found.forEach(each -> page.labelled(2, 2, "-", each));
        }
    }
}
