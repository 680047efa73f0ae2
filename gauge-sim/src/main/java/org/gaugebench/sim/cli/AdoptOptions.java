package org.gaugebench.sim.cli;

import java.util.List;
import org.gaugebench.sim.adopt.AdoptSetup;
import org.gaugebench.sim.adopt.AdoptSetup.GapCurrent;
import org.gaugebench.sim.logs.Hold;
import org.gaugebench.sim.logs.LogColumns;
import org.gaugebench.sim.logs.LogOptions.CurrentUnit;
import org.gaugebench.sim.scenario.Chemistry;
import org.gaugebench.sim.units.CapacityRating;
import org.gaugebench.sim.units.ConverterRange;
import org.gaugebench.sim.units.Quantity;
import org.gaugebench.sim.units.RecordUnit;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** What a log does not say of its unit and battery, as options of {@code adopt}. */
final class AdoptOptions {
    private static final String UNSAID = ", which the log does not say";
    private static final int WHOLE = 1_000_000;
    private static final long LONGEST_TICK_MILLIS = 60_000;
    private static final long LONGEST_GAP_MILLIS = 366L * 86_400_000;

    @Option(
            names = "--current-unit",
            converter = ReplayWords.LogUnitWord.class,
            paramLabel = "A|mA|counts",
            description = "unit of the current column; counts need --adc (default: A)")
    private ReplayWords.@Nullable LogUnit currentUnit;

    @Option(
            names = "--uptime",
            paramLabel = "COLUMN",
            description = "column of seconds since the unit was powered up; tells its restarts")
    private @Nullable String uptime;

    @Option(
            names = "--shown",
            paramLabel = "COLUMN",
            description = "column of the percent that the unit showed; cells may be empty")
    private @Nullable String shown;

    @Option(
            names = "--claim-shown",
            paramLabel = "PERCENT",
            description = "claim that a gauge shows what the unit showed, to within so much")
    private @Nullable String claimShown;

    @Option(
            names = "--gap",
            defaultValue = "15 min",
            paramLabel = "TIME",
            description = "a longer step between rows is a gap (default: ${DEFAULT-VALUE})")
    private String gap = "";

    @Option(
            names = "--gap-current",
            converter = ReplayWords.GapCurrentWord.class,
            paramLabel = "zero|before",
            description = "what flowed in a gap of which the log says nothing")
    private @Nullable GapCurrent gapCurrent;

    @Option(names = "--chemistry", paramLabel = "WORD", description = "such as lead-acid-agm")
    private @Nullable String chemistry;

    @Option(
            names = "--nominal-voltage",
            defaultValue = "12 V",
            paramLabel = "VOLTAGE",
            description = "12, 24, 36 or 48 V (default: ${DEFAULT-VALUE})")
    private String nominal = "";

    @Option(
            names = "--capacity",
            paramLabel = "CHARGE",
            description = "printed on the battery, such as \"60 Ah\"")
    private @Nullable String capacity;

    @Option(
            names = "--start",
            paramLabel = "PERCENT",
            description = "true state of charge at the first row, as well as you know it")
    private @Nullable String start;

    @Option(
            names = "--efficiency",
            paramLabel = "PERCENT",
            description = "part of the charge put in that comes out again (default: as usual)")
    private @Nullable String efficiency;

    @Option(
            names = "--absorption",
            paramLabel = "VOLTAGE",
            description = "the charger's set voltage as told to the gauge (default: as usual)")
    private @Nullable String absorption;

    @Option(
            names = "--shunt",
            paramLabel = "RATING",
            description = "rating of the unit's shunt, such as \"50 A / 75 mV\"")
    private @Nullable String shunt;

    @Option(
            names = "--adc",
            paramLabel = "RANGE",
            description = "width and full scale of its converter (default: 20 bit, 100 mV)")
    private @Nullable String adc;

    @Option(
            names = "--tick",
            defaultValue = "1 s",
            paramLabel = "TIME",
            description = "length of a tick, 1 ms to 60 s (default: ${DEFAULT-VALUE})")
    private String tick = "";

    /** All columns, with those that only a log of a unit has. */
    LogColumns columns(LogColumnOptions common) {
        return common.columns(uptime, shown);
    }

