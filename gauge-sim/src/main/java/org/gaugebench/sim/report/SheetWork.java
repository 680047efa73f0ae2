package org.gaugebench.sim.report;

import java.util.List;
import org.gaugebench.sim.advice.FirstCharge;
import org.gaugebench.sim.advice.OwnLoad;
import org.gaugebench.sim.advice.OwnSettings;
import org.gaugebench.sim.advice.OwnSystem;
import org.gaugebench.sim.advice.OwnersGauge;
import org.gaugebench.sim.advice.SizingResult;
import org.gaugebench.sim.advice.WiringPlan;
import org.gaugebench.sim.advice.WrongSide;
import org.gaugebench.sim.units.ShuntRating;

/** The parts of the sheet for the day on which it is built. */
final class SheetWork {
    private final SheetPaper paper;
    private final HtmlText html;
    private final OwnSystem system;
    private final OwnersGauge gauge;
    private final SheetDetails details;
    private final SizingResult sizing;
    private final ShuntRating shunt;

    SheetWork(SheetPaper paper, SheetDetails details, SizingResult sizing) {
        this.paper = paper;
        html = paper.html();
        system = paper.system();
        gauge = paper.gauge();
        shunt = paper.shunt();
        this.details = details;
        this.sizing = sizing;
    }

    void before() {
        paper.open("before", "Before you take up a tool");
        paper.list("ol", SheetCautions.before(system));
        paper.close();
    }

    void settings() {
        paper.open("settings", "What to type in");
        html.markup("<table class=\"ledger settings\"><thead><tr>");
        html.markup("<th scope=\"col\">what</th><th scope=\"col\">value</th>");
        html.markup("<th scope=\"col\">done</th></tr></thead><tbody>");
        for (OwnSettings.Line each :
                OwnSettings.lines(system, gauge, shunt, details.chargerVolts())) {
            html.markup(
                    "<tr><th scope=\"row\">%s<code>%s</code><span class=\"why\">%s</span></th>"
                            + "<td class=\"figure\">%s</td><td class=\"tick\"></td></tr>",
                    each.words(), each.key(), each.why(), each.value());
        }
        html.markup("</tbody></table>");
        html.markup(
                "<p class=\"soft small\">The words in fixed type are those of our scenario files;"
                        + " your gauge may have its own, or may ask for less. Where your battery's"
                        + " maker gives another figure, take that one.</p>");
        paper.close();
    }

    // ---- Wires

    void wiring() {
        paper.open("wiring", "How it is wired");
        List<WiringPlan.Source> sources = details.drawn(system);
        WiringPlan plan = WiringPlan.of(system, sources, details.isEarthed());
        if (!plan.faults().isEmpty()) {
            throw new IllegalStateException("the drawing is wrong: " + plan.faults());
        }
        html.markup("<figure class=\"drawing\">");
        html.markup(WiringDrawing.of(system, shunt, plan, "Wiring of this system"));
        html.markup(
                "<figcaption>One cable only goes from the battery's negative to the shunt. Every"
                        + " load, every charger and the earth end on the other side of it. Thick:"
                        + " cables. Thin: the gauge's fused supply. Dashed: the thin pair on the"
                        + " shunt's small screws.</figcaption></figure>");
        if (sizing.peakAmps() > 0) {
            html.markup(
                    "<p>Which cable and which fuse for %s for hours and %s for moments? Take that"
                            + " to your local code: this sheet sizes neither.</p>",
                    SheetFigures.amps(sizing.steadyAmps()), SheetFigures.amps(sizing.peakAmps()));
        }
        longNames(plan);
        html.markup(
                "<details class=\"screen-only\"><summary>The same in words, wire by"
                        + " wire</summary>");
        paper.list("ul", WiringDrawing.words(plan));
        html.markup("</details>");
        html.markup("<h3>The two common mistakes, and what the screen would show</h3>");
        html.markup("<div class=\"mistakes\">");
        wrongLoad();
        wrongCharger();
        html.markup("</div>");
        paper.close();
    }

    /** What the drawing had no room for stands below it in full. */
    private void longNames(WiringPlan plan) {
        List<String> names =
                plan.parts().stream()
                        .filter(WiringPlan.Part::isUser)
                        .map(WiringPlan.Part::name)
                        .filter(it -> !WiringDrawing.shortened(it).equals(Page.clean(it)))
                        .toList();
        if (!names.isEmpty()) {
            html.markup("<p class=\"small\">Names in full: %s.</p>", String.join("; ", names));
        }
    }

