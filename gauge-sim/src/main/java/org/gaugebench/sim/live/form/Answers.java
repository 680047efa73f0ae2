package org.gaugebench.sim.live.form;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.function.Consumer;
import org.gaugebench.sim.advice.Changes;
import org.gaugebench.sim.advice.ChangesResult;
import org.gaugebench.sim.advice.Course;
import org.gaugebench.sim.advice.Drift;
import org.gaugebench.sim.advice.Finding;
import org.gaugebench.sim.advice.MonthAhead;
import org.gaugebench.sim.advice.MonthAheadResult;
import org.gaugebench.sim.advice.OwnAudit;
import org.gaugebench.sim.advice.OwnChange;
import org.gaugebench.sim.advice.OwnLoad;
import org.gaugebench.sim.advice.OwnSystem;
import org.gaugebench.sim.advice.ShuntChoice;
import org.gaugebench.sim.advice.Sizing;
import org.gaugebench.sim.advice.SizingResult;
import org.gaugebench.sim.advice.TrialLimits;
import org.gaugebench.sim.advice.TypedFields;
import org.gaugebench.sim.advice.WiringPlan;
import org.gaugebench.sim.report.AheadText;
import org.gaugebench.sim.report.AuditText;
import org.gaugebench.sim.report.ChangesText;
import org.gaugebench.sim.report.SheetDetails;
import org.gaugebench.sim.report.SizingText;
import org.gaugebench.sim.report.SystemSheet;
import org.gaugebench.sim.units.ShuntRating;

/** Answers questions about one form that could be read. */
final class Answers {
    private static final double DAYS_A_MONTH = 30;

    /** Hours between two points of the month's picture: a line has at most some 120. */
    private static final int PICTURE_HOURS = 6;

    /** Chargers that a wiring drawing has room for. */
    private static final int MOST_DRAWN = 6;

    /** What the form calls the settings of a remedy; others are no question of the form. */
    private static final Map<String, String> SETTING_WORDS =
            Map.ofEntries(
                    Map.entry("chemistry", "typed-chemistry"),
                    Map.entry("capacity", "typed-capacity"),
                    Map.entry("shunt-rated-current", "set-shunt-amps"),
                    Map.entry("shunt-rated-drop", "set-shunt-drop"),
                    Map.entry("absorption", "set-absorption"),
                    Map.entry("absorption-margin", "set-margin"),
                    Map.entry("taper", "full-amps"),
                    Map.entry("hold", "full-minutes"),
                    Map.entry("coulombic-efficiency", "efficiency-set"),
                    Map.entry("kept-back-charge", "kept-back"),
                    Map.entry("own-supply-current", "own-current"),
                    Map.entry("temperature-coefficient", "set-temperature"),
                    Map.entry("peukert-exponent", "set-fast"),
                    Map.entry("empty-voltage", "set-empty"));

    private final FormReading.Read read;
    private final OwnSystem system;
    private final SizingResult sizing;

    Answers(FormReading.Read read) {
        this.read = read;
        this.system = read.system();
        this.sizing = Sizing.of(system);
    }

    /**
     * The shunt that is there, or the proposed one.
     *
     * @throws FormRefusal if no usual one fits
     */
    ShuntRating shunt() throws FormRefusal {
        ShuntRating shunt = sizing.chosen();
        if (shunt == null) {
            throw new FormRefusal(
                    422,
                    "no usual shunt carries these currents; expected the one that is there, such as"
                            + " 500 A / 75 mV");
        }
        refuse(fields -> TrialLimits.check(system, read.gauge(), shunt, fields));
        return shunt;
    }

    /** Tells all that a run cannot be made of, if there is anything. */
    private static void refuse(Consumer<TypedFields> check) throws FormRefusal {
        List<String> wrong = new ArrayList<>();
        check.accept(
                new TypedFields(
                        new TypedFields.Trouble() {
                            @Override
                            public void wrong(String field, int place, String message) {
                                wrong.add(message);
                            }

                            @Override
                            public void missing(String field, String what, String example) {
                                wrong.add("expected %s, such as %s".formatted(what, example));
                            }
                        }));
        if (!wrong.isEmpty()) {
            throw new FormRefusal(422, String.join("; ", wrong));
        }
    }

    private static String word(String key) {
        return AnswerJson.word("sys-" + key);
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }

    private static String amps(double amps) {
        return SizingText.figures(amps) + " A";
    }

    private static String hours(double ampHours) {
        return SizingText.figures(ampHours) + " Ah";
    }

    // ---- Size

