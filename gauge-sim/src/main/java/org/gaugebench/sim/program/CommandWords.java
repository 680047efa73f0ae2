package org.gaugebench.sim.program;

import java.util.ArrayList;
import java.util.List;

/**
 * Splits a command into words by rules that fit into one sentence, and starts no shell: spaces part
 * words, and a pair of quotes of either kind keeps spaces and quotes of the other kind.
 */
public final class CommandWords {
    private CommandWords() {}

    /**
     * Splits a text.
     *
     * @param text as it stands on the command line
     * @return at least one word; a pair of quotes with nothing in it is an empty word
     * @throws IllegalArgumentException with a sentence for people where there is no word or a quote
     *     is not closed
     */
    public static List<String> of(String text) {
        List<String> words = new ArrayList<>();
        StringBuilder word = new StringBuilder();
        boolean inWord = false;
        char quote = 0;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (quote != 0) {
                if (c == quote) {
                    quote = 0;
                } else {
                    word.append(c);
                }
            } else if (c == '\'' || c == '"') {
                quote = c;
                inWord = true;
            } else if (c == ' ') {
                if (inWord) {
                    words.add(word.toString());
                    word.setLength(0);
                }
                inWord = false;
            } else if (c < ' ' || c == 0x7F) {
                throw new IllegalArgumentException(
                        "a control character stands in the command; expected words with spaces"
                                + " between them, such as './my-gauge --fast'");
            } else {
                word.append(c);
                inWord = true;
            }
        }
        if (quote != 0) {
            throw new IllegalArgumentException(
                    "the quote %s is not closed; expected a pair, such as './my-gauge \"a b\"'"
                            .formatted(quote));
        }
        if (inWord) {
            words.add(word.toString());
        }
        if (words.isEmpty() || words.get(0).isEmpty()) {
            throw new IllegalArgumentException("no program is named; expected one, './my-gauge'");
        }
        return List.copyOf(words);
    }
}
