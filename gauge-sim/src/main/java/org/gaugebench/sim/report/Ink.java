package org.gaugebench.sim.report;

/** Marks words for a terminal, or leaves them alone. Nothing is told by colour only. */
public enum Ink {
    /** No marks at all: for files, pipes and terminals whose owner wants none. */
    PLAIN,
    /** Escape sequences of ECMA-48 (select graphic rendition). */
    COLOUR;

    private static final String RESET = "\u001b[0m";

    private String mark(String code, String text) {
        return this == PLAIN ? text : "\u001b[" + code + "m" + text + RESET;
    }

    /** Something that holds. */
    public String good(String text) {
        return mark("1;32", text);
    }

    /** Something that does not. */
    public String bad(String text) {
        return mark("1;31", text);
    }

    /** Something to be careful with. */
    public String doubtful(String text) {
        return mark("1;33", text);
    }

    /** A heading. */
    public String heading(String text) {
        return mark("1", text);
    }
}