    String size() {
        List<List<String>> flows = new ArrayList<>();
        flows.add(List.of(word("a-steady"), amps(sizing.steadyAmps())));
        flows.add(List.of(word("a-peak"), amps(sizing.peakAmps())));
        flows.add(List.of(word("a-per-day"), hours(sizing.ampHoursPerDay())));
        for (OwnLoad load : system.loads()) {
            flows.add(List.of("– " + load.name(), hours(load.ampHoursPerDay())));
        }
        List<List<String>> battery = new ArrayList<>();
        battery.add(List.of(word("a-printed"), hours(system.ampHours())));
        battery.add(
                List.of(
                        word("a-usable"),
                        text(
                                "%s (%.0f %% when coldest, of it %.0f %%)",
                                hours(sizing.usableAmpHours()),
                                sizing.coldPart() * 100,
                                sizing.usualDepth() * 100)));
        if (sizing.fastPart() < 1) {
            battery.add(List.of(word("a-fast"), text("%.0f %%", sizing.fastPart() * 100)));
        }
        battery.add(
                List.of(
                        word("a-days"),
                        Double.isInfinite(sizing.autonomyDays())
                                ? "–"
                                : text("%.1f", sizing.autonomyDays())));
        battery.add(List.of(word("a-needed"), hours(sizing.neededAmpHours())));
        return new AnswerJson(SizingText.answer(sizing), sizing.findings())
                .picture("bars", word("a-bars"), this::bars)
                .table(
                        word("a-shunts"),
                        List.of(
                                word("a-shunt"),
                                word("a-fit"),
                                word("a-drop"),
                                word("a-heat"),
                                word("a-step"),
                                word("a-step-month"),
                                word("a-microvolt"),
                                word("a-microvolt-percent")),
                        sizing.choices().stream().map(this::shuntRow).toList())
                .table(word("a-flows"), List.of(), flows)
                .table(word("a-battery"), List.of(), battery)
                .paragraph(word("a-take"), SizingText.question(sizing))
                .end(read.assumedWith(sizing.assumed()), "");
    }

    private List<String> shuntRow(ShuntChoice each) {
        return List.of(
                each.rating().toString(),
                fit(each),
                text("%.1f mV", each.steadyMillivolts()),
                text("%.2f W", each.steadyWatts()),
                SizingText.figures(each.stepAmps() * 1e3) + " mA",
                hours(each.stepAmpHoursPerMonth()),
                hours(each.microvoltAmpHoursPerMonth()),
                SizingText.figures(each.microvoltPercentPerMonth()) + " %");
    }

    private static String fit(ShuntChoice each) {
        return word("fit-" + each.fit().name().toLowerCase(Locale.ROOT).replace('_', '-'));
    }

