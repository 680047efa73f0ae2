package org.gaugebench.sim.live.lessons;

import java.nio.charset.StandardCharsets;
import java.util.Base64;
import org.gaugebench.sim.page.PageAsset;

/** A page that carries all it needs, for a screen and for one sheet of A4 or Letter. */
final class Html {
    private final StringBuilder text = new StringBuilder();

    Html() {}

    /** A text made safe between tags and in attributes. */
    static String safe(String words) {
        return words.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }

    /** Adds what is HTML already. */
    Html raw(String html) {
        text.append(html);
        return this;
    }

    /** Adds an element with words in it. */
    Html element(String tag, String words) {
        String name = tag.contains(" ") ? tag.substring(0, tag.indexOf(' ')) : tag;
        return raw("<" + tag + ">" + safe(words) + "</" + name + ">\n");
    }

    /** Adds a picture that lies in the page itself. */
    Html picture(String svg, String alternative) {
        String data = Base64.getEncoder().encodeToString(svg.getBytes(StandardCharsets.UTF_8));
        return raw(
                "<img class=\"still\" alt=\""
                        + safe(alternative)
                        + "\" src=\"data:image/svg+xml;base64,"
                        + data
                        + "\">\n");
    }

    /** The whole page: always on paper, whatever the reader's system prefers. */
    String page(String title, String kind, Words words) {
        return "<!doctype html>\n<html lang=\""
                + safe(words.text("language"))
                + "\" data-theme=\"light\">\n<head>\n<meta charset=\"utf-8\">\n"
                + "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
                + "<title>"
                + safe(title)
                + "</title>\n<style>\n"
                + PageAsset.LOOK.text()
                + "\n"
                + PageAsset.text(Html.class, "sheet.css")
                + "\n</style>\n</head>\n<body>\n<main class=\"sheet "
                + kind
                + "\">\n"
                + text
                + "<p class=\"safety\">"
                + safe(words.text("safety"))
                + "</p>\n</main>\n</body>\n</html>\n";
    }
}
