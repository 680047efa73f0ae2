package org.gaugebench.sim.cli;

import org.gaugebench.sim.adopt.AdoptSetup.GapCurrent;
import org.gaugebench.sim.logs.Hold;
import org.gaugebench.sim.logs.LogOptions.CurrentUnit;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * The words that some options of {@code replay} and {@code adopt} take, so that they read the same
 * whether or not the command line at large tells upper from lower case.
 */
final class ReplayWords {
    private ReplayWords() {}

    /** Directions a current can have. */
    enum Direction {
        /** Into the battery. */
        CHARGE,
        /** Out of the battery. */
        DISCHARGE
    }

    /** charge or discharge. */
    static final class DirectionWord implements ITypeConverter<Direction> {
        @Override
        public Direction convert(String word) {
            return switch (word) {
                case "charge" -> Direction.CHARGE;
                case "discharge" -> Direction.DISCHARGE;
                default -> throw unknown(word, "charge or discharge");
            };
        }
    }

    /** next, previous or linear. */
    static final class HoldWord implements ITypeConverter<Hold> {
        @Override
        public Hold convert(String word) {
            return switch (word) {
                case "next" -> Hold.NEXT;
                case "previous" -> Hold.PREVIOUS;
                case "linear" -> Hold.LINEAR;
                default -> throw unknown(word, "next, previous or linear");
            };
        }
    }

    /** A or mA; upper and lower case differ, for MA would be megaamps. */
    static final class UnitWord implements ITypeConverter<CurrentUnit> {
        @Override
        public CurrentUnit convert(String word) {
            return switch (word) {
                case "A" -> CurrentUnit.A;
                case "mA" -> CurrentUnit.MA;
                default -> throw unknown(word, "A or mA");
            };
        }
    }

    /** Units that a log of the field can have its current in. */
    enum LogUnit {
        /** Amps. */
        A,
        /** Milliamps. */
        MA,
        /** Counts of the unit's converter. */
        COUNTS
    }

    /** A, mA or counts. */
    static final class LogUnitWord implements ITypeConverter<LogUnit> {
        @Override
        public LogUnit convert(String word) {
            return switch (word) {
                case "A" -> LogUnit.A;
                case "mA" -> LogUnit.MA;
                case "counts" -> LogUnit.COUNTS;
                default -> throw unknown(word, "A, mA or counts");
            };
        }
    }

    /** zero or before. */
    static final class GapCurrentWord implements ITypeConverter<GapCurrent> {
        @Override
        public GapCurrent convert(String word) {
            return switch (word) {
                case "zero" -> GapCurrent.ZERO;
                case "before" -> GapCurrent.BEFORE;
                default -> throw unknown(word, "zero or before");
            };
        }
    }

    private static TypeConversionException unknown(String word, String expected) {
        return new TypeConversionException("expected " + expected + ", but found '" + word + "'");
    }
}