    private void wrongLoad() {
        WrongSide.Result run = WrongSide.load(system, gauge, shunt);
        OwnLoad wrong =
                system.loads().stream()
                        .filter(it -> it.name().equals(run.name()))
                        .findFirst()
                        .orElse(WrongSide.EXAMPLE);
        draw(
                withOnly(List.of(wrong)),
                List.of(),
                "load-1",
                "Wrong: " + run.name() + " on the battery's own post",
                SheetPaper.text(
                        "While the battery gives %s, the screen shows %s. After %s it shows %s, and"
                                + " %s are left.",
                        SheetFigures.amps(Math.abs(run.trueAmps())),
                        SheetFigures.screenAmps(run.shownAmps()),
                        SheetFigures.hours(run.hours()),
                        SheetFigures.percent(run.shownPercent()),
                        SheetFigures.percent(run.truePercent())));
        if (run.isExample()) {
            paper.assumed()
                    .add("no load was told: a lamp of 1 A for 5 h a day stands as the example");
        }
    }

    /** The same system with other loads, and nothing that an inverter feeds. */
    private OwnSystem withOnly(List<OwnLoad> loads) {
        return new OwnSystem(
                system.nominalVolts(),
                system.chemistry(),
                system.ampHours(),
                loads,
                null,
                system.chargerAmps(),
                system.coldestCelsius(),
                system.shunt(),
                system.converter());
    }

    private void wrongCharger() {
        WrongSide.Result run = WrongSide.charger(system, gauge, shunt);
        List<WiringPlan.Source> sources = details.drawn(system);
        draw(
                withOnly(List.of()),
                sources.isEmpty() ? List.of(WiringPlan.Source.OTHER) : sources.subList(0, 1),
                "charger-1",
                "Wrong: a charger's negative on the battery's own post",
                SheetPaper.text(
                        "While it gives %s, the screen shows %s. After %s it still shows %s, and"
                                + " %s are in it.",
                        SheetFigures.amps(run.trueAmps()),
                        SheetFigures.screenAmps(run.shownAmps()),
                        SheetFigures.hours(run.hours()),
                        SheetFigures.percent(run.shownPercent()),
                        SheetFigures.percent(run.truePercent())));
        if (run.isExample()) {
            paper.assumed()
                    .add("no charger was told: one of a tenth of the amp-hours is the example");
        }
    }

    private void draw(
            OwnSystem drawn,
            List<WiringPlan.Source> sources,
            String wrongId,
            String title,
            String words) {
        WiringPlan plan = WiringPlan.withMistake(drawn, sources, false, wrongId);
        html.markup("<figure class=\"drawing mistake\">");
        html.markup("<p class=\"failed\"><b>%s</b></p>", title);
        html.markup(WiringDrawing.of(drawn, shunt, plan, title));
        html.markup("<figcaption>%s</figcaption></figure>", words);
    }

    // ---- The first charge

    void firstCharge() {
        FirstCharge.Result run = FirstCharge.of(system, gauge, shunt, details.chargerVolts());
        paper.open("first-charge", "The first charge");
        html.markup(
                "<p>Every load off. Charge until the volts stand at %s <b>and</b> the gauge's own"
                    + " amps have fallen to %s <b>and</b> have stayed there for %s minutes. Then"
                    + " set it to 100 %%. From half full that takes about %s here.</p>",
                SheetFigures.volts(run.chargerVolts()),
                SheetFigures.amps(run.fullAmps()),
                run.holdMinutes(),
                SheetFigures.hours(run.hoursToFull()));
        html.markup("<table class=\"ledger\"><caption>What calling it 100 % then costs</caption>");
        html.markup("<thead><tr><th scope=\"col\">you see</th>");
        html.markup("<th scope=\"col\" class=\"figure\">after</th>");
        html.markup("<th scope=\"col\" class=\"figure\">too much by</th></tr></thead>");
        html.markup("<tbody>");
        for (FirstCharge.Row each : run.rows()) {
            html.markup(
                    "<tr><th scope=\"row\">%s</th><td class=\"figure\">%s</td>"
                            + "<td class=\"figure\">%s</td></tr>",
                    each.words(),
                    SheetFigures.hours(each.hours()),
                    SheetFigures.points(each.costPoints()));
        }
        html.markup("</tbody></table>");
        if (!run.isCharger()) {
            paper.assumed()
                    .add(
                            SheetPaper.text(
                                    "no charger was told: the first charge is with %.1f A, a tenth"
                                            + " of the amp-hours",
                                    run.chargerAmps()));
        }
        paper.close();
    }

    void cautions() {
        paper.open("cautions", "What can hurt you or spoil it");
        paper.list("ul", SheetCautions.wires(system, sizing));
        paper.list("ul", SheetCautions.battery(system));
        paper.list("ul", SheetCautions.figure());
        paper.close();
    }
}
