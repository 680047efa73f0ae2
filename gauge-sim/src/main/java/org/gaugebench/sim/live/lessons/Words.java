package org.gaugebench.sim.live.lessons;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.gaugebench.sim.page.PageAsset;
import org.gaugebench.sim.scenario.Nearest;

/**
 * Every text that a class sees, by its key. English is the complete list; a file given at the start
 * replaces lines of it, and lines that it lacks stay English. A text may have places for figures,
 * written {@code {0}}, {@code {1}} and so on.
 */
public final class Words {
    /** Most bytes of a file: a whole translation is a twentieth of it. */
    public static final int LARGEST_BYTES = 1 << 20;

    private static final Pattern PLACE = Pattern.compile("\\{(\\d)\\}");
    private static final Pattern BROKEN = Pattern.compile("\\{(?!\\d\\})|(?<!\\{\\d)\\}");
    private static final int WIDTH = 92;
    private static final String PAGE = "page.";
    private static final String HEAD =
            """
            # Every text of the lessons, the sheets, the plans and the page, in English. The program
            # made this file from its own texts: change those, not this one. To translate, copy it,
            # write over what stands after each '=', and give the copy at the start:
            # --words deutsch.words. A line that begins with a space goes on with the one above it;
            # {0} and its like are places for figures of the run and stay. Lines that are left out
            # stay English, so a copy may be as short as you like.

            """;
    private static final Words ENGLISH = new Words(readEnglish(), List.of());

    private final Map<String, String> texts;
    private final List<String> missing;

    private Words(Map<String, String> texts, List<String> missing) {
        this.texts = texts;
        this.missing = missing;
    }

    /** The words that the program is written in. */
    public static Words english() {
        return ENGLISH;
    }

    /**
     * Reads a translation.
     *
     * @param file lines {@code key = text} in UTF-8, at most 1 MiB
     * @return the words, with English for every line that is missing
     * @throws TextException with every problem of the file: unknown and repeated keys, places for
     *     figures that are broken, missing or too many, bytes that are not UTF-8
     */
    public static Words load(Path file) throws TextException {
        byte[] bytes;
        try (InputStream in = Files.newInputStream(file)) {
            bytes = in.readNBytes(LARGEST_BYTES + 1);
        } catch (NoSuchFileException e) {
            throw refusal(file, 1, 1, "there is no such file; expected one such as deutsch.words");
        } catch (IOException e) {
            throw refusal(file, 1, 1, "the file cannot be read");
        }
        if (bytes.length > LARGEST_BYTES) {
            throw refusal(file, 1, 1, "larger than 1 MiB; a translation is some 60 kilobytes");
        }
        ByteBuffer in = ByteBuffer.wrap(bytes);
        try {
            return parse(
                    file.toString(), StandardCharsets.UTF_8.newDecoder().decode(in).toString());
        } catch (CharacterCodingException e) {
            String before = new String(bytes, 0, in.position(), StandardCharsets.UTF_8);
            int line = (int) before.chars().filter(c -> c == '\n').count() + 1;
            int column = before.length() - before.lastIndexOf('\n');
            throw refusal(file, line, column, "a byte here is not UTF-8; save the file as UTF-8");
        }
    }

    private static TextException refusal(Path file, int line, int column, String message) {
        return new TextException(List.of(new TextProblem(file.toString(), line, column, message)));
    }

    /** Reads a translation from a text. */
    static Words parse(String file, String text) throws TextException {
        KeyedText read = KeyedText.read(file, text);
        Map<String, String> texts = new LinkedHashMap<>(ENGLISH.texts);
        for (KeyedText.Entry entry : read.entries().values()) {
            String english = ENGLISH.texts.get(entry.key());
            if (english == null) {
                String near = Nearest.of(entry.key(), ENGLISH.texts.keySet());
                read.problem(
                        entry.line(),
                        1,
                        "there is no key '"
                                + entry.key()
                                + "'; "
                                + (near == null
                                        ? "expected one such as '" + KeyedText.EXAMPLE + "'"
                                        : "did you mean '" + near + "'?"));
                continue;
            }
            String trouble = placeTrouble(entry.value(), english);
            if (!trouble.isEmpty()) {
                read.problem(entry, trouble);
            }
            texts.put(entry.key(), entry.value());
        }
        read.throwIfAny();
        List<String> missing = new ArrayList<>(ENGLISH.texts.keySet());
        missing.removeAll(read.entries().keySet());
        return new Words(texts, List.copyOf(missing));
    }

