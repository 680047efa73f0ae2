package org.gaugebench.sim.scenario;

import static org.gaugebench.sim.units.RecordUnit.MILLIS;
import static org.gaugebench.sim.units.RecordUnit.MINUTES;
import static org.gaugebench.sim.units.RecordUnit.PARTS_PER_MILLION;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Fault;
import org.gaugebench.sim.scenario.Expectation.Comparison;
import org.gaugebench.sim.scenario.Expectation.Kind;
import org.gaugebench.sim.scenario.Expectation.Reading;
import org.gaugebench.sim.units.Quantity;
import org.gaugebench.sim.units.RecordUnit;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.nodes.Node;

/** Reads expectations. One entry with two limits becomes two expectations. */
final class ExpectationReader {
    private static final long LATEST = Long.MAX_VALUE / 4;
    private static final long LARGEST = 1_000_000_000_000_000L;
    private static final long MOST_EVENTS = 1_000_000_000;
    private static final String MORE_THAN = "more than ";

    private final Problems problems;
    private final long durationMillis;
    private final List<String> gauges;
    private final List<Expectation> expectations = new ArrayList<>();

    ExpectationReader(Problems problems, long durationMillis, List<GaugeSpec> gauges) {
        this.problems = problems;
        this.durationMillis = durationMillis;
        this.gauges = gauges.stream().map(GaugeSpec::name).toList();
    }

    List<Expectation> read(List<Node> entries) {
        for (Node entry : entries) {
            readEntry(new Block(problems, entry, "this expectation"));
        }
        return List.copyOf(expectations);
    }

    /** What all expectations of one entry share. */
    private record Claim(
            SourceMark mark,
            String gauge,
            Kind kind,
            long from,
            long to,
            @Nullable Reading reading,
            @Nullable Event event,
            @Nullable Fault fault,
            long trueState,
            String because,
            String expectedToFail) {}

    private void readEntry(Block entry) {
        boolean at = entry.has("at");
        boolean throughout = entry.has("throughout");
        boolean event = entry.has("event");
        if ((at ? 1 : 0) + (throughout ? 1 : 0) + (event ? 1 : 0) != 1) {
            entry.problem(
                    at ? "at" : "throughout",
                    "an expectation has exactly one of 'at: 7 d', 'throughout: true',"
                            + " 'event: set-to-full'");
            return;
        }
        String gauge = entry.choice("gauge", gauges, name -> name, GaugeReader.FIRST);
        String because = entry.text("because", "\"the shunt is 0.1 % off\"");
        if (throughout) {
            entry.choice("throughout", List.of("true"), word -> word, "true");
        }
        long from =
                at
                        ? entry.quantity("at", MILLIS, 0, LATEST, 0)
                        : entry.quantity("from", MILLIS, 0, LATEST, 0);
        long to = at ? from : entry.quantity("to", MILLIS, 0, LATEST, durationMillis);
        if (!at && entry.has("to") && to < from) {
            entry.valueProblem("to", "'to' must not be before 'from'");
        }
        Claim claim =
                new Claim(
                        entry.mark(),
                        gauge,
                        at ? Kind.AT : throughout ? Kind.THROUGHOUT : Kind.EVENTS,
                        from,
                        to,
                        event ? null : reading(entry),
                        event ? event(entry) : null,
                        event ? fault(entry) : null,
                        event
                                ? entry.quantity(
                                        "true-state-at-least",
                                        PARTS_PER_MILLION,
                                        0,
                                        Defaults.WHOLE,
                                        -1)
                                : -1,
                        because == null ? "" : because,
                        expectedToFail(entry));
        if (event) {
            readEvents(entry, claim);
        } else {
            readReading(entry, claim);
        }
        entry.finish();
    }

    private static Reading reading(Block entry) {
        entry.require("reading", "reading: state-of-charge");
        return entry.choice(
                "reading", List.of(Reading.values()), Reading::key, Reading.STATE_OF_CHARGE);
    }

    /** The reason of a claim that is known to fail, or an empty text. */
    private static String expectedToFail(Block entry) {
        String reason = entry.text("expected-to-fail", "\"no rule of F sees a charger that left\"");
        if (reason != null && reason.isBlank()) {
            entry.valueProblem(
                    "expected-to-fail",
                    "expected a reason such as 'expected-to-fail: \"the float path is off\"'");
        }
        if (reason != null && entry.has("at-least") && entry.has("at-most")) {
            entry.problem(
                    "expected-to-fail",
                    "two limits are two expectations, and one of them may hold; expected one entry"
                            + " with 'at-least: 1' and another with 'at-most: 3'");
        }
        return reason == null ? "" : reason.strip();
    }

    private static Event event(Block entry) {
        return entry.choice("event", List.of(Event.values()), SettingUnits::key, Event.SET_TO_FULL);
    }

    private static @Nullable Fault fault(Block entry) {
        if (!entry.has("fault")) {
            return null;
        }
        if (!entry.isWord("event", SettingUnits.key(Event.FAULT_RAISED))) {
            entry.problem("fault", "'fault' goes with 'event: fault-raised' only");
        }
        return entry.choice(
                "fault", List.of(Fault.values()), SettingUnits::key, Fault.SAMPLES_MISSING);
    }

