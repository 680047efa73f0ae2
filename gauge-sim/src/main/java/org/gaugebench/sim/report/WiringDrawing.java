package org.gaugebench.sim.report;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.gaugebench.sim.advice.OwnLoad;
import org.gaugebench.sim.advice.OwnSystem;
import org.gaugebench.sim.advice.WiringPlan;
import org.gaugebench.sim.advice.WiringPlan.Kind;
import org.gaugebench.sim.advice.WiringPlan.Part;
import org.gaugebench.sim.advice.WiringPlan.Use;
import org.gaugebench.sim.advice.WiringPlan.Wire;
import org.gaugebench.sim.units.ShuntRating;

/**
 * A wiring plan as a ladder: the positive rail at the left, the negative one at the right, each
 * load and charger a rung between them. Symbols are the plain ones of circuit diagrams (in the
 * manner of IEC 60617). Every wire of the plan is drawn, and none that is not in it; each says in
 * its attributes which one it is.
 */
final class WiringDrawing {
    private static final int WIDTH = 446;
    private static final int LEFT = 60;
    private static final int RIGHT = 340;
    private static final int FIRST_RUNG = 232;
    private static final int RUNG = 48;
    private static final int WRONG = 434;
    private static final int NAME_COLUMNS = 36;

    private final OwnSystem system;
    private final ShuntRating shunt;
    private final WiringPlan plan;
    private final StringBuilder text = new StringBuilder();
    private final Map<String, Integer> rungs = new LinkedHashMap<>();
    private final int railEnd;

    private WiringDrawing(OwnSystem system, ShuntRating shunt, WiringPlan plan) {
        this.system = system;
        this.shunt = shunt;
        this.plan = plan;
        int y = FIRST_RUNG;
        for (Part each : plan.parts()) {
            if (each.isUser()) {
                rungs.put(each.id(), y);
                y += RUNG;
            }
        }
        railEnd = y - RUNG + (rungs.isEmpty() ? RUNG : 0);
    }

    /**
     * Draws a plan.
     *
     * @param system whose it is
     * @param shunt that is fitted
     * @param plan what is joined to what
     * @param label what a screen reader says of it
     * @return an SVG element to stand in a page
     */
    static String of(OwnSystem system, ShuntRating shunt, WiringPlan plan, String label) {
        return new WiringDrawing(system, shunt, plan).draw(label);
    }

    private String draw(String label) {
        int height = railEnd + 58;
        line(
                "<svg class=\"wiring\" xmlns=\"http://www.w3.org/2000/svg\" role=\"img\""
                        + " viewBox=\"0 0 %d %d\" aria-label=\"%s\">",
                WIDTH, height, HtmlText.safe(label));
        plan.wires().forEach(this::wire);
        plan.parts().forEach(this::part);
        return text.append("</svg>").toString();
    }

    // ---- Wires

    private void wire(Wire wire) {
        String points = points(wire);
        boolean wrong = isWrong(wire);
        line(
                "<path class=\"%s%s\" data-from=\"%s\" data-to=\"%s\" d=\"M%s\"/>",
                wire.use().name().toLowerCase(Locale.ROOT),
                wrong ? " wrong" : "",
                wire.from(),
                wire.to(),
                points);
        if (wrong) {
            int y = rungOf(wire.from());
            line(
                    "<path class=\"wrong-mark\" d=\"M%d %d l14 14 m0 -14 l-14 14\"/>",
                    WRONG - 7, (y + 40) / 2);
        }
    }

    /** A user's negative that does not end on the rail. */
    private boolean isWrong(Wire wire) {
        return rungs.containsKey(wire.from()) && wire.to().equals("negative-post");
    }

