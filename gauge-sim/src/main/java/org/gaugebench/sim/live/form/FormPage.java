package org.gaugebench.sim.live.form;

import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.gaugebench.sim.page.PageAsset;

/** Writes the page: its frame is a file, its fields come from {@link FormField}. */
final class FormPage {
    private static final Pattern WORD = Pattern.compile("data-word=\"([a-z0-9-]+)\"></");
    private static final Pattern LABEL =
            Pattern.compile("(aria-label|placeholder|data-lost)=\"#([a-z0-9-]+)\"");

    private final Map<String, String> words;
    private final StringBuilder html = new StringBuilder();

    private FormPage(Map<String, String> words) {
        this.words = words;
    }

    static String html(Map<String, String> words, String token) {
        FormPage page = new FormPage(words);
        String frame = PageAsset.text(FormPage.class, "system.html");
        for (FormField.Group group : FormField.Group.values()) {
            frame = frame.replace("@" + group.name() + "@", page.fields(group));
        }
        frame = frame.replace("@UNITS@", page.options("sys-unit-", MySystem.UNITS));
        frame = frame.replace("@SOURCES@", page.options("sys-source-", MySystem.SOURCES));
        frame = frame.replace("@WORDS@", page.options("sys-word-", MySystem.Note.WORDS));
        return page.filled(frame).replace("@TOKEN@", token);
    }

    /** Words stand in the page when it comes, so that nothing moves when a script has run. */
    private String filled(String frame) {
        Matcher word = WORD.matcher(frame);
        String whole =
                word.replaceAll(
                        it ->
                                Matcher.quoteReplacement(
                                        "data-word=\""
                                                + it.group(1)
                                                + "\">"
                                                + safe(word(it.group(1)))
                                                + "</"));
        return LABEL.matcher(whole)
                .replaceAll(
                        it ->
                                Matcher.quoteReplacement(
                                        it.group(1) + "=\"" + safe(word(it.group(2))) + "\""));
    }

    private String word(String key) {
        String text = words.get(key);
        if (text == null) {
            throw new IllegalStateException("no word for '" + key + "'");
        }
        return text;
    }

    private static String safe(String words) {
        return words.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }

    private String fields(FormField.Group group) {
        html.setLength(0);
        for (FormField field : FormField.values()) {
            if (field.group() == group) {
                if (field.choices().isEmpty()) {
                    typed(field);
                } else {
                    chosen(field);
                }
            }
        }
        return html.toString();
    }

    private void head(FormField field) {
        add(
                """
                <div class="field" data-key="%1$s">
                <label for="f-%1$s" id="f-%1$s-label" data-word="sys-%1$s"></label>
                """,
                field.key());
    }

    private void foot(FormField field) {
        if (words.containsKey("sys-" + field.key() + "-hint")) {
            add(
                    """
                    <p class="hint soft small" id="f-%1$s-hint" data-word="sys-%1$s-hint"></p>
                    """,
                    field.key());
        }
        add(
                """
                <p class="wrong small" id="f-%1$s-wrong"></p>
                </div>
                """,
                field.key());
    }

    private String describedBy(FormField field) {
        boolean hint = words.containsKey("sys-" + field.key() + "-hint");
        return (hint ? "f-" + field.key() + "-hint " : "") + "f-" + field.key() + "-wrong";
    }

    private void typed(FormField field) {
        head(field);
        add(
                """
                <span class="entry"><input type="text" id="f-%1$s" autocomplete="off"
                spellcheck="false" maxlength="80" placeholder="%2$s" aria-describedby="%4$s"><span
                class="unit">%3$s</span><label class="switch small"><input type="checkbox"
                id="f-%1$s-unknown" checked aria-labelledby="f-%1$s-label f-%1$s-nk"><span
                id="f-%1$s-nk" data-word="sys-not-known"></span></label></span>
                """,
                field.key(), safe(field.example()), safe(field.unit()), describedBy(field));
        foot(field);
    }

    private void chosen(FormField field) {
        head(field);
        add(
                """
                <span class="entry"><select id="f-%1$s" aria-describedby="%2$s">
                <option value="" data-word="sys-not-known"></option>
                """,
                field.key(), describedBy(field));
        for (String each : field.choices()) {
            add(
                    "<option value=\"%s\" data-word=\"%s\"></option>\n",
                    safe(each), field.wordOf(each));
        }
        add("</select></span>\n");
        foot(field);
    }

    private String options(String stem, List<String> keys) {
        StringBuilder options = new StringBuilder();
        for (String key : keys) {
            options.append(
                    "<option value=\"%s\" data-word=\"%s\"></option>".formatted(key, stem + key));
        }
        return options.toString();
    }

    // The annotation that the check asks for would be a library more in the jar, for one line.
    @SuppressWarnings("AnnotateFormatMethod")
    private void add(String markup, Object... values) {
        html.append(markup.formatted(values));
    }
}
