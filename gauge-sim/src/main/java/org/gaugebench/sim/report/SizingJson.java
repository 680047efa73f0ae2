package org.gaugebench.sim.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import org.gaugebench.sim.advice.OwnLoad;
import org.gaugebench.sim.advice.OwnSystem;
import org.gaugebench.sim.advice.ShuntChoice;
import org.gaugebench.sim.advice.SizingResult;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;

/** A sizing for programs: one object; figures with six digits, null where there is none. */
public final class SizingJson {
    /** Of the object's layout. */
    public static final int FORMAT_VERSION = 1;

    private SizingJson() {}

    /** Writes the object, with a line end. */
    public static String of(OwnSystem system, SizingResult result, String version) {
        return JsonDocument.of(
                "size",
                FORMAT_VERSION,
                version,
                json -> {
                    figures(json, system, result);
                    json.writeArrayFieldStart("shunts");
                    for (ShuntChoice each : result.choices()) {
                        shunt(json, each);
                    }
                    json.writeEndArray();
                    JsonDocument.texts(json, "findings", result.findings());
                    JsonDocument.texts(json, "assumed", result.assumed());
                });
    }

    private static void figures(JsonGenerator json, OwnSystem system, SizingResult result)
            throws IOException {
        JsonDocument.number(json, "steadyA", result.steadyAmps());
        JsonDocument.number(json, "peakA", result.peakAmps());
        JsonDocument.number(json, "perDayAh", result.ampHoursPerDay());
        json.writeObjectFieldStart("loadsPerDayAh");
        for (OwnLoad load : system.loads()) {
            JsonDocument.number(json, load.name(), load.ampHoursPerDay());
        }
        json.writeEndObject();
        rating(json, "proposedShunt", result.proposed());
        rating(json, "chosenShunt", result.chosen());
        JsonDocument.number(json, "printedAh", system.ampHours());
        JsonDocument.number(json, "usableAh", result.usableAmpHours());
        JsonDocument.number(json, "coldPart", result.coldPart());
        JsonDocument.number(json, "usualDepth", result.usualDepth());
        JsonDocument.number(json, "fastPart", result.fastPart());
        JsonDocument.number(json, "autonomyDays", result.autonomyDays());
        JsonDocument.number(json, "neededPrintedAh", result.neededAmpHours());
    }

    private static void shunt(JsonGenerator json, ShuntChoice each) throws IOException {
        json.writeStartObject();
        rating(json, "rating", each.rating());
        json.writeStringField("fit", each.fit().words());
        JsonDocument.number(json, "steadyMillivolts", each.steadyMillivolts());
        JsonDocument.number(json, "steadyWatts", each.steadyWatts());
        JsonDocument.number(json, "stepA", each.stepAmps());
        JsonDocument.number(json, "stepAhPerMonth", each.stepAmpHoursPerMonth());
        JsonDocument.number(json, "microvoltA", each.microvoltAmps());
        JsonDocument.number(json, "microvoltAhPerMonth", each.microvoltAmpHoursPerMonth());
        JsonDocument.number(json, "microvoltPercentPerMonth", each.microvoltPercentPerMonth());
        json.writeEndObject();
    }

    private static void rating(JsonGenerator json, String name, @Nullable ShuntRating rating)
            throws IOException {
        if (rating == null) {
            json.writeNullField(name);
        } else {
            json.writeStringField(name, rating.toString());
        }
    }
}
