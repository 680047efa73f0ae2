package org.gaugebench.sim.scenario;

import static org.gaugebench.sim.units.RecordUnit.MINUTES;

import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.gaugebench.sim.scenario.Expectation.Comparison;
import org.gaugebench.sim.scenario.Expectation.Kind;
import org.gaugebench.sim.scenario.Expectation.Reading;
import org.gaugebench.sim.units.Quantity;
import org.gaugebench.sim.units.RecordUnit;

/** Reads what one entry claims of a reading or of a register. */
final class ReadingClaims {
    private static final long LARGEST = 1_000_000_000_000_000L;

    /** A register may hold any long; its limits stay clear of the marks at the ends. */
    private static final long LARGEST_REGISTER = Long.MAX_VALUE / 4;

    private static final int MOST_LOOKS_AHEAD = 200;
    private static final String MORE_THAN = "more than ";

    private final Block entry;
    private final Expectation draft;
    private final AtomicInteger looks;
    private final List<Expectation> expectations;

    /**
     * Prepares to read.
     *
     * @param looks how often the file has looked ahead so far; counted on
     */
    ReadingClaims(
            Block entry, Expectation draft, AtomicInteger looks, List<Expectation> expectations) {
        this.entry = entry;
        this.looks = looks;
        this.draft = draft;
        this.expectations = expectations;
    }

    void read() {
        if (draft.reading() != null && draft.reading().looksAhead()) {
            looksAhead("reading");
        }
        boolean within = entry.hasAny("within", "of");
        boolean least = entry.has("at-least");
        boolean most = entry.has("at-most");
        boolean is = entry.has("is");
        if (within) {
            readWithin();
        }
        if (least) {
            add(Comparison.AT_LEAST, value("at-least"), 0);
        }
        if (most) {
            add(Comparison.AT_MOST, value("at-most"), 0);
        }
        if (is) {
            readIs();
        }
        String subject = draft.register() == null ? "reading" : "register";
        if ((within ? 1 : 0) + (least || most ? 1 : 0) + (is ? 1 : 0) != 1) {
            entry.problem(
                    subject,
                    "a reading is judged by exactly one of 'within: 2 %' with 'of: truth',"
                            + " 'at-least'/'at-most', 'is'");
        }
        boolean minutesApart = draft.kind() != Kind.AT && draft.kind() != Kind.THROUGHOUT;
        if (least && most && minutesApart) {
            entry.problem(
                    "at-most",
                    "two limits are two expectations, and each could be true at another minute;"
                            + " expected 'within: 1 V' with 'of: 13 V'");
        }
    }

    private Reading reading() {
        Reading reading = draft.reading();
        return reading == null ? Reading.STATE_OF_CHARGE : reading;
    }

    private void readWithin() {
        entry.require("within", draft.register() == null ? "within: 2 %" : "within: 3");
        entry.require("of", draft.register() == null ? "of: truth" : "of: 10");
        if (draft.register() != null) {
            add(Comparison.WITHIN_OF_VALUE, value("of"), Math.abs(value("within")));
            return;
        }
        if (entry.isWord("within", "band")) {
            readBand();
            return;
        }
        RecordUnit unit = SettingUnits.of(reading());
        long tolerance = entry.quantity("within", unit, 0, LARGEST, 0);
        if (!entry.isWord("of", "truth")) {
            add(Comparison.WITHIN_OF_VALUE, value("of"), tolerance);
            return;
        }
        if (reading() == Reading.TIME_TO_EMPTY) {
            looksAhead("of");
        }
        if (!reading().hasTruth()) {
            entry.valueProblem(
                    "of",
                    "'"
                            + reading().key()
                            + "' cannot be compared with the truth; expected a value such as 'of: "
                            + Block.example(unit)
                            + "'");
        }
        add(Comparison.WITHIN_OF_TRUTH, 0, tolerance);
    }

    /** The truth within the gauge's own band: the one claim without a figure of its own. */
    private void readBand() {
        if (reading() != Reading.STATE_OF_CHARGE) {
            entry.valueProblem(
                    "within",
                    "only 'state-of-charge' has a band; expected 'within: 2 %' or"
                            + " 'reading: state-of-charge'");
        }
        if (!entry.isWord("of", "truth")) {
            entry.valueProblem("of", "'within: band' goes with 'of: truth'");
        }
        add(Comparison.BAND_HOLDS_TRUTH, 0, 0);
    }

    /**
     * A true time to empty runs a copy of the plant forward each time it is asked for: not at every
     * minute, and not without end.
     */
    private void looksAhead(String key) {
        if (draft.kind() != Kind.AT) {
            entry.valueProblem(
                    key,
                    "a true time to empty is found by running ahead, and is judged at single"
                            + " moments only; expected 'at: 2 h' in place of '"
                            + SettingUnits.key(draft.kind())
                            + "'");
        }
        if (looks.incrementAndGet() == MOST_LOOKS_AHEAD + 1) {
            entry.valueProblem(
                    key, "more than " + MOST_LOOKS_AHEAD + " looks ahead for a true time to empty");
        }
    }

    private void readIs() {
        if (draft.register() != null) {
            add(Comparison.EXACTLY, value("is"), 0);
            return;
        }
        if (reading().looksAhead() && entry.isWord("is", "never")) {
            add(Comparison.EXACTLY, Reading.NEVER, 0);
            return;
        }
        if (entry.isWord("is", "not-known")) {
            if (!reading().canBeUnknown()) {
                entry.valueProblem("is", "'" + reading().key() + "' is always known");
            }
            add(Comparison.NOT_KNOWN, 0, 0);
            return;
        }
        String text = entry.text("is", Block.example(SettingUnits.of(reading())));
        if (text == null || !text.startsWith(MORE_THAN)) {
            add(Comparison.EXACTLY, value("is"), 0);
            return;
        }
        if (reading() != Reading.TIME_TO_EMPTY) {
            entry.valueProblem("is", "only 'time-to-empty' says \"more than\"");
        }
        long minutes =
                entry.parsed(
                        "is",
                        "\"more than 99 h\"",
                        it -> Quantity.parse(it.substring(MORE_THAN.length()), MINUTES),
                        0L);
        add(Comparison.MORE_THAN, minutes, 0);
    }

    /** A value in the reading's unit; of a register a bare whole number in its own unit. */
    private long value(String key) {
        return draft.register() == null
                ? entry.quantity(key, SettingUnits.of(reading()), -LARGEST, LARGEST, 0)
                : entry.whole(key, -LARGEST_REGISTER, LARGEST_REGISTER, 0, 10);
    }

    private void add(Comparison comparison, long value, long tolerance) {
        expectations.add(draft.claiming(comparison, value, tolerance));
    }
}
