package org.gaugebench.sim.explain;

import java.util.List;
import java.util.Set;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.settings.GaugeSettings;

/**
 * One sample that a gauge took, with the registers on both sides of it.
 *
 * @param atMillis simulated time
 * @param settings in force
 * @param shuntCounts as the sample brought them
 * @param voltageCounts as the sample brought them
 * @param millicelsius as the sample brought it
 * @param clockMillis raw, 32 bits
 * @param first whether it is the first one since power came up
 * @param before registers before, by ordinal
 * @param after registers after, by ordinal
 * @param events what the gauge announced meanwhile
 * @param minutes the whole minutes that ended in it
 * @param underWay the minute under way when it came
 * @param provenBefore whether full was proven when it came
 * @param inCarryPicojoules energy in that was no whole microjoule yet
 * @param outCarryPicojoules energy out that was no whole microjoule yet
 */
record Tick(
        long atMillis,
        GaugeSettings settings,
        int shuntCounts,
        int voltageCounts,
        int millicelsius,
        int clockMillis,
        boolean first,
        Seen before,
        Seen after,
        Set<Event> events,
        List<Minute> minutes,
        Minute underWay,
        boolean provenBefore,
        long inCarryPicojoules,
        long outCarryPicojoules) {
    static final int LONGEST_MILLIS = 65_535;

    /** Modulo 2^32, read as signed; 0 for the first one. */
    long elapsedMillis() {
        return first ? 0 : clockMillis - (int) before(Register.CLOCK_MILLIS);
    }

    boolean isRepeated() {
        return !first && elapsedMillis() == 0;
    }

    boolean isMissed() {
        return elapsedMillis() < 0 || elapsedMillis() > LONGEST_MILLIS;
    }

    boolean isCounted() {
        return elapsedMillis() > 0 && !isMissed();
    }

    long before(Register register) {
        return before.get(register);
    }

    long after(Register register) {
        return after.get(register);
    }
}
