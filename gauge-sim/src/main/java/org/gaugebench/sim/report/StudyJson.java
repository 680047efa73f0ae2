package org.gaugebench.sim.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Locale;
import org.gaugebench.sim.scenario.StudySpec;
import org.gaugebench.sim.scenario.Tolerance;
import org.gaugebench.sim.study.CaseResult;
import org.gaugebench.sim.study.Cause;
import org.gaugebench.sim.study.CoverageInterval;
import org.gaugebench.sim.study.DeviceDraws;
import org.gaugebench.sim.study.DeviceRow;
import org.gaugebench.sim.study.Distribution;
import org.gaugebench.sim.study.Moment;
import org.gaugebench.sim.study.StudyResult;

/**
 * A study as one JSON object on one line, for programs: errors in steps of {@code errorUnit}, with
 * three places; what is not known is {@code null}.
 */
public final class StudyJson {
    /** Version of the object's shape. */
    public static final int FORMAT_VERSION = 1;

    private final StudyResult result;
    private final JsonGenerator json;

    private StudyJson(StudyResult result, JsonGenerator json) {
        this.result = result;
        this.json = json;
    }

    /**
     * Writes the object.
     *
     * @param version of this program
     * @return one line without its line end
     */
    public static String of(StudyResult result, String version) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            new StudyJson(result, json).write(version);
        } catch (IOException e) {
            throw new UncheckedIOException("a text cannot fail", e);
        }
        return text.toString();
    }

    private void write(String version) throws IOException {
        StudySpec spec = result.spec();
        json.writeStartObject();
        JsonHead.write(json, "study", FORMAT_VERSION, version);
        json.writeStringField("program", "gauge-sim " + version);
        json.writeStringField("study", spec.file());
        json.writeStringField("title", spec.title());
        json.writeStringField("digest", spec.digest());
        json.writeNumberField("seed", spec.seed());
        json.writeStringField("reading", spec.reading().key());
        json.writeStringField("gauge", spec.gauge());
        json.writeStringField("errorUnit", word(spec.unit()));
        json.writeNumberField("coveragePartsPerMillion", spec.coveragePartsPerMillion());
        json.writeArrayFieldStart("tolerances");
        for (Tolerance each : spec.tolerances()) {
            Distribution it = DeviceDraws.distribution(each);
            json.writeStartObject();
            json.writeStringField("address", each.address());
            json.writeStringField("unit", word(each.unit()));
            json.writeStringField("shape", each.kind().key());
            number("mean", it.mean());
            number("standardUncertainty", it.standardUncertainty());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayFieldStart("cases");
        for (CaseResult each : result.cases()) {
            write(each);
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static String word(Enum<?> word) {
        return word.name().toLowerCase(Locale.ROOT);
    }

    private void write(CaseResult each) throws IOException {
        json.writeStartObject();
        json.writeStringField("case", each.name());
        json.writeStringField("answer", word(result.answer(each)));
        json.writeNumberField("devices", each.rows().size());
        json.writeNumberField("devicesInside", each.inside().inside());
        json.writeNumberField("blockDevices", each.block());
        number("numericalTolerance", each.tolerance());
        number("limitsKnownTo", each.knownTo());
        json.writeBooleanField("stable", each.isStable());
        DeviceRow worst = each.worst();
        if (worst == null) {
            json.writeNullField("worst");
        } else {
            json.writeObjectFieldStart("worst");
            json.writeNumberField("device", worst.number());
            json.writeNumberField("seed", DeviceDraws.seed(result.spec(), worst.number()));
            json.writeNumberField("error", worst.worst());
            json.writeNumberField("atMillis", worst.worstAtMillis());
            json.writeEndObject();
        }
        json.writeArrayFieldStart("causes");
        int last = each.moments().size() - 1;
        for (Cause cause : each.causes()) {
            json.writeStartObject();
            json.writeStringField("cause", cause.name());
            number("oneStandardUncertaintyDoes", cause.part());
            number("firstOrderShare", cause.firstShare()[last]);
            number("drawnShare", cause.drawnShare()[last]);
            number("errorAtLowerEnd", cause.atLower());
            number("errorAtUpperEnd", cause.atUpper());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayFieldStart("moments");
        for (Moment moment : each.moments()) {
            write(moment);
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private void write(Moment moment) throws IOException {
        json.writeStartObject();
        json.writeNumberField("atMillis", moment.atMillis());
        json.writeNumberField("devicesThatKnow", moment.sample().count());
        number("mean", moment.sample().mean());
        number("standardUncertainty", moment.sample().standardUncertainty());
        interval("limits", moment.limits());
        number("median", moment.percentiles()[Moment.MEDIAN]);
        number("smallest", moment.percentiles()[Moment.SMALLEST]);
        number("largest", moment.percentiles()[Moment.LARGEST]);
        number("firstOrderMean", moment.estimate());
        number("firstOrderUncertainty", moment.uncertainty());
        interval("firstOrderLimits", moment.firstLimits());
        json.writeStringField("firstOrderLimitsAre", word(moment.validation().answer()));
        json.writeEndObject();
    }

    private void interval(String name, CoverageInterval it) throws IOException {
        json.writeArrayFieldStart(name);
        element(it.lower());
        element(it.upper());
        json.writeEndArray();
    }

    private void element(double value) throws IOException {
        String plain = StudyFigures.plain(value);
        if (plain.isEmpty()) {
            json.writeNull();
        } else {
            json.writeNumber(new java.math.BigDecimal(plain));
        }
    }

    private void number(String name, double value) throws IOException {
        json.writeFieldName(name);
        element(value);
    }
}
