package org.gaugebench.sim.live.lessons;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.gaugebench.sim.units.QuantityException;

/**
 * A school lesson of {@value #MINUTES} minutes, minute by minute.
 *
 * @param number from 1
 * @param lessons numbers of the lessons that it uses
 * @param rows without a gap from 0 to {@value #MINUTES}
 * @param texts all texts in English, by their keys without the plan's number
 */
public record Plan(int number, List<Integer> lessons, List<Row> rows, Map<String, String> texts) {
    /** Length of a school lesson. */
    public static final int MINUTES = 45;

    private static final int MOST_ROWS = 12;
    private static final Pattern ROW =
            Pattern.compile("(\\d{1,2}) to (\\d{1,2})(?:, lesson (\\d{1,2}))?");

    /**
     * What happens in some minutes.
     *
     * @param fromMinute where it begins
     * @param toMinute where it ends
     * @param lesson whose time it is; 0 for none
     */
    public record Row(int fromMinute, int toMinute, int lesson) {
        private static Row parse(String text) throws QuantityException {
            Matcher match = ROW.matcher(text);
            if (!match.matches()) {
                throw new QuantityException("'" + text + "' is no row of a plan");
            }
            String lesson = match.group(3);
            return new Row(
                    Integer.parseInt(match.group(1)),
                    Integer.parseInt(match.group(2)),
                    lesson == null ? 0 : Integer.parseInt(lesson));
        }
    }

    /**
     * Reads a plan.
     *
     * @param file the name that problems show
     * @throws TextException with every problem of the text
     */
    static Plan read(String file, String text) throws TextException {
        KeyedFields fields = new KeyedFields(KeyedText.read(file, text));
        int number = fields.whole("plan", 1, 9);
        List<Integer> lessons = fields.numbers("lessons");
        for (String key : List.of("title", "aim", "material", "before", "homework")) {
            fields.words(key, key + " = Two words that a class understands");
        }
        int count = fields.count("row.", 1, 3, MOST_ROWS);
        List<Row> rows = new ArrayList<>();
        int end = 0;
        for (int i = 1; i <= count; i++) {
            String key = "row." + i;
            Row row = fields.value(key, key + " = 5 to 25, lesson 1", Row::parse, new Row(0, 0, 0));
            if (row.fromMinute() != end || row.toMinute() <= end) {
                fields.problem(key, "begins or ends wrongly; expected it to go on from " + end);
            }
            end = row.toMinute();
            rows.add(row);
            fields.words(key + ".text", key + ".text = Everybody writes a prediction down.");
        }
        if (end != MINUTES) {
            fields.problem("row." + count, "ends at " + end + "; expected " + MINUTES);
        }
        for (String key : List.of("no-page", "no-projector")) {
            fields.words(key, key + " = Hand out the answer sheet's picture.");
        }
        fields.finish();
        return new Plan(number, lessons, List.copyOf(rows), new LinkedHashMap<>(fields.texts()));
    }

    /** A text of the plan: "title", "row.1.text" and so on. */
    public String text(String part, Words words) {
        return words.text("plan-" + number + "." + part);
    }
}
