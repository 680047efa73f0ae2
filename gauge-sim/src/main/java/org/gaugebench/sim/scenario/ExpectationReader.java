package org.gaugebench.sim.scenario;

import static org.gaugebench.sim.units.RecordUnit.MILLIS;
import static org.gaugebench.sim.units.RecordUnit.PARTS_PER_MILLION;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Fault;
import org.gaugebench.core.port.Register;
import org.gaugebench.sim.scenario.Expectation.Comparison;
import org.gaugebench.sim.scenario.Expectation.Kind;
import org.gaugebench.sim.scenario.Expectation.Reading;
import org.gaugebench.sim.scenario.Expectation.Times;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.nodes.Node;

/** Reads expectations. One entry with two limits becomes two expectations. */
final class ExpectationReader {
    private static final long LATEST = Long.MAX_VALUE / 4;
    private static final int MOST_ENTRIES = 2_000;
    private static final long MOST_EVENTS = 1_000_000_000;

    private final Problems problems;
    private final long durationMillis;
    private final List<String> gauges;
    private final List<Expectation> expectations = new ArrayList<>();
    private final AtomicInteger looks = new AtomicInteger();

    ExpectationReader(Problems problems, long durationMillis, List<GaugeSpec> gauges) {
        this.problems = problems;
        this.durationMillis = durationMillis;
        this.gauges = gauges.stream().map(GaugeSpec::name).toList();
    }

    List<Expectation> read(List<Node> entries) {
        if (entries.size() > MOST_ENTRIES) {
            problems.add(entries.get(MOST_ENTRIES), "more than " + MOST_ENTRIES + " expectations");
            return List.of();
        }
        for (Node entry : entries) {
            readEntry(new Block(problems, entry, "this expectation"));
        }
        return List.copyOf(expectations);
    }

    private void readEntry(Block entry) {
        boolean event = entry.has("event");
        Kind kind = kind(entry, event);
        if (kind == null) {
            entry.problem(
                    entry.has("at") ? "at" : "throughout",
                    "an expectation has exactly one of 'at: 7 d', 'throughout: true', 'by: 6 h',"
                            + " 'never: true', 'once: true', or counts an event such as"
                            + " 'event: set-to-full'");
            return;
        }
        String gauge = entry.choice("gauge", gauges, name -> name, GaugeReader.FIRST);
        String because = entry.text("because", "\"the shunt is 0.1 % off\"");
        for (String word : List.of("throughout", "never", "once")) {
            entry.choice(word, List.of("true"), it -> it, "true");
        }
        boolean at = kind == Kind.AT;
        long from = at ? time(entry, "at", 0) : time(entry, "from", 0);
        long to = at ? from : to(entry, from);
        Expectation draft =
                new Expectation(
                        "",
                        entry.mark(),
                        gauge,
                        kind,
                        from,
                        to,
                        event || entry.has("register") ? null : reading(entry),
                        event ? null : register(entry),
                        event ? event(entry) : null,
                        event ? fault(entry) : null,
                        event ? times(entry) : Times.ANY,
                        Comparison.EXACTLY,
                        0,
                        0,
                        event ? trueState(entry) : -1,
                        because == null ? "" : because,
                        expectedToFail(entry));
        if (event) {
            readEvents(entry, draft);
        } else {
            new ReadingClaims(entry, draft, looks, expectations).read();
        }
        entry.finish();
    }

    /** When it is judged, or null where the entry says that not at all or twice. */
    private static @Nullable Kind kind(Block entry, boolean event) {
        Kind kind = event ? Kind.EVENTS : null;
        int stated = 0;
        for (Kind each : List.of(Kind.AT, Kind.THROUGHOUT, Kind.BY, Kind.NEVER, Kind.ONCE)) {
            if (entry.has(SettingUnits.key(each))) {
                stated++;
                boolean counts = each != Kind.AT && each != Kind.THROUGHOUT;
                if (event && !counts) {
                    return null;
                }
                kind = event ? kind : each;
            }
        }
        return stated > 1 ? null : kind;
    }

    private static long time(Block entry, String key, long usual) {
        return entry.quantity(key, MILLIS, 0, LATEST, usual);
    }

    private long to(Block entry, long from) {
        boolean by = entry.has("by");
        if (by && entry.has("to")) {
            entry.problem("to", "'by' is the end already; expected 'by' or 'to'");
        }
        String key = by ? "by" : "to";
        long to = time(entry, key, durationMillis);
        if (entry.has(key) && to < from) {
            entry.valueProblem(key, "'" + key + "' must not be before 'from'");
        }
        return to;
    }

    private static Reading reading(Block entry) {
        if (!entry.has("reading")) {
            entry.require("reading", "reading: state-of-charge");
        }
        return entry.choice(
                "reading", List.of(Reading.values()), Reading::key, Reading.STATE_OF_CHARGE);
    }

    private static @Nullable Register register(Block entry) {
        if (!entry.has("register")) {
            return null;
        }
        return entry.choice(
                "register",
                List.of(Register.values()),
                SettingUnits::key,
                Register.STATE_OF_CHARGE_PARTS_PER_MILLION);
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

    private static long trueState(Block entry) {
        return entry.quantity("true-state-at-least", PARTS_PER_MILLION, 0, Defaults.WHOLE, -1);
    }

    private static Times times(Block entry) {
        if (!entry.hasAny("first", "last")) {
            return Times.ANY;
        }
        Block first = entry.block("first", "first");
        Block last = entry.block("last", "last");
        Times times =
                new Times(
                        time(first, "from", Times.ANY.firstFromMillis()),
                        time(first, "to", Times.ANY.firstToMillis()),
                        time(last, "from", Times.ANY.lastFromMillis()),
                        time(last, "to", Times.ANY.lastToMillis()));
        first.finish();
        last.finish();
        if (times.firstToMillis() < times.firstFromMillis()) {
            first.valueProblem("to", "'to' must not be before 'from'");
        }
        if (times.lastToMillis() < times.lastFromMillis()) {
            last.valueProblem("to", "'to' must not be before 'from'");
        }
        return times;
    }

    private void readEvents(Block entry, Expectation draft) {
        boolean least = entry.has("at-least");
        boolean most = entry.has("at-most");
        int stated = least || most ? 1 : 0;
        if (entry.has("times")) {
            add(draft, Comparison.EXACTLY, entry.whole("times", 0, MOST_EVENTS, 0, 1));
            stated++;
        }
        if (least) {
            add(draft, Comparison.AT_LEAST, entry.whole("at-least", 0, MOST_EVENTS, 0, 1));
        }
        if (most) {
            add(draft, Comparison.AT_MOST, entry.whole("at-most", 0, MOST_EVENTS, 0, 3));
        }
        if (entry.has("never") || entry.has("once")) {
            add(draft, Comparison.EXACTLY, entry.has("once") ? 1 : 0);
            stated++;
        }
        boolean implied = entry.hasAny("by", "first", "last");
        if (stated == 0 && implied) {
            add(draft, Comparison.AT_LEAST, 1);
        } else if (stated != 1) {
            entry.problem(
                    "times",
                    "an event is counted: expected 'times: 1', or 'at-least: 1', 'at-most: 3' or"
                            + " both, or one of 'by: 6 h', 'never: true', 'once: true'");
        }
    }

    private void add(Expectation draft, Comparison comparison, long value) {
        expectations.add(draft.claiming(comparison, value, 0));
    }
}
