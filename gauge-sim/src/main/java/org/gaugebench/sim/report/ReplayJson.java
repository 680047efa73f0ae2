package org.gaugebench.sim.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import org.gaugebench.sim.rig.ReplayResult;

/** The report of a replay for programs: one object. Figures that do not exist are null. */
public final class ReplayJson {
    /** Of the object's layout. */
    public static final int FORMAT_VERSION = 1;

    private static final int DECIMALS = 9;

    private ReplayJson() {}

    /** Writes the object on one line, with its end. */
    public static String of(ReplayOutcome outcome, String version) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            json.writeStartObject();
            JsonHead.write(json, "replay", FORMAT_VERSION, version);
            figures(json, outcome);
            sign(json, outcome);
            json.writeObjectFieldStart("assumed");
            for (ReplayOutcome.Assumption a : outcome.assumed()) {
                json.writeStringField(a.key(), a.value());
            }
            json.writeEndObject();
            json.writeArrayFieldStart("defaults");
            for (ReplayOutcome.Assumption a : outcome.assumed()) {
                if (a.isDefault()) {
                    json.writeString(a.key());
                }
            }
            json.writeEndArray();
            json.writeArrayFieldStart("notes");
            for (String note : outcome.notes()) {
                json.writeString(note);
            }
            json.writeEndArray();
            json.writeEndObject();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text + "\n";
    }

    private static void figures(JsonGenerator json, ReplayOutcome outcome) throws IOException {
        ReplayResult result = outcome.result();
        boolean compared = outcome.log().hasCounter();
        double difference = compared ? outcome.differenceAmpHours() : Double.NaN;
        double fromIntegral = result.countedAmpHours() - result.integralAmpHours();
        json.writeStringField("log", outcome.log().file());
        json.writeNumberField("rows", outcome.log().rows());
        number(json, "seconds", result.seconds());
        json.writeNumberField("ticks", result.ticks());
        number(json, "countedAh", result.countedAmpHours());
        number(json, "countedInAh", result.inAmpHours());
        number(json, "countedOutAh", result.outAmpHours());
        number(json, "counterAh", compared ? outcome.log().counterMovedAmpHours() : Double.NaN);
        number(json, "throughputAh", result.throughputAmpHours());
        number(json, "differenceAh", difference);
        number(json, "differencePercentOfThroughput", result.percentOfThroughput(difference));
        number(json, "integralAh", result.integralAmpHours());
        number(
                json,
                "integralDifferencePercentOfThroughput",
                result.percentOfThroughput(fromIntegral));
        number(json, "socPercent", result.stateOfChargePartsPerMillion() / 1e4);
        json.writeNumberField("clippedTicks", result.clippedTicks());
        json.writeStringField("digest", String.format("%016x", result.digest()));
    }

    private static void sign(JsonGenerator json, ReplayOutcome outcome) throws IOException {
        String answer = outcome.sign().answer().name();
        json.writeObjectFieldStart("sign");
        json.writeStringField("answer", answer.toLowerCase(Locale.ROOT).replace('_', '-'));
        number(json, "score", outcome.sign().score());
        number(json, "steps", outcome.sign().steps());
        json.writeEndObject();
    }

    private static void number(JsonGenerator json, String name, double value) throws IOException {
        if (Double.isFinite(value)) {
            BigDecimal rounded =
                    new BigDecimal(value)
                            .setScale(DECIMALS, RoundingMode.HALF_EVEN)
                            .stripTrailingZeros();
            json.writeFieldName(name);
            json.writeNumber(rounded.toPlainString());
        } else {
            json.writeNullField(name);
        }
    }
}
