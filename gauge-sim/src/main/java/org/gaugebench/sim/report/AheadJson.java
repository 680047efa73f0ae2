package org.gaugebench.sim.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import org.gaugebench.core.port.Readout;
import org.gaugebench.sim.advice.Course;
import org.gaugebench.sim.advice.Drift;
import org.gaugebench.sim.advice.MonthAheadResult;
import org.gaugebench.sim.advice.OwnSystem;

/** How long a count can be believed, for programs: one object; figures with six digits. */
public final class AheadJson {
    /** Of the object's layout. */
    public static final int FORMAT_VERSION = 1;

    private static final double HOUR_MILLIS = 3_600_000;
    private static final double PER_PERCENT = 1e4;

    private AheadJson() {}

    /**
     * Writes the object, with a line end.
     *
     * @param system as it was told
     * @param result what came of it
     * @param version of this program
     */
    public static String of(OwnSystem system, MonthAheadResult result, String version) {
        return JsonDocument.of(
                "ahead",
                FORMAT_VERSION,
                version,
                json -> {
                    json.writeStringField("answer", AheadText.answer(result));
                    json.writeNumberField("daysWithinTenPoints", result.daysWithinTen());
                    json.writeNumberField("daysWithinFivePoints", result.daysWithinFive());
                    json.writeNumberField("leastDaysWithinTenPoints", result.leastDaysWithinTen());
                    json.writeNumberField("mostDaysAsked", MonthAheadResult.MOST_DAYS);
                    json.writeBooleanField("fullChargePutsItRight", result.isPutRight());
                    JsonDocument.number(json, "pointsTooHighAtOnce", result.startPoints());
                    JsonDocument.number(json, "pointsTooHighPerDay", result.tooHighPerDay());
                    JsonDocument.number(json, "pointsEitherWayPerDay", result.eitherWayPerDay());
                    json.writeArrayFieldStart("reasons");
                    for (Drift each : result.drifts()) {
                        reason(json, system, each);
                    }
                    json.writeEndArray();
                    json.writeArrayFieldStart("hours");
                    for (Course.Hour each : result.course()) {
                        hour(json, each);
                    }
                    json.writeEndArray();
                    JsonDocument.texts(json, "gauge", result.gauge());
                    JsonDocument.texts(json, "assumed", result.assumed());
                    JsonDocument.texts(json, "findOut", result.findOut());
                    json.writeStringField("scenario", result.scenario());
                });
    }

    private static void reason(JsonGenerator json, OwnSystem system, Drift each)
            throws IOException {
        json.writeStartObject();
        json.writeStringField("what", each.cause().words());
        JsonDocument.number(json, "perDayAh", each.ampHoursPerDay());
        JsonDocument.number(json, "pointsPerDay", each.ampHoursPerDay() / system.ampHours() * 100);
        json.writeBooleanField("eitherWay", each.isEitherWay());
        json.writeStringField("remedy", each.cause().remedy());
        json.writeEndObject();
    }

    /** An hour of the run: what is left, what is shown, and what a gauge beside it says. */
    private static void hour(JsonGenerator json, Course.Hour each) throws IOException {
        json.writeStartObject();
        JsonDocument.number(json, "atHour", each.atMillis() / HOUR_MILLIS);
        percent(json, "leftPercent", each.truth());
        percent(json, "shownPercent", each.own());
        percent(json, "besidePercent", each.better());
        boolean isBand = each.betterLow() >= 0;
        percent(json, "besideLowPercent", isBand ? each.betterLow() : Readout.NOT_KNOWN);
        percent(json, "besideHighPercent", isBand ? each.betterHigh() : Readout.NOT_KNOWN);
        json.writeEndObject();
    }

    private static void percent(JsonGenerator json, String name, long partsPerMillion)
            throws IOException {
        JsonDocument.number(
                json,
                name,
                partsPerMillion == Readout.NOT_KNOWN ? Double.NaN : partsPerMillion / PER_PERCENT);
    }
}
