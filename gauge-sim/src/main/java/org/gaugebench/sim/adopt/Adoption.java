package org.gaugebench.sim.adopt;

import java.io.IOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.gaugebench.sim.logs.LogException;
import org.gaugebench.sim.logs.LogProblem;
import org.gaugebench.sim.logs.MeasuredLog;
import org.gaugebench.sim.logs.ProfileReader;
import org.gaugebench.sim.scenario.ScenarioException;
import org.gaugebench.sim.scenario.ScenarioReader;
import org.gaugebench.sim.units.CapacityRating;
import org.gaugebench.sim.units.QuantityFormat;
import org.gaugebench.sim.units.RecordUnit;

/** A log of the field as a scenario: its text, and the table beside it. */
public final class Adoption {
    private static final int MOST_COMMENTS = 24;

    /** As many as a scenario can have; a log that is longer has a wrong time column. */
    private static final long MOST_TICKS = 2_000_000_000;

    /** A scenario that leaves to the format all that the chemistry decides. */
    private static final String USUAL =
            """
            format: 1
            title: usual
            duration: 1 s
            battery: {chemistry: %s, capacity: 100 Ah}
            sensor: {shunt: 100 A / 75 mV}
            """;

    /** Volts under and over these parts of the nominal ones are those of something else. */
    private static final double LOW_PART = 0.6;

    private static final double HIGH_PART = 1.5;

    private final FieldLog field;
    private final AdoptSetup setup;
    private final Steps steps;
    private final ChargeCount count;
    private final Claims claims;

    /**
     * Makes a scenario of a log.
     *
     * @param log as read
     * @param setup what it does not say
     * @throws LogException if the log cannot be one of this battery, or says too little
     */
    public Adoption(MeasuredLog log, AdoptSetup setup) throws LogException {
        this.setup = setup;
        field = FieldLog.of(log, setup);
        if (field.durationMillis() < setup.tickMillis()) {
            throw whole("the log is shorter than a tick; give a shorter --tick such as \"1 s\"");
        }
        if (field.durationMillis() / setup.tickMillis() > MOST_TICKS) {
            throw whole(
                    "the log is too long for this tick; check the time column, or give a longer"
                            + " --tick such as \"60 s\"");
        }
        if (field.rows() > ProfileReader.MOST_ROWS) {
            throw whole(
                    "the log has more than "
                            + ProfileReader.MOST_ROWS
                            + " rows in which something changes; cut it in two");
        }
        checkVolts();
        steps = new Steps(field);
        count = new ChargeCount(field, setup, efficiency());
        if (count.lowestMicroampHours() < 0) {
            throw tooMuchDrawn();
        }
        claims = new Claims(field, setup, count);
    }

    private LogException whole(String message) {
        return new LogException(List.of(new LogProblem(field.log().file(), 0, 0, message)));
    }

    private LogException tooMuchDrawn() {
        double start = setup.capacityMicroampHours() / 1e6 * setup.startPartsPerMillion() / 1e6;
        return whole(
                String.format(
                        Locale.ROOT,
                        "the log draws more than the battery holds: from %.2f Ah at the first row"
                                + " it is %.2f Ah under empty at %s; are --capacity, --start and"
                                + " --positive right?",
                        start,
                        -count.lowestMicroampHours() / 1e6,
                        Steps.time(count.lowestMillis())));
    }

    private void checkVolts() throws LogException {
        MeasuredLog log = field.log();
        if (!log.hasVoltage()) {
            return;
        }
        double[] volts = new double[log.rows()];
        for (int row = 0; row < volts.length; row++) {
            volts[row] = log.voltageVolts(row);
            if (volts[row] < 0 || volts[row] > 100) {
                throw new LogException(
                        List.of(
                                new LogProblem(
                                        log.file(),
                                        log.line(row),
                                        0,
                                        "voltage: expected 0 to 100 V, but found " + volts[row])));
            }
        }
        Arrays.sort(volts);
        double middle = volts[volts.length / 2];
        if (middle < LOW_PART * setup.nominalVolts() || middle > HIGH_PART * setup.nominalVolts()) {
            throw whole(
                    String.format(
                            Locale.ROOT,
                            "half of the log's volts lie under %.2f V, which is no battery of"
                                    + " %d V; say another --nominal-voltage, or leave --voltage"
                                    + " out",
                            middle,
                            setup.nominalVolts()));
        }
    }

