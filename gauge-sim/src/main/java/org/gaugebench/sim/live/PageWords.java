package org.gaugebench.sim.live;

import java.util.LinkedHashMap;
import java.util.Map;
import org.gaugebench.sim.page.PageAsset;

/** The English words of the page: lines of "key = text" in one file, which a translator copies. */
final class PageWords {
    /** Before the keys of these words in a list of all words. */
    static final String GROUP = "page.";

    private PageWords() {}

    /** All of them, in the order of the file. */
    static Map<String, String> english() {
        Map<String, String> words = new LinkedHashMap<>();
        for (String line : PageAsset.text(PageWords.class, "live.words").split("\n", -1)) {
            int equals = line.indexOf('=');
            if (!line.startsWith("#") && equals > 0) {
                words.put(line.substring(0, equals).strip(), line.substring(equals + 1).strip());
            }
        }
        return words;
    }
}
