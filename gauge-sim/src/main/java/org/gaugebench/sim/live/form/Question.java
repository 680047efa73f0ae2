package org.gaugebench.sim.live.form;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** What the page can be asked, in its order. */
enum Question {
    /** Which shunt, and what it costs in accuracy. */
    SIZE,
    /** How long the figure can be believed. */
    MONTH,
    /** Whether the settings go together. */
    AUDIT,
    /** What may be behind a figure that looks wrong. */
    SYMPTOM,
    /** What to redo after a change. */
    CHANGED;

    String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    static @Nullable Question of(String key) {
        for (Question each : values()) {
            if (each.key().equals(key)) {
                return each;
            }
        }
        return null;
    }
}
