package org.gaugebench.sim.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
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

    private static final MathContext DIGITS = new MathContext(6);

    private SizingJson() {}

    /** Writes the object, with a line end. */
    public static String of(OwnSystem system, SizingResult result, String version) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            json.useDefaultPrettyPrinter();
            json.writeStartObject();
            json.writeNumberField("formatVersion", FORMAT_VERSION);
            json.writeStringField("version", version);
            figures(json, system, result);
            json.writeArrayFieldStart("shunts");
            for (ShuntChoice each : result.choices()) {
                shunt(json, each);
            }
            json.writeEndArray();
            texts(json, "findings", result.findings());
            texts(json, "assumed", result.assumed());
            texts(json, "cautions", List.of(Cautions.DEFER, Cautions.NO_PROTECTION));
            json.writeEndObject();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text + "\n";
    }

    private static void figures(JsonGenerator json, OwnSystem system, SizingResult result)
            throws IOException {
        number(json, "steadyA", result.steadyAmps());
        number(json, "peakA", result.peakAmps());
        number(json, "perDayAh", result.ampHoursPerDay());
        json.writeObjectFieldStart("loadsPerDayAh");
        for (OwnLoad load : system.loads()) {
            number(json, load.name(), load.ampHoursPerDay());
        }
        json.writeEndObject();
        rating(json, "proposedShunt", result.proposed());
        rating(json, "chosenShunt", result.chosen());
        number(json, "printedAh", system.ampHours());
        number(json, "usableAh", result.usableAmpHours());
        number(json, "coldPart", result.coldPart());
        number(json, "usualDepth", result.usualDepth());
        number(json, "fastPart", result.fastPart());
        number(json, "autonomyDays", result.autonomyDays());
        number(json, "neededPrintedAh", result.neededAmpHours());
    }

    private static void shunt(JsonGenerator json, ShuntChoice each) throws IOException {
        json.writeStartObject();
        rating(json, "rating", each.rating());
        json.writeStringField("fit", each.fit().words());
        number(json, "steadyMillivolts", each.steadyMillivolts());
        number(json, "steadyWatts", each.steadyWatts());
        number(json, "stepA", each.stepAmps());
        number(json, "stepAhPerMonth", each.stepAmpHoursPerMonth());
        number(json, "microvoltA", each.microvoltAmps());
        number(json, "microvoltAhPerMonth", each.microvoltAmpHoursPerMonth());
        number(json, "microvoltPercentPerMonth", each.microvoltPercentPerMonth());
        json.writeEndObject();
    }

    private static void texts(JsonGenerator json, String name, List<String> texts)
            throws IOException {
        json.writeArrayFieldStart(name);
        for (String text : texts) {
            json.writeString(text);
        }
        json.writeEndArray();
    }

    private static void rating(JsonGenerator json, String name, @Nullable ShuntRating rating)
            throws IOException {
        if (rating == null) {
            json.writeNullField(name);
        } else {
            json.writeStringField(name, rating.toString());
        }
    }

    private static void number(JsonGenerator json, String name, double value) throws IOException {
        if (Double.isFinite(value)) {
            json.writeNumberField(name, new BigDecimal(value).round(DIGITS));
        } else {
            json.writeNullField(name);
        }
    }
}
