package org.gaugebench.sim.report;

import java.util.ArrayDeque;
import java.util.Deque;

/**
 * An XML 1.0 document as it grows. Characters that XML does not allow, which a file may carry in
 * from anywhere, become U+FFFD; line breaks in attributes stay line breaks.
 */
final class XmlText {
    private static final char REPLACEMENT = '\ufffd';

    private final StringBuilder text =
            new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
    private final Deque<String> open = new ArrayDeque<>();
    private boolean startTagOpen;

    /** Opens an element. */
    XmlText open(String name) {
        endStartTag();
        indent();
        text.append('<').append(name);
        open.push(name);
        startTagOpen = true;
        return this;
    }

    /** Gives the element just opened an attribute. */
    XmlText with(String name, String value) {
        if (!startTagOpen) {
            throw new IllegalStateException("an attribute after the start tag: " + name);
        }
        text.append(' ').append(name).append("=\"");
        escape(value, true);
        text.append('"');
        return this;
    }

    /** Gives the element just opened an attribute. */
    XmlText with(String name, long value) {
        return with(name, Long.toString(value));
    }

    /** Closes the innermost element, which has text and no child. */
    XmlText close(String content) {
        if (content.isEmpty()) {
            return close();
        }
        text.append('>');
        startTagOpen = false;
        escape(content, false);
        text.append("</").append(open.pop()).append(">\n");
        return this;
    }

    /** Closes the innermost element. */
    XmlText close() {
        String name = open.pop();
        if (startTagOpen) {
            text.append("/>\n");
            startTagOpen = false;
        } else {
            indent();
            text.append("</").append(name).append(">\n");
        }
        return this;
    }

    private void endStartTag() {
        if (startTagOpen) {
            text.append(">\n");
            startTagOpen = false;
        }
    }

    private void indent() {
        text.append("  ".repeat(open.size()));
    }

    private void escape(String raw, boolean attribute) {
        raw.codePoints()
                .forEach(
                        c -> {
                            switch (c) {
                                case '&' -> text.append("&amp;");
                                case '<' -> text.append("&lt;");
                                case '>' -> text.append("&gt;");
                                case '"' -> text.append("&quot;");
                                case '\n', '\t' -> whitespace(c, attribute);
                                case '\r' -> text.append("&#13;");
                                default -> {
                                    if (isAllowed(c)) {
                                        text.appendCodePoint(c);
                                    } else {
                                        text.append(REPLACEMENT);
                                    }
                                }
                            }
                        });
    }

    private void whitespace(int character, boolean attribute) {
        if (attribute) {
            text.append("&#").append(character).append(';');
        } else {
            text.appendCodePoint(character);
        }
    }

    /** The production Char of XML 1.0, less what is written as a reference. */
    private static boolean isAllowed(int c) {
        return (c >= 0x20 && c <= 0xD7FF) || (c >= 0xE000 && c <= 0xFFFD) || c >= 0x10000;
    }

    @Override
    public String toString() {
        return text.toString();
    }
}