    private void readEvents(Block entry, Claim claim) {
        boolean times = entry.has("times");
        boolean least = entry.has("at-least");
        boolean most = entry.has("at-most");
        if (times) {
            add(claim, Comparison.EXACTLY, entry.whole("times", 0, MOST_EVENTS, 0, 1), 0);
        }
        if (least) {
            add(claim, Comparison.AT_LEAST, entry.whole("at-least", 0, MOST_EVENTS, 0, 1), 0);
        }
        if (most) {
            add(claim, Comparison.AT_MOST, entry.whole("at-most", 0, MOST_EVENTS, 0, 3), 0);
        }
        if (times == (least || most)) {
            entry.problem(
                    "times",
                    "an event is counted: expected 'times: 1', or 'at-least: 1', 'at-most: 3' or"
                            + " both");
        }
    }

    private void readReading(Block entry, Claim claim) {
        Reading reading = claim.reading == null ? Reading.STATE_OF_CHARGE : claim.reading;
        RecordUnit unit = SettingUnits.of(reading);
        boolean within = entry.hasAny("within", "of");
        boolean least = entry.has("at-least");
        boolean most = entry.has("at-most");
        boolean is = entry.has("is");
        if (within) {
            readWithin(entry, claim, reading, unit);
        }
        if (least) {
            add(claim, Comparison.AT_LEAST, value(entry, "at-least", unit), 0);
        }
        if (most) {
            add(claim, Comparison.AT_MOST, value(entry, "at-most", unit), 0);
        }
        if (is) {
            readIs(entry, claim, reading, unit);
        }
        if ((within ? 1 : 0) + (least || most ? 1 : 0) + (is ? 1 : 0) != 1) {
            entry.problem(
                    "reading",
                    "a reading is judged by exactly one of 'within: 2 %' with 'of: truth',"
                            + " 'at-least'/'at-most', 'is'");
        }
    }

    private void readWithin(Block entry, Claim claim, Reading reading, RecordUnit unit) {
        entry.require("within", "within: 2 %");
        entry.require("of", "of: truth");
        if (entry.isWord("within", "band")) {
            readBand(entry, claim, reading);
            return;
        }
        long tolerance = entry.quantity("within", unit, 0, LARGEST, 0);
        if (!entry.isWord("of", "truth")) {
            add(claim, Comparison.WITHIN_OF_VALUE, value(entry, "of", unit), tolerance);
            return;
        }
        boolean comparable =
                switch (reading) {
                    case STATE_OF_CHARGE, REMAINING_CHARGE, CURRENT, VOLTAGE -> true;
                    case LOWER_EDGE, UPPER_EDGE, TIME_TO_EMPTY, TRUE_STATE_OF_CHARGE -> false;
                };
        if (!comparable) {
            entry.valueProblem(
                    "of",
                    "'"
                            + reading.key()
                            + "' cannot be compared with the truth; expected a value such as 'of: "
                            + Block.example(unit)
                            + "'");
        }
        add(claim, Comparison.WITHIN_OF_TRUTH, 0, tolerance);
    }

    /** The truth within the gauge's own band: the one claim without a figure of its own. */
    private void readBand(Block entry, Claim claim, Reading reading) {
        if (reading != Reading.STATE_OF_CHARGE) {
            entry.valueProblem(
                    "within",
                    "only 'state-of-charge' has a band; expected 'within: 2 %' or"
                            + " 'reading: state-of-charge'");
        }
        if (!entry.isWord("of", "truth")) {
            entry.valueProblem("of", "'within: band' goes with 'of: truth'");
        }
        add(claim, Comparison.BAND_HOLDS_TRUTH, 0, 0);
    }

    private void readIs(Block entry, Claim claim, Reading reading, RecordUnit unit) {
        if (entry.isWord("is", "not-known")) {
            if (reading == Reading.TRUE_STATE_OF_CHARGE) {
                entry.valueProblem("is", "'" + reading.key() + "' is always known");
            }
            add(claim, Comparison.NOT_KNOWN, 0, 0);
            return;
        }
        String text = entry.text("is", Block.example(unit));
        if (text == null || !text.startsWith(MORE_THAN)) {
            add(claim, Comparison.EXACTLY, value(entry, "is", unit), 0);
            return;
        }
        if (reading != Reading.TIME_TO_EMPTY) {
            entry.valueProblem("is", "only 'time-to-empty' says \"more than\"");
        }
        long minutes =
                entry.parsed(
                        "is",
                        "\"more than 99 h\"",
                        it -> Quantity.parse(it.substring(MORE_THAN.length()), MINUTES),
                        0L);
        add(claim, Comparison.MORE_THAN, minutes, 0);
    }

    private static long value(Block entry, String key, RecordUnit unit) {
        return entry.quantity(key, unit, -LARGEST, LARGEST, 0);
    }

    private void add(Claim claim, Comparison comparison, long value, long tolerance) {
        Expectation untitled =
                new Expectation(
                        "",
                        claim.mark,
                        claim.gauge,
                        claim.kind,
                        claim.from,
                        claim.to,
                        claim.reading,
                        claim.event,
                        claim.fault,
                        comparison,
                        value,
                        tolerance,
                        claim.trueState,
                        claim.because,
                        claim.expectedToFail);
        expectations.add(
                new Expectation(
                        ExpectationText.of(untitled),
                        claim.mark,
                        claim.gauge,
                        claim.kind,
                        claim.from,
                        claim.to,
                        claim.reading,
                        claim.event,
                        claim.fault,
                        comparison,
                        value,
                        tolerance,
                        claim.trueState,
                        claim.because,
                        claim.expectedToFail));
    }
}
