package org.gaugebench.sim.live;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.Locale;
import org.gaugebench.core.port.Fault;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Trust;
import org.gaugebench.sim.live.Player.View;
import org.gaugebench.sim.plant.Truth;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.SensorSpec;

/**
 * What changes all the time, as the page gets it. While the truth is hidden nothing of it leaves
 * this program: a curious pupil finds none in the page either.
 */
final class FrameJson {
    private static final double NANOCOULOMBS_PER_AMP_HOUR = 3.6e12;
    private static final double THOUSANDTHS = 1e3;

    private FrameJson() {}

    /**
     * One frame.
     *
     * @param view what there is to see
     * @param level zoom level of the chart
     * @param fromBucket first bucket that the page does not have yet; -1 for all that are kept
     */
    static String of(View view, int level, long fromBucket) {
        return Json.object(
                json -> {
                    head(json, view);
                    gauges(json, view);
                    if (view.revealed()) {
                        truth(json, view.bench().rig());
                    }
                    chain(json, view.bench().rig());
                    controls(json, view.bench().board());
                    history(json, view, level, fromBucket);
                });
    }

    private static void head(JsonGenerator json, View view) throws IOException {
        Bench bench = view.bench();
        json.writeNumberField("version", view.version());
        json.writeNumberField("run", view.runs());
        json.writeNumberField("millis", bench.rig().timeMillis());
        json.writeNumberField("endMillis", bench.scenario().durationMillis());
        json.writeBooleanField("running", view.running());
        json.writeNumberField("speed", view.speed());
        json.writeBooleanField("flatOut", view.present() == Player.FLAT_OUT && view.running());
        json.writeBooleanField("ended", bench.isEnded());
        json.writeBooleanField("revealed", view.revealed());
        json.writeBooleanField("waiting", bench.isWaiting());
        json.writeNumberField("acts", bench.acts());
        json.writeNumberField("book", bench.book(0).revision());
        json.writeNumberField("events", bench.events().count());
    }

    private static void gauges(JsonGenerator json, View view) throws IOException {
        Rig rig = view.bench().rig();
        double truePercent = rig.truth().stateOfCharge() * 100;
        json.writeArrayFieldStart("gauges");
        for (Lane lane : rig.lanes()) {
            json.writeStartObject();
            json.writeStringField("name", lane.name());
            json.writeBooleanField("power", lane.hasPower());
            if (lane.hasPower()) {
                gauge(json, lane, view.revealed() ? truePercent : Double.NaN);
            }
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void gauge(JsonGenerator json, Lane lane, double truePercent)
            throws IOException {
        Readout it = lane.read();
        boolean known = it.trust != Trust.UNKNOWN;
        double percent = known ? it.stateOfChargePartsPerMillion / 1e4 : Double.NaN;
        Json.figure(json, "percent", percent, THOUSANDTHS);
        boolean band = !it.bandUnknown;
        double lower = band ? it.lowerEdgePartsPerMillion / 1e4 : Double.NaN;
        double upper = band ? it.upperEdgePartsPerMillion / 1e4 : Double.NaN;
        Json.band(json, lower, upper, THOUSANDTHS);
        double ampHours = it.remainingNanocoulombs / NANOCOULOMBS_PER_AMP_HOUR;
        Json.figure(json, "ampHours", known ? ampHours : Double.NaN, THOUSANDTHS);
        Json.figure(json, "amps", it.currentMicroamps / 1e6, THOUSANDTHS);
        Json.figure(json, "volts", it.voltageMicrovolts / 1e6, THOUSANDTHS);
        Json.figure(json, "error", percent - truePercent, THOUSANDTHS);
        json.writeStringField("hours", word(it.timeToEmptyState));
        json.writeNumberField("minutes", it.timeToEmptyMinutes);
        json.writeStringField("trust", word(it.trust));
        json.writeStringField("because", it.trustReason.sentence());
        json.writeStringField("rule", word(it.ruleState));
        json.writeStringField("reason", it.ruleReason.sentence());
        json.writeArrayFieldStart("faults");
        for (Fault fault : Fault.values()) {
            if ((it.faultBits & fault.bit()) != 0) {
                json.writeString(word(fault));
            }
        }
        json.writeEndArray();
    }

    private static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static void truth(JsonGenerator json, Rig rig) throws IOException {
        Truth truth = rig.truth();
        json.writeObjectFieldStart("truth");
        Json.figure(json, "percent", truth.stateOfCharge() * 100, THOUSANDTHS);
        Json.figure(json, "ampHours", truth.chargeAmpHours(), THOUSANDTHS);
        Json.figure(json, "amps", truth.meanCurrentAmps(), THOUSANDTHS);
        Json.figure(json, "volts", truth.batteryVolts(), THOUSANDTHS);
        Json.figure(json, "celsius", truth.temperatureCelsius(), 10);
        json.writeEndObject();
    }

    /** From microvolts to ampere-hours, for the first gauge and the sample of this moment. */
    private static void chain(JsonGenerator json, Rig rig) throws IOException {
        Lane lane = rig.lanes().get(0);
        if (!lane.hasPower()) {
            return;
        }
        SensorSpec sensor = rig.scenario().sensor();
        double microvolts =
                rig.truth().meanShuntAmps()
                        * sensor.shuntRatedMicrovolts()
                        / (sensor.shuntRatedMicroamps() / 1e6)
                        * (1 + sensor.shuntErrorPartsPerMillion() / 1e6);
        Registers registers = lane.inspect();
        long microamps = registers.get(Register.CURRENT_MICROAMPS);
        json.writeObjectFieldStart("chain");
        Json.figure(json, "microvolts", microvolts, 100);
        json.writeNumberField("counts", registers.get(Register.SHUNT_COUNTS));
        json.writeNumberField("microamps", microamps);
        json.writeNumberField("nanocoulombs", microamps * rig.scenario().tickMillis());
        Json.figure(
                json,
                "ampHours",
                lane.read().remainingNanocoulombs / NANOCOULOMBS_PER_AMP_HOUR,
                1e9);
        json.writeEndObject();
    }

    private static void controls(JsonGenerator json, ControlBoard board) throws IOException {
        json.writeObjectFieldStart("set");
        for (Control control : board.controls()) {
            long value = board.value(control);
            json.writeFieldName(control.key());
            if (control.isSwitch()) {
                json.writeNumber(value);
            } else {
                json.writeNumber(ControlText.number(control, value));
            }
        }
        json.writeEndObject();
    }

    private static void history(JsonGenerator json, View view, int level, long fromBucket)
            throws IOException {
        History history = view.bench().history();
        long first = Math.max(history.first(level), fromBucket);
        long last = history.last(level);
        json.writeObjectFieldStart("history");
        json.writeNumberField("level", level);
        json.writeNumberField("width", History.widthMillis(level));
        json.writeNumberField("first", last < 0 ? 0 : first);
        json.writeArrayFieldStart("buckets");
        for (long bucket = first; bucket <= last && last >= 0; bucket++) {
            json.writeStartArray();
            for (int figure = 0; figure < history.figures(); figure++) {
                boolean secret = view.bench().isSecret(figure) && !view.revealed();
                double lowest = history.lowest(level, bucket, figure);
                double highest = history.highest(level, bucket, figure);
                Json.figure(json, secret ? Double.NaN : lowest, THOUSANDTHS);
                Json.figure(json, secret ? Double.NaN : highest, THOUSANDTHS);
            }
            json.writeEndArray();
        }
        json.writeEndArray();
        json.writeEndObject();
    }
}
