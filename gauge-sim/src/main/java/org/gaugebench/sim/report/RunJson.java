package org.gaugebench.sim.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import org.gaugebench.core.port.Fault;
import org.gaugebench.core.port.Readout;
import org.gaugebench.sim.judge.Attribution;
import org.gaugebench.sim.judge.ExpectationResult;
import org.gaugebench.sim.judge.LaneResult;
import org.gaugebench.sim.judge.RecordedEvent;
import org.gaugebench.sim.judge.RefusedCommand;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.judge.TestedProgram;
import org.gaugebench.sim.scenario.Marks;
import org.gaugebench.sim.scenario.ScenarioWriter;
import org.jspecify.annotations.Nullable;

/**
 * A run as one JSON object on one line, for programs. {@code formatVersion} grows when a key
 * changes its meaning or goes; new keys may come without it.
 *
 * <p>Units stand at the end of each key. A figure that is not known is {@code null}, never 0.
 */
public final class RunJson {
    /** Version of the object's shape. */
    public static final int FORMAT_VERSION = 1;

    private static final JsonFactory FACTORY = new JsonFactory();
    private static final int PERCENT_DIGITS = 4;
    private static final int AMP_HOUR_DIGITS = 6;
    private static final int SECOND_DIGITS = 3;

    private final RunResult result;
    private final @Nullable Attribution attribution;
    private final JsonGenerator json;

    private RunJson(RunResult result, @Nullable Attribution attribution, JsonGenerator json) {
        this.result = result;
        this.attribution = attribution;
        this.json = json;
    }

    /**
     * Writes the object.
     *
     * @param result what came of the run
     * @param version of this program
     * @return one line without its line end
     */
    public static String of(RunResult result, String version) {
        return of(result, null, version);
    }

