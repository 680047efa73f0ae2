package org.gaugebench.sim.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.SettingText;
import org.gaugebench.sim.tune.CaseScore;
import org.gaugebench.sim.tune.TuneReason;
import org.gaugebench.sim.tune.TuneResult;
import org.gaugebench.sim.tune.TuneScore;
import org.gaugebench.sim.tune.TunedSetting;
import org.jspecify.annotations.Nullable;

/** A search of settings in plain words: what page, part and picture say alike. */
final class TuneWords {
    private static final int MOST_NAMES = 3;

    private TuneWords() {}

    /** The answer in one sentence. */
    static String answer(TuneResult result) {
        TuneScore chosen = result.chosen();
        TuneScore other = result.otherChosen();
        if (result.isGood()) {
            return ("With these settings no full is false and none is missed, in %s and in %s whose"
                            + " seeds the search never saw.")
                    .formatted(
                            runs(result.task().cases().size()),
                            runs(result.task().others().size()));
        }
        return ("No settings within the safe range meet every run: with these %s and %s in %s, %s"
                        + " and %s in %s whose seeds the search never saw.")
                .formatted(
                        falseFulls(chosen.falseFulls()),
                        missed(chosen.missedFulls()),
                        runs(result.task().cases().size()),
                        falseFulls(other.falseFulls()),
                        missed(other.missedFulls()),
                        runs(result.task().others().size()));
    }

    static String runs(int count) {
        return count + (count == 1 ? " run" : " runs");
    }

    private static String falseFulls(int count) {
        return count == 0 ? "no full is false" : count + (count == 1 ? " is" : " are") + " false";
    }

    private static String missed(int count) {
        return count == 0 ? "none missed" : count + " missed";
    }

    /** What the settings are for. */
    static String battery(TuneResult result) {
        return result.task().chemistry().key() + ", " + result.task().nominalVolts() + " V";
    }

    /** A file without its folders, and which of its runs. */
    static String name(Scenario scenario) {
        String file = scenario.file().replace('\\', '/');
        // Every scenario was read with one seed; which seeds it ran with is told apart.
        String variant = scenario.variant().replaceFirst("(, )?seed=1$", "");
        return Page.clean(file.substring(file.lastIndexOf('/') + 1))
                + (variant.isEmpty() ? "" : " [" + Page.clean(variant) + "]");
    }

    /** A setting's value as a scenario writes it. */
    static String value(TunedSetting setting, long value) {
        return SettingText.of(setting.setting(), value);
    }

    /** Points with one digit. */
    static String points(long partsPerMillion) {
        return String.format(Locale.ROOT, "%.1f", partsPerMillion / 1e4);
    }

    /** Points with two digits, for means. */
    static String finePoints(double partsPerMillion) {
        return String.format(Locale.ROOT, "%.2f", partsPerMillion / 1e4);
    }

    /** The settings in which two candidates differ, the first one's values. */
    static String differences(TuneResult result, TuneScore score, TuneScore from) {
        List<String> words = new ArrayList<>();
        List<TunedSetting> settings = result.task().settings();
        for (int i = 0; i < settings.size(); i++) {
            long value = score.candidate().value(i);
            if (value != from.candidate().value(i)) {
                TunedSetting it = settings.get(i);
                words.add(it.setting().key() + " " + value(it, value));
            }
        }
        return words.isEmpty() ? "as chosen" : String.join(", ", words);
    }

    /** Why a setting is not lower, and why not higher. */
    static List<String> reasons(TuneResult result, TuneReason reason) {
        TunedSetting it = reason.setting();
        List<String> words = new ArrayList<>();
        if (reason.isIndifferent()) {
            words.add(
                    "makes no difference from %s to %s in these scenarios; %s"
                            .formatted(
                                    value(it, it.lowest()),
                                    value(it, it.highest()),
                                    reason.value() == it.preset()
                                            ? "left as it usually is"
                                            : "nothing here decides it"));
            return words;
        }
        words.add(side(result, reason, reason.lower(), "lower", it.lowest(), it.lowerReason()));
        words.add(side(result, reason, reason.higher(), "higher", it.highest(), it.upperReason()));
        return words;
    }

    private static String side(
            TuneResult result,
            TuneReason reason,
            TuneReason.@Nullable Step step,
            String word,
            long end,
            String endReason) {
        TunedSetting it = reason.setting();
        if (step != null) {
            return value(it, step.value()) + ": " + change(result, step.score());
        }
        return reason.value() == end
                ? "nothing " + word + " is recommended: " + endReason
                : "%s to %s: no difference".formatted(word, value(it, end));
    }

    /** What another candidate brings against the chosen one, and where. */
    static String change(TuneResult result, TuneScore other) {
        TuneScore chosen = result.chosen();
        List<String> words = new ArrayList<>();
        count(words, result, other, "false full", CaseScore::falseFulls);
        count(words, result, other, "missed full", CaseScore::missedFulls);
        if (other.isNoticedInMean(chosen) || chosen.isNoticedInMean(other)) {
            words.add(
                    "off by %s points in the mean instead of %s"
                            .formatted(
                                    finePoints(other.meanErrorParts()),
                                    finePoints(chosen.meanErrorParts())));
        }
        if (other.isNoticedAtWorst(chosen) || chosen.isNoticedAtWorst(other)) {
            words.add(
                    "by %s at worst instead of %s, in %s"
                            .formatted(
                                    points(other.worstErrorParts()),
                                    points(chosen.worstErrorParts()),
                                    worst(result, other, chosen)));
        }
        return words.isEmpty() ? "no difference" : String.join("; ", words);
    }

    private static String worst(TuneResult result, TuneScore other, TuneScore chosen) {
        TuneScore larger = other.worstErrorParts() > chosen.worstErrorParts() ? other : chosen;
        for (int i = 0; i < larger.cases().size(); i++) {
            if (larger.cases().get(i).worstErrorParts() == larger.worstErrorParts()) {
                return name(result.task().cases().get(i).whole());
            }
        }
        return "";
    }

    private static void count(
            List<String> words,
            TuneResult result,
            TuneScore other,
            String what,
            java.util.function.ToIntFunction<CaseScore> of) {
        Map<String, Integer> more = new LinkedHashMap<>();
        int total = 0;
        for (int i = 0; i < other.cases().size(); i++) {
            int difference =
                    of.applyAsInt(other.cases().get(i))
                            - of.applyAsInt(result.chosen().cases().get(i));
            total += difference;
            if (difference != 0) {
                more.merge(name(result.task().cases().get(i).whole()), difference, Integer::sum);
            }
        }
        if (more.isEmpty()) {
            return;
        }
        int count = Math.abs(total);
        words.add(
                "%s %s%s %s, in %s"
                        .formatted(
                                count,
                                what,
                                count == 1 ? "" : "s",
                                total < 0 ? "fewer" : "more",
                                names(List.copyOf(more.keySet()))));
    }

    static String names(List<String> names) {
        int left = names.size() - MOST_NAMES;
        return left <= 0
                ? String.join(", ", names)
                : String.join(", ", names.subList(0, MOST_NAMES)) + " and " + left + " more";
    }
}
