package org.gaugebench.sim.logs;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.zone.ZoneOffsetTransition;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.gaugebench.sim.units.Texts;
import org.jspecify.annotations.Nullable;

/**
 * Reads the time column: decimal seconds, or ISO 8601 date-times with an offset or in a named zone.
 * The first cell decides which of the two the file has.
 *
 * <p>In the hour that a zone repeats when clocks go back, a row is given the first of the two
 * instants that does not lie before the row above it; so a log that runs through the night comes
 * out in order.
 */
final class TimeCells {
    private static final Pattern DATE_TIME =
            Pattern.compile(
                    "([0-9]{4}-[0-9]{2}-[0-9]{2})[T ]([0-9]{2}:[0-9]{2}(?::[0-9]{2})?)"
                            + "(?:[.,]([0-9]{1,9})[0-9]*)? ?(Z|[+-][0-9]{2}(?::?[0-9]{2})?)?");
    private static final BigDecimal NANOS_PER_SECOND = BigDecimal.valueOf(1_000_000_000);

    /** 285 years: nanoseconds on either side of zero fit 63 bits. */
    private static final BigDecimal LONGEST_SECONDS = BigDecimal.valueOf(9_000_000_000L);

    private final NumberCells numbers;
    private final @Nullable ZoneId zone;
    private final List<String> notes = new ArrayList<>();
    private @Nullable Boolean dates;
    private @Nullable ZoneOffset lastOffset;
    private long lastNanos = Long.MIN_VALUE;
    private int lastLine;

    TimeCells(NumberCells numbers, @Nullable ZoneId zone) {
        this.numbers = numbers;
        this.zone = zone;
    }

    /** Whether a cell has the form of a time. */
    static boolean isTime(String cell) {
        return NumberCells.isNumber(cell) || DATE_TIME.matcher(cell).matches();
    }

    /** What was noticed: the clock changes. */
    List<String> notes() {
        return notes;
    }

    /** Whether the file has date-times. */
    boolean hasDates() {
        return Boolean.TRUE.equals(dates);
    }

    /** Reads a cell: nanoseconds from an origin that is the same for the whole file. */
    long nanos(String cell, int line) throws CellException {
        if (dates == null) {
            dates = !NumberCells.isNumber(cell);
        }
        long nanos = dates ? dateNanos(cell, line) : secondNanos(cell);
        lastNanos = nanos;
        lastLine = line;
        return nanos;
    }

    private long secondNanos(String cell) throws CellException {
        BigDecimal seconds = numbers.exact(cell);
        if (seconds.abs().compareTo(LONGEST_SECONDS) > 0) {
            throw new CellException("'" + cell + "' s is beyond 285 years; is the unit seconds?");
        }
        return seconds.multiply(NANOS_PER_SECOND)
                .setScale(0, RoundingMode.HALF_UP)
                .longValueExact();
    }

    private long dateNanos(String cell, int line) throws CellException {
        Matcher matcher = DATE_TIME.matcher(cell);
        if (!matcher.matches()) {
            throw new CellException(
                    "'"
                            + Texts.shortened(cell)
                            + "' is not a time; expected seconds such as 12.5, or a date-time"
                            + " such as 2026-03-29T01:59:30+01:00");
        }
        String fraction = matcher.group(3) == null ? "" : "." + matcher.group(3);
        String clock = matcher.group(2).length() == 5 ? matcher.group(2) + ":00" : matcher.group(2);
        try {
            LocalDateTime local = LocalDateTime.parse(matcher.group(1) + "T" + clock + fraction);
            ZoneOffset offset =
                    matcher.group(4) == null
                            ? offsetInZone(local, line)
                            : ZoneOffset.of(matcher.group(4));
            noteChange(offset, line);
            return nanosOf(local, offset);
        } catch (DateTimeException | ArithmeticException e) {
            throw new CellException("'" + cell + "' is no date and time that exists");
        }
    }

    private static long nanosOf(LocalDateTime local, ZoneOffset offset) {
        Instant instant = local.toInstant(offset);
        return Math.addExact(
                Math.multiplyExact(instant.getEpochSecond(), 1_000_000_000L), instant.getNano());
    }

    private ZoneOffset offsetInZone(LocalDateTime local, int line) throws CellException {
        if (zone == null) {
            throw new CellException(
                    "the date-time has no offset; give its time zone, such as"
                            + " --zone Europe/Amsterdam or --zone UTC");
        }
        List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
        if (offsets.isEmpty()) {
            ZoneOffsetTransition change = zone.getRules().getTransition(local);
            throw new CellException(
                    local
                            + " does not exist in "
                            + zone
                            + ": clocks went from "
                            + change.getDateTimeBefore()
                            + " to "
                            + change.getDateTimeAfter());
        }
        if (offsets.size() == 1) {
            return offsets.get(0);
        }
        if (lastNanos == Long.MIN_VALUE) {
            notes.add(
                    "row "
                            + line
                            + ": "
                            + local
                            + " happens twice in "
                            + zone
                            + "; taken as the first, "
                            + offsets.get(0));
        }
        return nanosOf(local, offsets.get(0)) >= lastNanos ? offsets.get(0) : offsets.get(1);
    }

    private void noteChange(ZoneOffset offset, int line) {
        if (lastOffset != null && !lastOffset.equals(offset)) {
            notes.add(
                    "clock change between rows "
                            + lastLine
                            + " and "
                            + line
                            + ": offset "
                            + lastOffset
                            + " to "
                            + offset
                            + (zone == null ? "" : " (" + zone + ")"));
        }
        lastOffset = offset;
    }
}