    /** The unit as a log is read; counts are read as they stand. */
    @Nullable CurrentUnit currentUnit() {
        if (currentUnit == null) {
            return null;
        }
        return currentUnit == ReplayWords.LogUnit.MA ? CurrentUnit.MA : CurrentUnit.A;
    }

    /** What is told, or null with messages in the list. */
    @Nullable AdoptSetup setup(String name, Hold hold, List<String> wrong) {
        QuantityArguments arguments = new QuantityArguments(wrong);
        Chemistry kind =
                arguments.needed(
                        "--chemistry",
                        chemistry,
                        "what battery it is" + UNSAID,
                        "lead-acid-agm",
                        QuantityArguments::chemistry);
        Long microampHours =
                arguments.needed(
                        "--capacity",
                        capacity,
                        "what is printed on the battery" + UNSAID,
                        "\"60 Ah\"",
                        it -> CapacityRating.parse(it, RecordUnit.MICROAMP_HOURS));
        Long parts =
                arguments.needed(
                        "--start",
                        start,
                        "the true state of charge at the first row" + UNSAID,
                        "\"80 %\"",
                        it -> Quantity.parse(it, RecordUnit.PARTS_PER_MILLION));
        ShuntRating rating =
                arguments.needed(
                        "--shunt",
                        shunt,
                        "the unit's shunt" + UNSAID,
                        "\"50 A / 75 mV\"",
                        ShuntRating::parse);
        ConverterRange range = arguments.optional("--adc", adc, ConverterRange::parse);
        boolean counts = currentUnit == ReplayWords.LogUnit.COUNTS;
        if (counts && adc == null) {
            wrong.add("--adc is missing: a current in counts needs it, such as \"20 bit, 100 mV\"");
        }
        long volts =
                arguments.limited(
                        "--nominal-voltage",
                        nominal,
                        RecordUnit.MICROVOLTS,
                        12_000_000,
                        48_000_000,
                        "12 V, 24 V, 36 V or 48 V",
                        0);
        if (volts % 12_000_000 != 0) {
            wrong.add(
                    "--nominal-voltage: expected 12 V, 24 V, 36 V or 48 V, found '"
                            + nominal
                            + "'");
        }
        long tolerance =
                arguments.limited(
                        "--claim-shown",
                        claimShown,
                        RecordUnit.PARTS_PER_MILLION,
                        1,
                        WHOLE,
                        "a tolerance such as \"5 %\"",
                        0);
        if (claimShown != null && shown == null) {
            wrong.add("--claim-shown: needs --shown COLUMN, such as --shown shown_percent");
        }
        long stored =
                arguments.limited(
                        "--efficiency",
                        efficiency,
                        RecordUnit.PARTS_PER_MILLION,
                        WHOLE / 2,
                        WHOLE,
                        "50 % to 100 %",
                        0);
        long set =
                arguments.limited(
                        "--absorption",
                        absorption,
                        RecordUnit.MICROVOLTS,
                        1_000_000,
                        100_000_000,
                        "a voltage such as \"14.4 V\"",
                        0);
        long tickMillis =
                arguments.limited(
                        "--tick",
                        tick,
                        RecordUnit.MILLIS,
                        1,
                        LONGEST_TICK_MILLIS,
                        "1 ms to 60 s",
                        0);
        long gapMillis =
                arguments.limited(
                        "--gap",
                        gap,
                        RecordUnit.MILLIS,
                        1,
                        LONGEST_GAP_MILLIS,
                        "a time such as \"15 min\"",
                        0);
        if (microampHours != null && (microampHours < 100_000 || microampHours > 10_000_000_000L)) {
            wrong.add("--capacity: expected 0.1 Ah to 10000 Ah, but found '" + capacity + "'");
        }
        if (parts != null && (parts < 0 || parts > WHOLE)) {
            wrong.add("--start: expected 0 % to 100 %, but found '" + start + "'");
        }
        if (!wrong.isEmpty()
                || kind == null
                || microampHours == null
                || parts == null
                || rating == null) {
            return null;
        }
        return new AdoptSetup(
                name,
                kind,
                (int) (volts / 1_000_000),
                microampHours,
                parts,
                stored,
                rating,
                range,
                counts,
                set,
                tickMillis,
                hold,
                gapMillis,
                gapCurrent,
                tolerance);
    }
}