    private String points(Wire wire) {
        String between = wire.from() + ">" + wire.to();
        Integer rung = rungs.get(wire.from());
        if (rung != null) {
            return isWrong(wire)
                    ? "232 %d H%d V40 H%d".formatted(rung, WRONG, RIGHT)
                    : "232 %d H%d".formatted(rung, RIGHT);
        }
        if (wire.from().equals("positive-rail")) {
            return "%d %d H86".formatted(LEFT, rungOf(wire.to().substring("fuse-".length())));
        }
        if (wire.from().startsWith("fuse-")) {
            return "116 %d H168".formatted(rungOf(wire.to()));
        }
        return switch (between) {
            case "positive-post>main-fuse" -> LEFT + " 40 V70";
            case "main-fuse>switch" -> LEFT + " 100 V124";
            case "switch>positive-rail" -> LEFT + " 152 V200";
            case "negative-post>shunt-battery-side" -> RIGHT + " 40 V88";
            case "shunt-load-side>negative-rail" -> RIGHT + " 152 V200";
            case "positive-post>gauge-fuse" -> LEFT + " 40 L84 62 H118";
            case "gauge-fuse>gauge" -> "144 62 H226 V92";
            case "gauge>shunt-load-side" ->
                    wire.use() == Use.SENSE ? "266 136 H332" : "226 148 V172 H322 L340 152";
            case "gauge>shunt-battery-side" -> "266 104 H332";
            case "negative-rail>earth" -> RIGHT + " " + railEnd + " V" + (railEnd + 24);
            default -> throw new IllegalStateException("no place for the wire " + between);
        };
    }

    /** How far down a user's rung is drawn. */
    private int rungOf(String id) {
        return Objects.requireNonNull(rungs.get(id), id);
    }

    // ---- Parts

    private void part(Part part) {
        line("<g data-part=\"%s\">", part.id());
        switch (part.kind()) {
            case POSITIVE_POST -> battery();
            case NEGATIVE_POST -> dot(RIGHT, 40);
            case MAIN_FUSE -> {
                line("<path class=\"body\" d=\"M54 70 h12 v30 h-12 z M60 70 v30\"/>");
                words(74, 82, "", "main fuse,");
                words(74, 95, "", "at the post");
            }
            case SWITCH -> {
                line("<path class=\"open\" d=\"M60 152 L47 127\"/>");
                dot(LEFT, 124);
                dot(LEFT, 152);
                words(74, 142, "", "battery switch");
            }
            case SHUNT_BATTERY_SIDE -> {
                line("<path class=\"body\" d=\"M332 88 h16 v64 h-16 z\"/>");
                dot(RIGHT, 88);
                words(352, 62, "strong", "one cable");
                words(352, 75, "strong", "only");
                words(354, 112, "", "shunt");
                String[] rating = shunt.toString().split(" / ", 2);
                words(354, 126, "", rating[0] + " /");
                words(354, 140, "", rating[1]);
            }
            case SHUNT_LOAD_SIDE -> dot(RIGHT, 152);
            case POSITIVE_RAIL -> rail(LEFT, "+");
            case NEGATIVE_RAIL -> rail(RIGHT, "\u2212");
            case GAUGE_FUSE -> {
                line("<path class=\"body\" d=\"M118 57 h26 v10 h-26 z M118 62 h26\"/>");
                words(152, 76, "", "small fuse");
            }
            case GAUGE -> {
                line("<path class=\"body\" d=\"M186 92 h80 v56 h-80 z\"/>");
                words(226, 124, "middle", "gauge");
                words(272, 124, "", "thin pair");
            }
            case FUSE -> {
                int y = rungOf(part.id().substring("fuse-".length()));
                line("<path class=\"body\" d=\"M86 %d h30 v10 h-30 z M86 %d h30\"/>", y - 5, y);
            }
            case LOAD, INVERTER, MAINS_CHARGER, SOLAR_CHARGER, CHARGER -> user(part);
            case EARTH -> {
                int y = railEnd + 24;
                line("<path class=\"body\" d=\"M326 %d h28 m-5 6 h-18 m5 6 h8\"/>", y);
                words(316, y + 8, "end", "the one earth");
            }
        }
        line("</g>");
    }