    private static String placeTrouble(String text, String english) {
        Matcher broken = BROKEN.matcher(text);
        if (broken.find()) {
            return "a brace that is no place for a figure, at '"
                    + text.substring(broken.start(), Math.min(text.length(), broken.start() + 5))
                    + "'; expected a place such as {0}";
        }
        Set<String> expected = places(english);
        Set<String> found = places(text);
        if (found.equals(expected)) {
            return "";
        }
        return "expected "
                + (expected.isEmpty() ? "no place for a figure" : String.join(" ", expected))
                + " as in the English text, but found "
                + (found.isEmpty() ? "none" : String.join(" ", found));
    }

    /** The places for figures in a text. */
    static Set<String> places(String text) {
        Set<String> places = new TreeSet<>();
        PLACE.matcher(text).results().forEach(it -> places.add(it.group()));
        return places;
    }

    /**
     * A text with its places filled.
     *
     * @param key of the list
     * @param args for {@code {0}}, {@code {1}} and so on; more than the text has places are left
     *     out
     * @throws IllegalArgumentException if there is no such key, or too few arguments
     */
    public String text(String key, Object... args) {
        String text = texts.get(key);
        if (text == null) {
            throw new IllegalArgumentException("no words for '" + key + "'");
        }
        Matcher place = PLACE.matcher(text);
        StringBuilder out = new StringBuilder();
        while (place.find()) {
            int index = Integer.parseInt(place.group(1));
            if (index >= args.length) {
                throw new IllegalArgumentException("'" + key + "' needs more than " + args.length);
            }
            place.appendReplacement(out, Matcher.quoteReplacement(args[index].toString()));
        }
        return place.appendTail(out).toString();
    }

    /** The words of the live page by its own keys, as they stand in page.words. */
    public Map<String, String> page() {
        Map<String, String> page = new LinkedHashMap<>();
        texts.forEach(
                (key, text) -> {
                    if (key.startsWith(PAGE)) {
                        page.put(key.substring(PAGE.length()), text);
                    }
                });
        // Of the sheets, and of every page: the language for a reader program, and its comma.
        page.put("language", text("language"));
        page.put("decimal-sign", text("number.decimal-sign"));
        return page;
    }

    /** Every key, in the list's order. */
    public List<String> keys() {
        return List.copyOf(texts.keySet());
    }

    /** Keys that the file lacked and that stayed English, in the list's order. */
    public List<String> missing() {
        return missing;
    }

    /** How many lines stayed English and which, in one line for people; empty where none did. */
    public String missingText() {
        return missing.isEmpty()
                ? ""
                : "%d of %d texts stay English: %s"
                        .formatted(missing.size(), texts.size(), String.join(", ", missing));
    }

    /** The whole list as a file: what a translator copies and writes over. */
    public String fileText() {
        StringBuilder out = new StringBuilder(HEAD);
        String group = "";
        for (Map.Entry<String, String> entry : texts.entrySet()) {
            String of = entry.getKey().replaceAll("\\..*", "");
            if (!of.equals(group)) {
                out.append(group.isEmpty() ? "" : "\n");
                group = of;
            }
            String line = entry.getKey() + " =";
            for (String word : entry.getValue().split(" ", -1)) {
                if (line.length() + 1 + word.length() > WIDTH) {
                    out.append(line).append('\n');
                    line = "   ";
                }
                line += " " + word;
            }
            out.append(line).append('\n');
        }
        return out.toString();
    }

    private static Map<String, String> readEnglish() {
        Map<String, String> all = new LinkedHashMap<>();
        putFile(all, "", "sheets.words");
        putFile(all, PAGE, "page.words");
        for (Lesson lesson : Lessons.all()) {
            lesson.texts().forEach((key, text) -> put(all, "lesson-" + lesson.number(), key, text));
        }
        for (Plan plan : Lessons.plans()) {
            plan.texts().forEach((key, text) -> put(all, "plan-" + plan.number(), key, text));
        }
        for (Map.Entry<String, String> entry : all.entrySet()) {
            String trouble = placeTrouble(entry.getValue(), entry.getValue());
            if (!trouble.isEmpty()) {
                throw new IllegalStateException(entry.getKey() + ": " + trouble);
            }
        }
        return all;
    }

    private static void putFile(Map<String, String> all, String group, String file) {
        KeyedText read = KeyedText.read(file, PageAsset.text(Words.class, file));
        read.entries().values().forEach(it -> all.put(group + it.key(), it.value()));
        try {
            read.throwIfAny();
        } catch (TextException e) {
            throw new IllegalStateException(e.render(), e);
        }
    }

    private static void put(Map<String, String> all, String group, String key, String text) {
        all.put(group + "." + key, text);
    }
}
