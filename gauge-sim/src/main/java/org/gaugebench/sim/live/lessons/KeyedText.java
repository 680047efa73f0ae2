package org.gaugebench.sim.live.lessons;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A text of lines {@code key = value}. A line that begins with a space goes on with the value above
 * it; a line that begins with {@code #} is for people; empty lines mean nothing. The one format of
 * lessons, plans and translations: nothing needs quotes, and a colon is a colon.
 */
final class KeyedText {
    /** What a line looks like, for messages. */
    static final String EXAMPLE = "lesson-1.title = Counting is adding";

    private static final Pattern LINE =
            Pattern.compile("([a-z0-9]+(?:[.-][a-z0-9]+)*)[ \\t]*=[ \\t]*(.*)");

    /** Beyond this a list helps nobody; a file of the wrong kind would fill the screen. */
    private static final int MOST_PROBLEMS = 100;

    private final String file;
    private final Map<String, Entry> entries = new LinkedHashMap<>();
    private final List<TextProblem> problems = new ArrayList<>();

    /**
     * A key with its value.
     *
     * @param key words and digits with dots and hyphens between
     * @param value in one line; never empty once read
     * @param line where the key stands, from 1
     * @param column where the value begins, from 1
     */
    record Entry(String key, String value, int line, int column) {}

    private KeyedText(String file) {
        this.file = file;
    }

    /**
     * Reads a text. Problems are kept, not thrown, so that a reader can add its own.
     *
     * @param file the name that problems show
     */
    static KeyedText read(String file, String text) {
        KeyedText read = new KeyedText(file);
        read.parse(text.startsWith("\ufeff") ? text.substring(1) : text);
        return read;
    }

    private void parse(String text) {
        String[] lines = text.split("\r\n|\r|\n", -1);
        String open = "";
        for (int i = 0; i < lines.length; i++) {
            String line = lines[i];
            if (line.isBlank() || line.startsWith("#")) {
                open = line.isBlank() ? "" : open;
            } else if (Character.isWhitespace(line.charAt(0))) {
                goOn(open, line.strip(), i + 1);
            } else {
                open = begin(line, i + 1);
            }
        }
        for (Entry entry : entries.values()) {
            if (entry.value().isEmpty()) {
                problem(entry, "nothing stands after '" + entry.key() + " ='; expected a text");
            }
        }
    }

    private void goOn(String open, String more, int line) {
        Entry before = entries.get(open);
        if (before == null) {
            problem(
                    line,
                    1,
                    "a line that begins with a space goes on with the one above, and above is none;"
                            + " expected '"
                            + EXAMPLE
                            + "'");
            return;
        }
        String value = before.value().isEmpty() ? more : before.value() + " " + more;
        entries.put(open, new Entry(open, value, before.line(), before.column()));
    }

    private String begin(String line, int number) {
        Matcher match = LINE.matcher(line);
        if (!match.matches()) {
            problem(number, 1, "expected a key, '=' and a text, such as '" + EXAMPLE + "'");
            return "";
        }
        String key = match.group(1);
        Entry first = entries.get(key);
        if (first != null) {
            problem(
                    number,
                    1,
                    "'"
                            + key
                            + "' stands twice; the first is on line "
                            + first.line()
                            + "; expected each key once");
            return "";
        }
        entries.put(key, new Entry(key, match.group(2).strip(), number, match.start(2) + 1));
        return key;
    }

    /** All entries in file order. */
    Map<String, Entry> entries() {
        return entries;
    }

    void problem(Entry entry, String message) {
        problem(entry.line(), entry.column(), message);
    }

    void problem(int line, int column, String message) {
        if (problems.size() < MOST_PROBLEMS) {
            problems.add(new TextProblem(file, line, column, message));
        }
    }

    /** Stops a reader that is done, if anything was found. */
    void throwIfAny() throws TextException {
        if (!problems.isEmpty()) {
            problems.sort(
                    Comparator.comparingInt(TextProblem::line)
                            .thenComparingInt(TextProblem::column));
            throw new TextException(problems);
        }
    }
}