    private void bars(JsonGenerator json) throws IOException {
        json.writeArrayFieldStart("bars");
        for (ShuntChoice each : sizing.choices()) {
            json.writeStartObject();
            json.writeStringField("label", each.rating().toString());
            json.writeNumberField("value", each.microvoltPercentPerMonth());
            json.writeStringField(
                    "shown", SizingText.figures(each.microvoltPercentPerMonth()) + " %");
            json.writeStringField("note", fit(each));
            json.writeBooleanField("chosen", each.rating().equals(sizing.chosen()));
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    // ---- The month ahead

    String month() throws FormRefusal {
        MonthAheadResult result = MonthAhead.of(system, read.gauge(), shunt());
        List<List<String>> rows = new ArrayList<>();
        for (Drift each : result.drifts()) {
            double perDay = each.ampHoursPerDay() / system.ampHours() * 100;
            String sign = each.isEitherWay() ? "±" : "+";
            rows.add(drift(each.cause().words(), sign, perDay));
        }
        rows.add(drift(word("a-too-high"), "+", result.tooHighPerDay()));
        rows.add(drift(word("a-either-way"), "±", result.eitherWayPerDay()));
        String decides = AheadText.decides(result);
        AnswerJson answer =
                new AnswerJson(
                        AheadText.answer(result), decides.isEmpty() ? List.of() : List.of(decides));
        if (!result.course().isEmpty()) {
            answer.picture("month", word("a-month"), it -> course(it, result));
        }
        return answer.table(
                        word("a-drifts"),
                        List.of(word("a-cause"), word("a-day"), word("a-month-30")),
                        rows)
                .paragraph(word("a-run"), AheadText.run(result))
                .list(word("a-find-out"), result.findOut())
                .end(read.assumedWith(result.assumed()), result.scenario());
    }

    private static List<String> drift(String cause, String sign, double perDay) {
        return List.of(
                cause,
                sign + text("%.2f %%", perDay),
                sign + text("%.1f %%", perDay * DAYS_A_MONTH));
    }

    private static void course(JsonGenerator json, MonthAheadResult result) throws IOException {
        json.writeNumberField("chargeByDay", result.daysWithinTen());
        json.writeNumberField("tooHighPerDay", result.tooHighPerDay());
        json.writeNumberField("eitherWayPerDay", result.eitherWayPerDay());
        json.writeArrayFieldStart("points");
        for (int i = 0; i < result.course().size(); i += PICTURE_HOURS) {
            Course.Hour hour = result.course().get(i);
            json.writeStartArray();
            json.writeNumber(hour.atMillis() / 86_400_000.0);
            percent(json, hour.truth());
            percent(json, hour.own());
            json.writeEndArray();
        }
        json.writeEndArray();
    }

    /** A figure that a gauge does not show is a gap. */
    private static void percent(JsonGenerator json, long parts) throws IOException {
        if (parts < -1_000_000) {
            json.writeNull();
        } else {
            json.writeNumber(StrictMath.rint(parts / 1e3) / 10);
        }
    }

    // ---- Settings

    String audit() throws FormRefusal {
        OwnAudit.Result audit = OwnAudit.of(system, read.gauge(), read.settings(), shunt());
        List<AnswerJson.Step> steps = new ArrayList<>();
        for (Finding each : audit.result().findings()) {
            List<List<String>> lines = new ArrayList<>();
            for (Map.Entry<String, String> move : remedies(each).entrySet()) {
                String label = lines.isEmpty() ? word("a-remedy") : "";
                lines.add(List.of(label, move.getKey(), move.getValue()));
            }
            lines.add(List.of(word("a-evidence"), each.evidence()));
            lines.add(List.of(word("a-consequence"), each.consequence()));
            lines.add(List.of(word("a-sure"), each.confidence().words()));
            steps.add(new AnswerJson.Step(word("f-" + each.key()), lines));
        }
        AnswerJson answer =
                new AnswerJson(AuditText.answer(steps.size(), audit.told()), List.of())
                        .steps(word("a-findings"), steps)
                        .paragraph(word("a-in-run"), audit.result().summary());
        OwnAudit.Told told = audit.told();
        if (told != null) {
            answer.table(word("a-beside"), List.of(), AuditText.beside(audit.result(), told))
                    .list(word("a-no-setting"), told.noSettingCures())
                    .list(word("a-gauge"), told.gauge());
        }
        return answer.end(read.assumedWith(audit.assumed()), audit.text());
    }

    private static Map<String, String> remedies(Finding finding) {
        Map<String, String> found = new LinkedHashMap<>();
        for (String line : finding.remedy()) {
            int colon = line.indexOf(": ");
            String key = SETTING_WORDS.get(line.substring(0, colon));
            if (key != null) {
                found.put(word(key), line.substring(colon + 2).replace(" @ 20 h", ""));
            }
        }
        return found;
    }

    // ---- Something looks wrong

    String symptom() throws FormRefusal {
        return SymptomAnswer.of(read, shunt());
    }

    // ---- What changed

    String changed() throws FormRefusal {
        OwnChange change = Objects.requireNonNull(read.change());
        ShuntRating shunt = shunt();
        refuse(fields -> TrialLimits.check(system, change, "changed-amount", fields));
        ChangesResult result = Changes.of(system, read.gauge(), shunt, change);
        List<List<String>> figures = new ArrayList<>();
        for (ChangesResult.Figure each : result.figures()) {
            figures.add(List.of(each.words(), ChangesText.value(each)));
        }
        List<String> all = new ArrayList<>(read.changeAssumed());
        all.addAll(result.assumed());
        return new AnswerJson(result.answer(), List.of())
                .steps(
                        word("a-redo"),
                        result.redo().stream()
                                .map(each -> new AnswerJson.Step(each, List.of()))
                                .toList())
                .table(word("a-until"), List.of(), figures)
                .end(read.assumedWith(all), result.scenario());
    }

    // ---- The sheet

    String sheet(MySystem form) throws FormRefusal {
        shunt();
        Long microvolts = read.settings().chargerMicrovolts();
        String name = form.text(FormField.NAME);
        SheetDetails details =
                new SheetDetails(
                        name == null ? "" : name,
                        form.chargers().stream()
                                .filter(each -> !each.equals(MySystem.Charger.NOTHING))
                                .limit(MOST_DRAWN)
                                .map(Answers::source)
                                .toList(),
                        microvolts == null ? null : microvolts / 1e6,
                        !"no".equals(form.text(FormField.EARTH)));
        return SystemSheet.html(system, read.gauge(), details, version());
    }

    private static WiringPlan.Source source(MySystem.Charger charger) {
        return switch (charger.source()) {
            case "sun" -> WiringPlan.Source.SOLAR;
            case "mains" -> WiringPlan.Source.MAINS;
            default -> WiringPlan.Source.OTHER;
        };
    }

    private static String version() {
        String stated = Answers.class.getPackage().getImplementationVersion();
        return stated == null ? "not packaged" : stated;
    }
}