    /** As the scenario will have it: one place decides what a chemistry stores. */
    private double efficiency() {
        if (setup.efficiencyPartsPerMillion() > 0) {
            return setup.efficiencyPartsPerMillion() / 1e6;
        }
        try {
            return ScenarioReader.read("battery", USUAL.formatted(setup.chemistry().key()))
                            .battery()
                            .coulombicEfficiencyPartsPerMillion()
                    / 1e6;
        } catch (ScenarioException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Length of the run. */
    public long durationMillis() {
        return field.durationMillis();
    }

    /** Gaps found. */
    public int gaps() {
        return field.gaps().size();
    }

    /** Restarts found. */
    public int restarts() {
        return field.restarts().size();
    }

    /** Charge that the log puts in, in ampere-hours. */
    public double inAmpHours() {
        return count.inAmpHours();
    }

    /** Charge that the log takes out, in ampere-hours. */
    public double outAmpHours() {
        return count.outAmpHours();
    }

    /** The scenario's text. */
    public String scenario() {
        StringBuilder text = new StringBuilder(4096);
        head(text);
        text.append("format: 1\n");
        text.append("title: \"A log of the field: ").append(setup.name()).append("\"\n");
        text.append("about: >\n  The current of a log is the truth here, with its gaps and");
        text.append(" restarts.\n  Say here what the complaint was.\n");
        text.append("tags: [adopted]\n");
        text.append("duration: ").append(Steps.time(field.durationMillis())).append('\n');
        text.append("tick: ").append(Steps.time(setup.tickMillis())).append('\n');
        text.append(battery()).append(sensor());
        if (field.log().hasVoltage()) {
            text.append(
                    "  voltage-profile: {file: %s.csv, time: time_s, voltage: voltage_V, unit: V}\n"
                            .formatted(setup.name()));
        }
        gauge(text);
        text.append("loads:\n  log:                                   # current of the log\n");
        text.append(
                "    profile: {file: %s.csv, time: time_s, current: current_A, unit: A,\n"
                        .formatted(setup.name()));
        text.append("              positive: charge, both-ways: allowed");
        text.append(field.isLinear() ? ", between-rows: straight-line}\n" : "}\n");
        list(text, "timeline", steps.texts());
        list(text, "expect", claims.texts());
        return text.toString();
    }

    private void head(StringBuilder text) {
        MeasuredLog log = field.log();
        List<String> lines = new ArrayList<>();
        lines.add(
                "Made by gauge-sim adopt from %s: %d rows, %s."
                        .formatted(
                                fileName(log.file()),
                                log.rows(),
                                Steps.time(field.durationMillis())));
        lines.add(
                "A log is a measurement, not the truth: here its current is taken as what really");
        lines.add("flowed. What its sensor saw wrong, and what flowed past it, is not in it.");
        lines.add("Taken as told: battery, sensor, the state of charge at the first row.");
        lines.add(
                "Assumed: the rest of the battery as usual for its kind, without self-discharge,");
        lines.add("and a sensor without error of its own, for the log has that already.");
        if (log.hasTemperature()) {
            lines.add(
                    String.format(
                            Locale.ROOT,
                            "The temperature follows the log where it has moved by %.0f K.",
                            steps.kelvin()));
        }
        field.assumptions().forEach(each -> lines.add("Taken for a " + each + "."));
        List<String> shown = claims.shownTexts(MOST_COMMENTS);
        if (!shown.isEmpty()) {
            lines.add("The unit showed (no claim unless it stands under expect):");
            shown.forEach(each -> lines.add("  " + each));
        }
        lines.forEach(line -> text.append("# ").append(line).append('\n'));
    }

    private static String fileName(String file) {
        String name = file.substring(Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')) + 1);
        return name.replaceAll("\\p{Cntrl}", "?");
    }

    private String battery() {
        String temperature =
                field.log().hasTemperature() && steps != null
                        ? "  temperature: " + steps.firstTemperature() + "\n"
                        : "";
        return "battery:\n"
                + "  chemistry: "
                + setup.chemistry().key()
                + "\n  nominal-voltage: "
                + setup.nominalVolts()
                + " V\n  capacity: "
                + CapacityRating.format(setup.capacityMicroampHours(), RecordUnit.MICROAMP_HOURS)
                + "\n  start: "
                + QuantityFormat.format(setup.startPartsPerMillion(), RecordUnit.PARTS_PER_MILLION)
                + "                           # at the first row\n"
                + efficiencyLine()
                + temperature
                + "  self-discharge: 0 %/month              # a log does not tell\n"
                + "  acceptance-time: none                  # what flowed has flowed\n"
                + "  charge-stop: none\n"
                + "  discharge-stop: none\n";
    }

    private String efficiencyLine() {
        return setup.efficiencyPartsPerMillion() == 0
                ? ""
                : "  coulombic-efficiency: "
                        + QuantityFormat.format(
                                setup.efficiencyPartsPerMillion(), RecordUnit.PARTS_PER_MILLION)
                        + "\n";
    }

    private String sensor() {
        String converter =
                setup.converter() == null ? "" : "  converter: " + setup.converter() + "\n";
        return "sensor:\n  shunt: "
                + setup.shunt()
                + "\n"
                + converter
                + "  noise: 0 V                             # the log has its own\n"
                + "  voltage-noise: 0 V\n"
                + (field.log().hasTemperature() ? "" : "  temperature-sensor: none\n");
    }

    private void gauge(StringBuilder text) {
        boolean plain = setup.absorptionMicrovolts() == 0 && setup.efficiencyPartsPerMillion() == 0;
        if (plain && field.restarts().isEmpty()) {
            return;
        }
        text.append("gauge:\n").append(efficiencyLine());
        if (setup.absorptionMicrovolts() > 0) {
            text.append("  absorption: ")
                    .append(
                            QuantityFormat.format(
                                    setup.absorptionMicrovolts(), RecordUnit.MICROVOLTS))
                    .append('\n');
        }
        if (!field.restarts().isEmpty()) {
            text.append("  memory: {slots: 8}                     # it was restarted\n");
        }
    }

    private static void list(StringBuilder text, String key, List<String> items) {
        if (!items.isEmpty()) {
            text.append(key).append(":\n");
            items.forEach(each -> text.append("  - ").append(each).append('\n'));
        }
    }

    /**
     * Writes the table.
     *
     * @throws IOException if it cannot be written
     */
    public void writeTable(Writer out) throws IOException {
        boolean volts = field.log().hasVoltage();
        out.write(volts ? "time_s,current_A,voltage_V\n" : "time_s,current_A\n");
        for (int row = 0; row < field.rows(); row++) {
            out.write(decimal(field.millis(row), 3));
            out.write(',');
            out.write(decimal(field.microamps(row), 6));
            if (volts) {
                out.write(',');
                out.write(decimal(field.microvolts(row), 6));
            }
            out.write('\n');
        }
    }

    private static String decimal(long value, int places) {
        return value == 0
                ? "0"
                : BigDecimal.valueOf(value, places).stripTrailingZeros().toPlainString();
    }
}