    /** The same with the error split by cause; null for without. */
    static String of(RunResult result, @Nullable Attribution attribution, String version) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = FACTORY.createGenerator(text)) {
            new RunJson(result, attribution, json).write(version);
        } catch (IOException impossible) {
            throw new UncheckedIOException("a string refused to be written", impossible);
        }
        return text.toString();
    }

    /** A digest as reports print it: 16 hex digits. */
    public static String hex(long digest) {
        String digits = Long.toHexString(digest);
        return "0".repeat(Long.BYTES * 2 - digits.length()) + digits;
    }

    private void write(String version) throws IOException {
        json.writeStartObject();
        JsonHead.write(json, "run", FORMAT_VERSION, version);
        json.writeStringField("scenario", result.scenario().file());
        json.writeStringField("variant", result.scenario().variant());
        json.writeStringField("title", result.scenario().title());
        marks(result.scenario().marks());
        json.writeStringField("scenarioDigest", ScenarioWriter.digest(result.scenario()));
        json.writeNumberField("seed", result.seed());
        json.writeNumberField("ticks", result.ticks());
        TestedProgram program = result.program();
        if (program != null) {
            json.writeObjectFieldStart("program");
            json.writeStringField("gauge", program.gauge());
            json.writeStringField("name", program.name());
            json.writeStringField("command", program.command());
            json.writeEndObject();
        }
        decimal("simulatedSeconds", result.simulatedMillis(), SECOND_DIGITS);
        json.writeStringField("digest", hex(result.digest()));
        json.writeStringField("verdict", result.verdict().words());
        expectations();
        events();
        gauge(result.lanes().get(0));
        json.writeArrayFieldStart("gauges");
        for (LaneResult lane : result.lanes()) {
            json.writeStartObject();
            json.writeStringField("gauge", lane.gauge());
            gauge(lane);
            json.writeEndObject();
        }
        json.writeEndArray();
        if (attribution != null) {
            AttributionJson.write(attribution, json);
        }
        json.writeEndObject();
    }

    private void marks(Marks marks) throws IOException {
        words("tags", marks.tags());
        words("covers", marks.covers());
        json.writeStringField("symptom", marks.symptom());
    }

    private void words(String key, List<String> words) throws IOException {
        json.writeArrayFieldStart(key);
        for (String word : words) {
            json.writeString(word);
        }
        json.writeEndArray();
    }

    private void expectations() throws IOException {
        json.writeArrayFieldStart("expectations");
        for (ExpectationResult each : result.expectations()) {
            json.writeStartObject();
            json.writeStringField("text", each.expectation().text());
            json.writeStringField("gauge", each.expectation().gauge());
            json.writeStringField("outcome", each.outcome().words());
            secondsOrNull("atSeconds", each.atMillis());
            json.writeStringField("found", each.found());
            json.writeStringField("detail", each.detail());
            json.writeStringField("because", each.expectation().because());
            json.writeStringField("expectedToFail", each.expectation().expectedToFail());
            json.writeStringField("mark", each.expectation().mark().toString());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void events() throws IOException {
        json.writeArrayFieldStart("events");
        for (RecordedEvent event : result.events()) {
            json.writeStartObject();
            decimal("atSeconds", event.atMillis(), SECOND_DIGITS);
            json.writeStringField("gauge", event.gauge());
            json.writeStringField("event", event.event().name());
            json.writeStringField("sentence", event.event().sentence());
            json.writeNumberField("value", event.value());
            json.writeStringField("unit", event.event().unit());
            Fault fault = EventFigure.faultOf(event);
            if (fault != null) {
                json.writeStringField("fault", fault.name());
                json.writeStringField("faultSentence", fault.sentence());
            }
            percentOrNull("socPercent", event.shownPartsPerMillion());
            decimal("trueSocPercent", event.truePartsPerMillion(), PERCENT_DIGITS);
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeNumberField("eventsDropped", result.eventsDropped());
        json.writeArrayFieldStart("refusedCommands");
        for (RefusedCommand each : result.refused()) {
            json.writeStartObject();
            decimal("atSeconds", each.atMillis(), SECOND_DIGITS);
            json.writeStringField("gauge", each.gauge());
            json.writeStringField("command", each.commandWords());
            json.writeStringField("outcome", each.outcome().name());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void gauge(LaneResult lane) throws IOException {
        json.writeObjectFieldStart("final");
        percentOrNull("socPercent", lane.finalPartsPerMillion());
        decimal("trueSocPercent", result.finalTruePartsPerMillion(), PERCENT_DIGITS);
        if (lane.finalPartsPerMillion() == Readout.NOT_KNOWN) {
            json.writeNullField("chargeAh");
        } else {
            decimal("chargeAh", lane.finalMicroampHours(), AMP_HOUR_DIGITS);
        }
        decimal("trueChargeAh", result.finalTrueMicroampHours(), AMP_HOUR_DIGITS);
        percentOrNull("lowerEdgePercent", lane.belief().lowerPartsPerMillion());
        percentOrNull("upperEdgePercent", lane.belief().upperPartsPerMillion());
        json.writeStringField("trust", lane.belief().trust().name());
        json.writeStringField("trustReason", lane.belief().reason().name());
        json.writeArrayFieldStart("faults");
        for (Fault fault : lane.belief().faults()) {
            json.writeString(fault.name());
        }
        json.writeEndArray();
        json.writeEndObject();
        json.writeObjectFieldStart("worst");
        if (lane.worstAtMillis() < 0) {
            json.writeNullField("socErrorPercent");
        } else {
            decimal("socErrorPercent", lane.worstErrorPartsPerMillion(), PERCENT_DIGITS);
        }
        secondsOrNull("atSeconds", lane.worstAtMillis());
        json.writeEndObject();
    }

    private void percentOrNull(String key, long partsPerMillion) throws IOException {
        // A count that nothing stops may be below empty: only one figure means "not known".
        if (partsPerMillion == Readout.NOT_KNOWN) {
            json.writeNullField(key);
        } else {
            decimal(key, partsPerMillion, PERCENT_DIGITS);
        }
    }

    private void secondsOrNull(String key, long millis) throws IOException {
        if (millis < 0) {
            json.writeNullField(key);
        } else {
            decimal(key, millis, SECOND_DIGITS);
        }
    }

    private void decimal(String key, long value, int digits) throws IOException {
        json.writeFieldName(key);
        json.writeNumber(Decimals.plain(value, digits));
    }
}
