package org.gaugebench.sim.report;

import java.util.List;
import org.gaugebench.sim.tune.TuneResult;
import org.gaugebench.sim.tune.TuneScore;
import org.gaugebench.sim.tune.TunedSetting;

/** The chosen settings as a part that scenarios include. */
public final class TunePart {
    private TunePart() {}

    /** Writes the part. */
    public static String of(TuneResult result, String version) {
        StringBuilder text = new StringBuilder();
        comment(text, "Settings of the full-charge rule for " + TuneWords.battery(result) + ",");
        comment(text, "found by gauge-sim tune " + version + ".");
        comment(text, "");
        for (String line : TuneWords.answer(result).split("(?<=[,.:]) ", -1)) {
            comment(text, line);
        }
        TuneScore chosen = result.chosen();
        comment(
                text,
                "Off by %s points in the mean and %s at worst; the preset by %s and %s."
                        .formatted(
                                TuneWords.finePoints(chosen.meanErrorParts()),
                                TuneWords.points(chosen.worstErrorParts()),
                                TuneWords.finePoints(result.preset().meanErrorParts()),
                                TuneWords.points(result.preset().worstErrorParts())));
        comment(
                text,
                "Seeds %s, checked with %s; search seed %s."
                        .formatted(
                                TuneText.seeds(result.task().seeds()),
                                TuneText.seeds(result.task().otherSeeds()),
                                result.task().seed()));
        comment(text, "");
        comment(text, "The sheet of the battery's maker goes before these figures.");
        text.append("gauge:\n");
        List<TunedSetting> settings = result.task().settings();
        for (int i = 0; i < settings.size(); i++) {
            TunedSetting it = settings.get(i);
            text.append("  ").append(it.setting().key()).append(": ");
            text.append(TuneWords.value(it, chosen.candidate().value(i))).append('\n');
        }
        return text.toString();
    }

    private static void comment(StringBuilder text, String line) {
        text.append(line.isEmpty() ? "#" : "# " + line).append('\n');
    }
}
