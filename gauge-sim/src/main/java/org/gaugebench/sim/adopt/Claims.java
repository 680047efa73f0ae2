package org.gaugebench.sim.adopt;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.gaugebench.sim.logs.MeasuredLog;
import org.gaugebench.sim.units.QuantityFormat;
import org.gaugebench.sim.units.RecordUnit;

/**
 * What a gauge has to do on this log. The first claim is about the scenario: that its truth is what
 * the log counts to. The others are about the gauge, and none of them says what the unit did,
 * unless the user asks for that.
 */
final class Claims {
    private static final long MINUTE_MILLIS = 60_000;
    private static final double WHOLE = 1e6;

    /**
     * A full that comes below this by the log's count is a false one: ten points are what a stated
     * start may be wrong by, as in the gauge's own declared-residual.
     */
    private static final double FULL_FROM = 0.9;

    /** Part of the capacity that the gauge wants to see go out between two fulls: its default. */
    private static final double REARM_PART = 0.02;

    /** How far from full a battery may be when full is proven late: the gauge's default at most. */
    private static final double FULL_PART = 0.06;

    /** Part of the capacity by which the band may grow with time, and again with what flows. */
    private static final double BAND_GROWTH = 0.15;

    /** The gauge's defaults for offset and for what flows past the shunt, 10 mA each. */
    private static final double BOUND_MICROAMPS = 20_000;

    /** The gauge's defaults for gain and efficiency, 0.5 % and 3 %, and the asymmetry's 0.1 %. */
    private static final double BOUND_OF_FLOW = 0.036;

    /** A claim that half the scale is right says nothing. */
    private static final double HOLLOW_PART = 0.5;

    /** A file holds 2,000 expectations. */
    private static final int MOST_SPANS = 500;

    /** More would say the same thing again. */
    private static final int MOST_SHOWN = 48;

    private final FieldLog field;
    private final AdoptSetup setup;
    private final List<String> texts = new ArrayList<>();

    Claims(FieldLog field, AdoptSetup setup, ChargeCount count) {
        this.field = field;
        this.setup = setup;
        String end = Steps.time(field.durationMillis());
        double endPart = count.endMicroampHours() / setup.capacityMicroampHours();
        texts.add(
                """
                {at: %s, reading: true-state-of-charge, within: 0.1 %%, of: %s,
                     because: "what the log's current counts to; rounding is far below that"}\
                """
                        .formatted(end, percent(endPart)));
        spanClaims();
        fullClaim(count);
        if (setup.shownTolerancePartsPerMillion() > 0) {
            shownClaims();
        }
    }

    private void fullClaim(ChargeCount count) {
        if (count.highestMicroampHours() < FULL_FROM * setup.capacityMicroampHours()) {
            texts.add(
                    """
                    {event: set-to-full, times: 0,
                         because: "by the log's count the battery never comes to 90 %"}\
                    """);
            return;
        }
        double rearm = REARM_PART * setup.capacityMicroampHours() / WHOLE;
        texts.add(
                """
                {event: set-to-full, at-most: %d, true-state-at-least: 90 %%,
                     because: "2 %% go out between two; the start may be wrong by ten points"}\
                """
                        .formatted((long) (count.outAmpHours() / rearm) + 1));
    }

    /**
     * While the gauge has seen everything, its band holds the truth. After a gap or a restart the
     * band may be unknown; then the count may be wrong by what flowed unseen and by what a full may
     * be wrong by.
     */
    private void spanClaims() {
        List<LogSpan> blind = new ArrayList<>(field.gaps());
        blind.addAll(field.restarts());
        blind.sort(Comparator.comparingLong(LogSpan::fromMillis));
        long end = field.durationMillis();
        long bandEnd = Math.min(bandEnd(), blind.isEmpty() ? end : blind.get(0).fromMillis());
        bandClaim(0, bandEnd);
        long seenUntil = 0;
        double unseen = 0;
        int next = 0;
        List<LogSpan> spans = poweredSpans();
        for (LogSpan span : spans.subList(0, Math.min(spans.size(), MOST_SPANS))) {
            while (next < blind.size() && blind.get(next).fromMillis() < span.toMillis()) {
                LogSpan each = blind.get(next++);
                long from = Math.max(each.fromMillis(), seenUntil);
                unseen += field.throughputMicroampHours(from, Math.max(from, each.toMillis()));
                seenUntil = Math.max(seenUntil, each.toMillis());
            }
            long from = blind.isEmpty() ? bandEnd + 1 : blind.get(0).toMillis();
            countClaim(Math.max(span.fromMillis(), from), span.toMillis(), unseen);
        }
    }

