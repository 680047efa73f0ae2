package org.gaugebench.sim.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import org.gaugebench.sim.scenario.ScenarioWriter;
import org.gaugebench.sim.tune.CaseScore;
import org.gaugebench.sim.tune.TuneCase;
import org.gaugebench.sim.tune.TuneReason;
import org.gaugebench.sim.tune.TuneResult;
import org.gaugebench.sim.tune.TuneScore;
import org.gaugebench.sim.tune.TuneTask;
import org.gaugebench.sim.tune.TuneUnmet;
import org.gaugebench.sim.tune.TunedSetting;
import org.jspecify.annotations.Nullable;

/** A search of settings for programs: one object. */
public final class TuneJson {
    /** Of the object's layout. */
    public static final int FORMAT_VERSION = 1;

    private final TuneResult result;
    private final JsonGenerator json;

    private TuneJson(TuneResult result, JsonGenerator json) {
        this.result = result;
        this.json = json;
    }

    /** Writes the object, with a line end. */
    public static String of(TuneResult result, String version) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            new TuneJson(result, json).write(version);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text + "\n";
    }

    private void write(String version) throws IOException {
        TuneTask task = result.task();
        json.writeStartObject();
        JsonHead.write(json, "tune", FORMAT_VERSION, version);
        json.writeBooleanField("met", result.isGood());
        json.writeStringField("answer", TuneWords.answer(result));
        json.writeStringField("chemistry", task.chemistry().key());
        json.writeNumberField("nominalVolts", task.nominalVolts());
        json.writeNumberField("falseBelowPartsPerMillion", task.definition().falseBelowParts());
        json.writeNumberField("fullForMinutes", task.definition().heldMinutes());
        json.writeNumberField("seed", task.seed());
        json.writeStringField("seeds", task.seeds().first() + ".." + task.seeds().last());
        json.writeStringField(
                "holdoutSeeds", task.otherSeeds().first() + ".." + task.otherSeeds().last());
        json.writeNumberField("tried", result.tried().size());
        json.writeNumberField("runs", result.runs());
        settings();
        scores("search", result.loosest(), result.preset(), result.chosen());
        scores("holdout", result.otherLoosest(), result.otherPreset(), result.otherChosen());
        list("frontier", result.frontier());
        list("everythingTried", result.tried());
        cases();
        unmet();
        json.writeArrayFieldStart("leftOut");
        for (TuneTask.Skipped each : task.skipped()) {
            json.writeStartObject();
            json.writeStringField("scenario", each.name());
            json.writeStringField("reason", each.reason());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private void settings() throws IOException {
        json.writeArrayFieldStart("settings");
        for (TuneReason reason : result.reasons()) {
            TunedSetting it = reason.setting();
            json.writeStartObject();
            json.writeStringField("key", it.setting().key());
            json.writeStringField("chosen", TuneWords.value(it, reason.value()));
            json.writeStringField("preset", TuneWords.value(it, it.preset()));
            json.writeStringField("loosest", TuneWords.value(it, it.loosest()));
            json.writeStringField("lowest", TuneWords.value(it, it.lowest()));
            json.writeStringField("lowestBecause", it.lowerReason());
            json.writeStringField("highest", TuneWords.value(it, it.highest()));
            json.writeStringField("highestBecause", it.upperReason());
            json.writeArrayFieldStart("because");
            for (String words : TuneWords.reasons(result, reason)) {
                json.writeString(words);
            }
            json.writeEndArray();
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void scores(String name, TuneScore loosest, TuneScore preset, TuneScore chosen)
            throws IOException {
        json.writeObjectFieldStart(name);
        json.writeFieldName("loosest");
        score(loosest);
        json.writeFieldName("preset");
        score(preset);
        json.writeFieldName("chosen");
        score(chosen);
        json.writeEndObject();
    }

    private void list(String name, List<TuneScore> scores) throws IOException {
        json.writeArrayFieldStart(name);
        for (TuneScore each : scores) {
            score(each);
        }
        json.writeEndArray();
    }

    private void score(TuneScore score) throws IOException {
        json.writeStartObject();
        json.writeNumberField("false", score.falseFulls());
        json.writeNumberField("missed", score.missedFulls());
        json.writeNumberField("meanErrorPartsPerMillion", StrictMath.round(score.meanErrorParts()));
        json.writeNumberField("worstErrorPartsPerMillion", score.worstErrorParts());
        json.writeObjectFieldStart("gauge");
        List<TunedSetting> settings = result.task().settings();
        for (int i = 0; i < settings.size(); i++) {
            TunedSetting it = settings.get(i);
            json.writeStringField(
                    it.setting().key(), TuneWords.value(it, score.candidate().value(i)));
        }
        json.writeEndObject();
        json.writeEndObject();
    }

    private void cases() throws IOException {
        json.writeArrayFieldStart("cases");
        for (int i = 0; i < result.task().cases().size(); i++) {
            json.writeStartObject();
            of(result.task().cases().get(i), result.chosen().cases().get(i));
            json.writeEndObject();
        }
        for (int i = 0; i < result.task().others().size(); i++) {
            json.writeStartObject();
            of(result.task().others().get(i), result.otherChosen().cases().get(i));
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void of(TuneCase tried, CaseScore score) throws IOException {
        json.writeStringField("scenario", TuneWords.name(tried.whole()));
        json.writeStringField("digest", ScenarioWriter.digest(tried.whole()));
        json.writeNumberField("seed", tried.seed());
        json.writeNumberField("fulls", score.fulls());
        json.writeNumberField("false", score.falseFulls());
        json.writeNumberField("lowestTruePartsPerMillion", score.lowestTrueParts());
        json.writeNumberField("held", score.heldFulls());
        json.writeNumberField("missed", score.missedFulls());
        json.writeNumberField("meanErrorPartsPerMillion", StrictMath.round(score.meanErrorParts()));
        json.writeNumberField("worstErrorPartsPerMillion", score.worstErrorParts());
    }

    private void unmet() throws IOException {
        json.writeArrayFieldStart("notMet");
        for (TuneUnmet each : result.unmet()) {
            json.writeStartObject();
            of(each.tried(), each.score());
            @Nullable TuneScore better = each.better();
            if (better == null) {
                json.writeNullField("metBy");
            } else {
                json.writeFieldName("metBy");
                score(better);
            }
            json.writeArrayFieldStart("audit");
            for (String found : each.audit()) {
                json.writeString(found);
            }
            json.writeEndArray();
            json.writeEndObject();
        }
        json.writeEndArray();
    }
}
