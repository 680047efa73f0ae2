package org.gaugebench.sim.page;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** A file of the jar that goes into a page. */
public enum PageAsset {
    /** Colours, sizes and plain parts of every page; its rules are in {@code docs/look.md}. */
    LOOK("look.css"),
    /** The script that draws charts: one global, {@code uPlot}; its notice is its first comment. */
    CHART_SCRIPT("/META-INF/resources/webjars/uplot/1.6.30/dist/uPlot.iife.min.js"),
    /** What that script needs of style. */
    CHART_STYLE("/META-INF/resources/webjars/uplot/1.6.30/dist/uPlot.min.css"),
    /** The licence of both, which a copy of them has to carry. */
    CHART_LICENCE("/META-INF/resources/webjars/uplot/1.6.30/LICENSE");

    private final String place;

    PageAsset(String place) {
        this.place = place;
    }

    /**
     * Its text, without spaces at the ends.
     *
     * @throws IllegalStateException if the jar was built without it
     */
    public String text() {
        return text(PageAsset.class, place);
    }

    /**
     * The text of a file beside a class, for pages of other packages.
     *
     * @param owner class whose package holds the file
     * @param name of the file, such as {@code report.js}; from the top if it begins with a slash
     * @throws IllegalStateException if there is none
     */
    public static String text(Class<?> owner, String name) {
        try (InputStream in = owner.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("this build lacks the page's file " + name);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).strip();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
