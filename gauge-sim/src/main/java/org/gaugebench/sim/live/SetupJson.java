package org.gaugebench.sim.live;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import org.gaugebench.sim.live.Player.View;
import org.gaugebench.sim.scenario.GaugeSpec;
import org.gaugebench.sim.scenario.Mistake;
import org.gaugebench.sim.scenario.Scenario;

/** What stays as it is during a run, as the page gets it: the system and what can be moved. */
final class SetupJson {
    private SetupJson() {}

    /** All of it. */
    static String of(View view) {
        Bench bench = view.bench();
        Scenario scenario = bench.scenario();
        return Json.object(
                json -> {
                    json.writeNumberField("run", view.runs());
                    json.writeStringField("file", scenario.name());
                    json.writeStringField("title", scenario.title());
                    json.writeStringField("about", scenario.about());
                    json.writeNumberField("tickMillis", scenario.tickMillis());
                    json.writeNumberField("ampHours", bench.rig().truth().capacityAmpHours());
                    gauges(json, scenario);
                    json.writeNumberField("lesson", bench.lesson());
                    strip(json, bench);
                    controls(json, bench.board());
                    json.writeArrayFieldStart("levels");
                    for (int level = 0; level < History.levels(); level++) {
                        json.writeNumber(History.widthMillis(level) * History.BUCKETS);
                    }
                    json.writeEndArray();
                });
    }

    private static void gauges(JsonGenerator json, Scenario scenario) throws IOException {
        json.writeArrayFieldStart("gauges");
        for (GaugeSpec gauge : scenario.gauges()) {
            json.writeStartObject();
            json.writeStringField("name", gauge.name());
            json.writeStringField("kind", gauge.kind().key());
            json.writeArrayFieldStart("mistakes");
            for (Mistake mistake : gauge.mistakes()) {
                json.writeString(mistake.sentence());
            }
            json.writeEndArray();
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void strip(JsonGenerator json, Bench bench) throws IOException {
        json.writeObjectFieldStart("strip");
        json.writeStringField("unit", bench.strip().word());
        json.writeNumberField("lowest", bench.strip().lowest());
        json.writeNumberField("highest", bench.strip().highest());
        json.writeNumberField("place", bench.placeOfStrip());
        json.writeEndObject();
    }

    private static void controls(JsonGenerator json, ControlBoard board) throws IOException {
        json.writeArrayFieldStart("controls");
        for (Control it : board.controls()) {
            Control.Range range = it.range();
            json.writeStartObject();
            json.writeStringField("key", it.key());
            json.writeStringField("group", it.group());
            json.writeStringField("word", it.word());
            json.writeStringField("name", it.name());
            json.writeBooleanField("switch", it.isSwitch());
            json.writeStringField("unit", range.unit());
            if (!it.isSwitch()) {
                number(json, "minimum", it, range.minimum());
                number(json, "maximum", it, range.maximum());
                number(json, "step", it, range.step());
            }
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void number(JsonGenerator json, String name, Control control, long value)
            throws IOException {
        json.writeFieldName(name);
        json.writeNumber(ControlText.number(control, value));
    }
}
