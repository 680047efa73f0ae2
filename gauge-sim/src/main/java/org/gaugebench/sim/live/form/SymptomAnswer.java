package org.gaugebench.sim.live.form;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.gaugebench.sim.advice.NotesSymptom;
import org.gaugebench.sim.advice.SeenSymptom;
import org.gaugebench.sim.advice.SymptomResult;
import org.gaugebench.sim.units.ShuntRating;

/** Answers what may be behind a figure that looks wrong: from notes where there are any. */
final class SymptomAnswer {
    private SymptomAnswer() {}

    /**
     * Answers.
     *
     * @param read with notes enough, or with what the owner sees
     * @param shunt that is fitted, or proposed
     */
    static String of(FormReading.Read read, ShuntRating shunt) {
        boolean isNoted = !read.notes().isEmpty();
        SymptomResult result =
                isNoted
                        ? NotesSymptom.of(read.notes(), read.system(), read.gauge(), shunt)
                        : SeenSymptom.of(
                                Objects.requireNonNull(read.seen()),
                                read.system(),
                                read.gauge(),
                                shunt);
        List<AnswerJson.Step> steps = new ArrayList<>();
        for (SymptomResult.Ranked each : result.causes()) {
            steps.add(new AnswerJson.Step(each.cause().words(), lines(each, result)));
        }
        List<String> assumed = new ArrayList<>(result.assumed());
        if (isNoted && read.seen() != null) {
            assumed.add("the notes say more than one thing seen, which is left aside");
        }
        return new AnswerJson(result.answer(), List.of())
                .steps(word("a-causes"), steps)
                .list(word("a-next"), result.findOut())
                .end(read.assumedWith(assumed), "");
    }

    private static List<List<String>> lines(SymptomResult.Ranked each, SymptomResult result) {
        List<List<String>> lines = new ArrayList<>();
        lines.add(List.of(word("a-how-much"), each.size()));
        if (!result.alike().isEmpty()) {
            lines.add(List.of(word("a-notes"), word("a-" + fit(each, result))));
        }
        lines.add(List.of(word("a-check"), each.cause().check()));
        lines.add(List.of(word("a-shows"), each.cause().scenario() + ".yaml"));
        return lines;
    }

    /** The one that fits best, several that notes cannot separate, or one that fits less well. */
    private static String fit(SymptomResult.Ranked each, SymptomResult result) {
        if (!result.alike().contains(each.cause())) {
            return "notes-less";
        }
        return result.alike().size() == 1 ? "notes-best" : "notes-alike";
    }

    private static String word(String key) {
        return AnswerJson.word("sys-" + key);
    }
}
