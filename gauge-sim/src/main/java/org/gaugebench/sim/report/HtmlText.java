package org.gaugebench.sim.report;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;

/** Grows a page of HTML; every word of a user is made safe by {@link #safe}. */
final class HtmlText {
    private final StringBuilder text = new StringBuilder();

    HtmlText() {}

    /** Adds markup of ours as it is, and a line end. */
    HtmlText markup(String markup) {
        text.append(markup).append('\n');
        return this;
    }

    /** Adds markup of ours in which each {@code %s} becomes words made safe. */
    HtmlText markup(String markup, Object... words) {
        Object[] safe = new Object[words.length];
        for (int i = 0; i < words.length; i++) {
            safe[i] = safe(String.valueOf(words[i]));
        }
        return markup(markup.formatted(safe));
    }

    /**
     * Words that end no element and no attribute: control characters become spaces, and what HTML
     * gives a meaning to is written out.
     */
    static String safe(String words) {
        StringBuilder safe = new StringBuilder();
        Page.clean(words.replace("\n", "\u2028"))
                .codePoints()
                .forEach(
                        each -> {
                            switch (each) {
                                case '&' -> safe.append("&amp;");
                                case '<' -> safe.append("&lt;");
                                case '>' -> safe.append("&gt;");
                                case '"' -> safe.append("&quot;");
                                case '\'' -> safe.append("&#39;");
                                case 0x2028 -> safe.append('\n');
                                default -> safe.appendCodePoint(each);
                            }
                        });
        return safe.toString();
    }

    /** How a content security policy names a script or a style that stands in the page itself. */
    static String source(String inline) {
        try {
            byte[] hash =
                    MessageDigest.getInstance("SHA-256")
                            .digest(inline.getBytes(StandardCharsets.UTF_8));
            return "'sha256-" + Base64.getEncoder().encodeToString(hash) + "'";
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    @Override
    public String toString() {
        return text.toString();
    }
}
