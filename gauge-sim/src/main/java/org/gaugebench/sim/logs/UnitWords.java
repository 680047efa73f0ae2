package org.gaugebench.sim.logs;

import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.gaugebench.sim.logs.LogOptions.CurrentUnit;
import org.jspecify.annotations.Nullable;

/**
 * What a header or a row of units says about units. A unit that contradicts what the reader was
 * told is refused: a factor of a thousand must not pass in silence.
 */
final class UnitWords {
    private static final Pattern LAST_WORD = Pattern.compile("([A-Za-zµμ%°]+)[])]?$");
    private static final Set<String> SECONDS = Set.of("s", "sec", "second", "seconds");
    private static final Set<String> OTHER_TIMES =
            Set.of("ms", "min", "minute", "minutes", "h", "hr", "hour", "hours", "us", "µs", "d");

    private UnitWords() {}

    /** The unit at the end of "current_mA", "I [mA]" or "(mA)"; empty where there is none. */
    static String unitIn(String text) {
        Matcher matcher = LAST_WORD.matcher(text.strip());
        return matcher.find() ? matcher.group(1) : "";
    }

    /** What is wrong with the unit of the current, or null. */
    static @Nullable String wrongCurrent(String text, @Nullable CurrentUnit told) {
        String unit = unitIn(text);
        boolean milli = unit.equals("mA");
        if (milli && told == null) {
            return "'"
                    + text
                    + "' speaks of milliamps; say --current-unit mA (or A, if it is amps)";
        }
        if (unit.equals("µA") || unit.equals("uA") || unit.equals("kA")) {
            return "'" + text + "': currents are read in A or mA; convert the column";
        }
        return null;
    }

    /** What is wrong with a unit cell of the current column, or null. */
    static @Nullable String wrongCurrentCell(String cell, @Nullable CurrentUnit told) {
        String opposite = told == CurrentUnit.MA ? "A" : "mA";
        if (told != null && unitIn(cell).equals(opposite)) {
            return "the row of units says '" + cell + "', --current-unit says otherwise";
        }
        return wrongCurrent(cell, told);
    }

    /** What is wrong with the unit of the time, or null. */
    static @Nullable String wrongTime(String cell) {
        String unit = unitIn(cell).toLowerCase(Locale.ROOT);
        return OTHER_TIMES.contains(unit) && !SECONDS.contains(unit)
                ? "time is read in seconds or as date-times, not in '" + cell + "'"
                : null;
    }

    /** What is wrong with a voltage, temperature or counter unit, or null. */
    static @Nullable String wrongOther(String cell, String expected, Set<String> refused) {
        return refused.contains(unitIn(cell))
                ? "'" + cell + "': this column is read in " + expected
                : null;
    }
}
