package org.gaugebench.sim.scenario;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.units.Texts;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.ScalarNode;

/** Reads and writes what a scenario is filed under. */
final class MarksReader {
    private static final int MOST_TAGS = 20;
    private static final int MOST_COVERED = 200;
    private static final int LONGEST_SYMPTOM = 200;
    private static final String TAG = "[a-z0-9][a-z0-9-]{0,30}";
    private static final String NUMBER = "[A-Za-z0-9][A-Za-z0-9._/-]{0,63}";

    private final Problems problems;
    private final Block file;

    MarksReader(Problems problems, Block file) {
        this.problems = problems;
        this.file = file;
    }

    Marks read() {
        List<String> tags =
                words(
                        "tags",
                        "winter",
                        MOST_TAGS,
                        TAG,
                        "a tag is lower-case letters, digits and hyphens, at most 31");
        List<String> covers =
                words(
                        "covers",
                        "F4",
                        MOST_COVERED,
                        NUMBER,
                        "a number is letters, digits and . _ / -, at most 64");
        String symptom = file.text("symptom", "The display stays at 99 % for days.");
        if (symptom != null
                && (symptom.isBlank()
                        || symptom.length() > LONGEST_SYMPTOM
                        || symptom.lines().count() != 1)) {
            file.valueProblem(
                    "symptom",
                    "expected one line of at most "
                            + LONGEST_SYMPTOM
                            + " characters such as 'symptom: The display stays at 99 %.'");
            symptom = null;
        }
        return new Marks(tags, covers, symptom == null ? "" : symptom.strip());
    }

    private List<String> words(String key, String example, int most, String shape, String rule) {
        List<String> words = new ArrayList<>();
        for (Node node : file.list(key, example)) {
            if (!(node instanceof ScalarNode scalar) || !scalar.getValue().matches(shape)) {
                problems.add(
                        node, rule + ", such as '" + example + "'; found " + Block.kindOf(node));
            } else if (words.contains(scalar.getValue())) {
                problems.add(node, "'" + Texts.shortened(scalar.getValue()) + "' stands twice");
            } else if (words.size() == most) {
                problems.add(node, "'" + key + "' holds at most " + most);
                break;
            } else {
                words.add(scalar.getValue());
            }
        }
        return List.copyOf(words);
    }

    /** Writes them back; the digest does not see them. */
    static void write(Marks it, Lines lines) {
        if (lines.isCanonical()) {
            return;
        }
        list(lines, "tags", it.tags());
        list(lines, "covers", it.covers());
        if (!it.symptom().isEmpty()) {
            lines.prose("symptom", it.symptom());
        }
    }

    private static void list(Lines lines, String key, List<String> words) {
        if (!words.isEmpty()) {
            lines.value(
                    key, "[" + String.join(", ", words.stream().map(Lines::quoted).toList()) + "]");
        }
    }
}