    private void battery() {
        line("<path class=\"cable\" d=\"M60 40 H190 M210 40 H340\"/>");
        line("<path class=\"body\" d=\"M190 24 v32\"/>");
        line("<path class=\"short\" d=\"M210 32 v16\"/>");
        dot(LEFT, 40);
        words(180, 34, "end strong", "+");
        words(220, 34, "strong", "\u2212");
        words(
                200,
                14,
                "middle strong",
                "battery, %d V, %s"
                        .formatted(
                                system.nominalVolts(), SheetFigures.ampHours(system.ampHours())));
    }

    private void rail(int x, String sign) {
        line("<path class=\"rail\" d=\"M%d 200 V%d\"/>", x, railEnd);
        words(x == LEFT ? x - 14 : x + 8, 212, "strong", sign);
    }

    private void user(Part part) {
        int y = rungOf(part.id());
        line("<title>%s</title>", HtmlText.safe(part.name()));
        line("<path class=\"body\" d=\"M168 %d h64 v24 h-64 z\"/>", y - 12);
        dot(LEFT, y);
        boolean onRail =
                plan.wires().stream()
                        .anyMatch(
                                it ->
                                        it.from().equals(part.id())
                                                && it.to().equals("negative-rail"));
        if (onRail) {
            dot(RIGHT, y);
        }
        words(200, y - 17, "middle name", shortened(part.name()));
        if (part.kind() == Kind.LOAD) {
            words(200, y + 4, "middle", amps(part.name()));
            return;
        }
        line("<path class=\"body\" d=\"M168 %d L232 %d\"/>", y + 12, y - 12);
        String[] sides = sides(part.kind());
        words(182, y + 1, "middle", sides[0]);
        words(218, y + 10, "middle", sides[1]);
    }

    /** What goes in and what comes out: steady or alternating, or the sun. */
    private static String[] sides(Kind kind) {
        return switch (kind) {
            case INVERTER -> new String[] {"=", "~"};
            case MAINS_CHARGER -> new String[] {"~", "="};
            case SOLAR_CHARGER -> new String[] {"sun", "="};
            default -> new String[] {"=", "="};
        };
    }

    private String amps(String name) {
        for (OwnLoad each : system.loads()) {
            if (each.name().equals(name)) {
                return SheetFigures.amps(Math.max(each.amps(), each.idleAmps()));
            }
        }
        return "";
    }

    /** As much of a name as a rung has room for; wide letters count twice. */
    static String shortened(String name) {
        String clean = Page.clean(name);
        StringBuilder kept = new StringBuilder();
        int columns = 0;
        for (int each : clean.codePoints().toArray()) {
            columns += each >= 0x1100 ? 2 : 1;
            if (columns > NAME_COLUMNS) {
                return kept.toString().strip() + "\u2026";
            }
            kept.appendCodePoint(each);
        }
        return kept.toString();
    }

    private void dot(int x, int y) {
        line("<circle class=\"dot\" cx=\"%d\" cy=\"%d\" r=\"3.4\"/>", x, y);
    }

    private void words(int x, int y, String style, String words) {
        line("<text class=\"%s\" x=\"%d\" y=\"%d\">%s</text>", style, x, y, HtmlText.safe(words));
    }

    private void line(String format, Object... values) {
        text.append(String.format(Locale.ROOT, format, values)).append('\n');
    }

    /** The plan in words, for those who do not see the drawing. */
    static List<String> words(WiringPlan plan) {
        return plan.wires().stream()
                .map(
                        it ->
                                plan.part(it.from()).name()
                                        + " to "
                                        + plan.part(it.to()).name()
                                        + switch (it.use()) {
                                            case CABLE -> "";
                                            case SUPPLY -> " (supply of the gauge)";
                                            case SENSE -> " (thin, on its small screw)";
                                        })
                .toList();
    }
}