    /**
     * Until when the band must still be a number: it begins with the declared residual of 10 %, is
     * unknown from 40 % on, and here may grow by 15 % each with time and with what flows.
     */
    private long bandEnd() {
        double bandMicroampHours = BAND_GROWTH * setup.capacityMicroampHours();
        long minutes = (long) (60 * bandMicroampHours / BOUND_MICROAMPS);
        long end = Math.min(field.durationMillis(), minutes * MINUTE_MILLIS);
        double flowed = 0;
        for (int row = 0; row + 1 < field.rows() && field.millis(row) < end; row++) {
            flowed += field.throughputMicroampHours(field.millis(row), field.millis(row + 1));
            if (flowed * BOUND_OF_FLOW > bandMicroampHours) {
                return field.millis(row);
            }
        }
        return end;
    }

    /** Stretches in which the gauge has power, from the first sample to the last. */
    private List<LogSpan> poweredSpans() {
        List<LogSpan> spans = new ArrayList<>();
        long from = 0;
        for (LogSpan restart : field.restarts()) {
            spans.add(new LogSpan(from, restart.fromMillis() - 1, 0));
            // The first sample after a restart comes with the next tick.
            from = restart.toMillis() + setup.tickMillis();
        }
        spans.add(new LogSpan(from, field.durationMillis(), 0));
        return spans;
    }

    private void bandClaim(long from, long to) {
        if (hasMinute(from, to)) {
            texts.add(
                    """
                    {throughout: true, to: %s, reading: state-of-charge, within: band, of: truth,
                         because: "it has seen everything, and knows what its count is worth"}\
                    """
                            .formatted(Steps.time(to / MINUTE_MILLIS * MINUTE_MILLIS)));
        }
    }

    private void countClaim(long from, long to, double unseenMicroampHours) {
        double part = FULL_PART + unseenMicroampHours / setup.capacityMicroampHours();
        if (!hasMinute(from, to) || part > HOLLOW_PART) {
            return;
        }
        texts.add(
                """
                {throughout: true, from: %s, to: %s, reading: state-of-charge,
                     within: %s, of: truth,
                     because: "%.2f Ah flowed unseen; a full may be wrong by 6 points"}\
                """
                        .formatted(
                                Steps.time(firstMinute(from)),
                                Steps.time(to / MINUTE_MILLIS * MINUTE_MILLIS),
                                percent(Math.ceil(part * 1_000) / 1_000),
                                unseenMicroampHours / WHOLE));
    }

    private static boolean hasMinute(long from, long to) {
        return firstMinute(from) <= to;
    }

    private static long firstMinute(long from) {
        return (from + MINUTE_MILLIS - 1) / MINUTE_MILLIS * MINUTE_MILLIS;
    }

    private void shownClaims() {
        List<Integer> rows = shownRows(MOST_SHOWN);
        String within =
                QuantityFormat.format(
                        setup.shownTolerancePartsPerMillion(), RecordUnit.PARTS_PER_MILLION);
        for (int row : rows) {
            texts.add(
                    "{at: %s, reading: state-of-charge, within: %s, of: %s, because: \"shown\"}"
                            .formatted(
                                    Steps.time(tickAt(row)),
                                    within,
                                    percent(field.log().shownPercent(row) / 100)));
        }
    }

    /**
     * At most so many rows in which the unit showed something, evenly spread, the last included.
     */
    private List<Integer> shownRows(int most) {
        MeasuredLog log = field.log();
        List<Integer> shown = new ArrayList<>();
        for (int row = 0; row < log.rows(); row++) {
            boolean inside = tickAt(row) > 0 && tickAt(row) <= field.durationMillis();
            if (!Double.isNaN(log.shownPercent(row)) && inside) {
                shown.add(row);
            }
        }
        List<Integer> chosen = new ArrayList<>();
        int count = Math.min(most, shown.size());
        for (int i = 1; i <= count; i++) {
            chosen.add(shown.get((int) ((long) shown.size() * i / count) - 1));
        }
        return chosen;
    }

    /** What the unit showed, for people to read beside the claims. */
    List<String> shownTexts(int most) {
        return shownRows(most).stream()
                .map(
                        row ->
                                "%s: %s"
                                        .formatted(
                                                Steps.time(tickAt(row)),
                                                percent(field.log().shownPercent(row) / 100)))
                .toList();
    }

    /** The first tick boundary at or after a row. */
    private long tickAt(int row) {
        long tick = setup.tickMillis();
        return (field.logMillis(row) + tick - 1) / tick * tick;
    }

    private static String percent(double part) {
        return QuantityFormat.format(Math.round(part * WHOLE), RecordUnit.PARTS_PER_MILLION);
    }

    /** Entries of a list of expectations. */
    List<String> texts() {
        return texts;
    }
}
