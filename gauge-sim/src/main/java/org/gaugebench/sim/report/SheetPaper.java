package org.gaugebench.sim.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.gaugebench.sim.advice.OwnSystem;
import org.gaugebench.sim.advice.OwnersGauge;
import org.gaugebench.sim.units.ShuntRating;

/** What all parts of a system's sheet are written on, and whose sheet it is. */
final class SheetPaper {
    private final HtmlText html;
    private final OwnSystem system;
    private final OwnersGauge gauge;
    private final ShuntRating shunt;
    private final List<String> assumed = new ArrayList<>();

    SheetPaper(HtmlText html, OwnSystem system, OwnersGauge gauge, ShuntRating shunt) {
        this.html = html;
        this.system = system;
        this.gauge = gauge;
        this.shunt = shunt;
    }

    HtmlText html() {
        return html;
    }

    OwnSystem system() {
        return system;
    }

    OwnersGauge gauge() {
        return gauge;
    }

    ShuntRating shunt() {
        return shunt;
    }

    /** What was taken where nothing was told, in the order of the parts. */
    List<String> assumed() {
        return assumed;
    }

    /** Begins a part. */
    void open(String id, String heading) {
        html.markup("<section class=\"sheet\" id=\"%s\"><h2>%s</h2>", id, heading);
    }

    /** Ends it. */
    void close() {
        html.markup("</section>");
    }

    /** A list of words. */
    void list(String tag, List<String> lines) {
        html.markup("<" + tag + ">");
        lines.forEach(each -> html.markup("<li>%s</li>", each));
        html.markup("</" + tag + ">");
    }

    /** Words with figures, alike everywhere. */
    static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
