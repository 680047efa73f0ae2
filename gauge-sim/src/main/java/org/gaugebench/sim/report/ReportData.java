package org.gaugebench.sim.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Locale;
import org.gaugebench.core.port.RuleReason;
import org.gaugebench.core.port.RuleState;
import org.gaugebench.sim.judge.Attribution;
import org.gaugebench.sim.judge.Attribution.Split;
import org.gaugebench.sim.judge.ExpectationResult;
import org.gaugebench.sim.judge.LaneResult;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.rig.Cause;
import org.jspecify.annotations.Nullable;

/**
 * What the script of a report draws, as one JSON object that cannot end the element it stands in.
 */
final class ReportData {
    /** Characters that all lines together may take: what keeps a year under 1.5 MB. */
    private static final int MOST_CHARACTERS = 1_100_000;

    private static final JsonFactory FACTORY = new JsonFactory();

    private static final String[] TRUE_NAMES = {"state", "current", "voltage", "temperature"};
    private static final String[] NAMES = {
        "state", "lower", "upper", "current", "voltage", "temperature", "hours"
    };

    private final RunResult result;
    private final ReportTrace trace;
    private final JsonGenerator json;

    private ReportData(RunResult result, ReportTrace trace, JsonGenerator json) {
        this.result = result;
        this.trace = trace;
        this.json = json;
    }

    /** Writes the object; the trace has seen the whole run. */
    static String of(
            RunResult result,
            ReportTrace trace,
            List<ReportEvents.Entry> events,
            @Nullable Attribution attribution) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = FACTORY.createGenerator(text)) {
            new ReportData(result, trace, json).write(events, attribution);
        } catch (IOException impossible) {
            throw new UncheckedIOException("a string refused to be written", impossible);
        }
        // JSON has this sign in strings alone; written out, no string ends the element.
        return text.toString().replace("<", "\\u003c");
    }

    private void write(List<ReportEvents.Entry> events, @Nullable Attribution attribution)
            throws IOException {
        json.writeStartObject();
        json.writeNumberField("durationMillis", result.simulatedMillis());
        json.writeNumberField("tickMillis", result.scenario().tickMillis());
        json.writeArrayFieldStart("gauges");
        for (int i = 0; i < trace.gauges(); i++) {
            LaneResult lane = result.lanes().get(i);
            json.writeString(lane.gauge());
        }
        json.writeEndArray();
        lines();
        rules();
        json.writeArrayFieldStart("starved");
        for (ReportStarved.Span span : trace.starved().spans()) {
            json.writeNumber(span.fromMillis());
            json.writeNumber(span.toMillis());
        }
        json.writeEndArray();
        json.writeArrayFieldStart("events");
        for (ReportEvents.Entry entry : events) {
            json.writeStartArray();
            json.writeNumber(entry.number());
            for (long moment : entry.marked()) {
                json.writeNumber(moment);
            }
            json.writeEndArray();
        }
        json.writeEndArray();
        json.writeArrayFieldStart("failures");
        for (ExpectationResult each : result.expectations()) {
            if (!each.outcome().isGood() && each.atMillis() >= 0) {
                json.writeNumber(each.atMillis());
            }
        }
        json.writeEndArray();
        if (attribution != null) {
            attribution(attribution);
        }
        json.writeEndObject();
    }

    /** As much of the windows as fits: their reach shrinks until all lines do. */
    private void lines() throws IOException {
        int reach = trace.windows().reachFor();
        ReportBytes.Line[] lines = lines(reach);
        while (length(lines) > MOST_CHARACTERS && reach > 1) {
            reach = reach / 2;
            lines = lines(reach);
        }
        json.writeNumberField("windowTicks", reach);
        json.writeObjectFieldStart("truth");
        for (int i = 0; i < TRUE_NAMES.length; i++) {
            line(TRUE_NAMES[i], lines[i]);
        }
        json.writeEndObject();
        json.writeArrayFieldStart("readings");
        for (int gauge = 0; gauge < trace.gauges(); gauge++) {
            json.writeStartObject();
            for (int i = 0; i < NAMES.length; i++) {
                line(NAMES[i], lines[ReportTrace.column(gauge, i)]);
            }
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private ReportBytes.Line[] lines(int reach) {
        ReportBytes.Line[] lines = new ReportBytes.Line[trace.columns()];
        int[] rows = trace.windows().rowsWithin(reach);
        for (int i = 0; i < lines.length; i++) {
            lines[i] = ReportBytes.of(trace, i, rows);
        }
        return lines;
    }

    private static long length(ReportBytes.Line[] lines) {
        long length = 0;
        for (ReportBytes.Line line : lines) {
            length += line.text().length();
        }
        return length;
    }

    private void line(String name, ReportBytes.Line line) throws IOException {
        json.writeObjectFieldStart(name);
        json.writeNumberField("step", line.step());
        json.writeStringField("points", line.text());
        json.writeEndObject();
    }

    private void rules() throws IOException {
        json.writeArrayFieldStart("rules");
        for (int i = 0; i < trace.gauges(); i++) {
            json.writeString(trace.hasRule(i) ? ReportBytes.of(trace.rule(i)).text() : "");
        }
        json.writeEndArray();
        json.writeNumberField("ruleReasonCount", ReportStates.REASONS);
        json.writeArrayFieldStart("ruleStates");
        for (RuleState state : RuleState.values()) {
            json.writeString(words(state));
        }
        json.writeEndArray();
        json.writeArrayFieldStart("ruleReasons");
        for (RuleReason reason : RuleReason.values()) {
            json.writeString(reason.sentence());
        }
        json.writeEndArray();
    }

    /** A state as reports say it: "not armed". */
    static String words(RuleState state) {
        return state.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    /** Parts in microampere-hours: finer than any picture. */
    private void attribution(Attribution attribution) throws IOException {
        json.writeObjectFieldStart("attribution");
        json.writeArrayFieldStart("causes");
        for (Cause cause : Attribution.PLAIN) {
            json.writeString(cause.words());
        }
        json.writeString("everything else");
        json.writeEndArray();
        json.writeArrayFieldStart("moments");
        for (Split split : attribution.splits()) {
            json.writeStartArray();
            json.writeNumber(split.atMillis());
            if (split.known()) {
                for (Cause cause : Attribution.PLAIN) {
                    json.writeNumber(microampHours(split.nanocoulombs(cause)));
                }
                json.writeNumber(microampHours(split.elseNanocoulombs()));
                json.writeNumber(microampHours(split.errorNanocoulombs()));
            }
            json.writeEndArray();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static long microampHours(long nanocoulombs) {
        return StrictMath.round(nanocoulombs / 3.6e6);
    }
}
