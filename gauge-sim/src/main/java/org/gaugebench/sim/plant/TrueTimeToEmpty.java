package org.gaugebench.sim.plant;

import java.util.List;
import org.gaugebench.sim.scenario.Change;

/**
 * How long the battery really lasts from here, found by running a copy of the plant forward. Two
 * figures, for two questions: with the present load held, and as the scenario goes on.
 *
 * <p>The end is the first step in which the loads ask for more than there is, be the charge drawn
 * or the protection circuit open. It is met to a second, or to the tick where that is longer.
 */
public final class TrueTimeToEmpty {
    /** Nothing runs empty within the horizon. */
    public static final long NEVER = Long.MAX_VALUE;

    /** As long as anybody asks for: 100 days. */
    static final long HORIZON_MILLIS = 100 * 86_400_000L;

    private static final int LONG_STEP_MILLIS = 60_000;
    private static final int SHORT_STEP_MILLIS = 1_000;

    private TrueTimeToEmpty() {}

    /**
     * Time to empty if the battery's mean current over the last step is held, all chargers off.
     *
     * @param plant is not changed
     * @return milliseconds, or {@link #NEVER} where the battery is not discharging or lasts longer
     *     than 100 days
     */
    public static long withPresentLoadHeld(Circuit plant) {
        double amps = -plant.meanCurrentAmps();
        return amps > 0 ? withCurrentHeld(plant, amps) : NEVER;
    }

    /**
     * Time to empty at a constant current, all chargers off.
     *
     * @param plant is not changed
     * @param amps drawn, at least a microamp
     */
    public static long withCurrentHeld(Circuit plant, double amps) {
        Circuit ahead = plant.withOneLoad(amps);
        long start = ahead.timeMillis();
        // Minutes until starved, then seconds from the hour before: a protection circuit may have
        // opened in a minute before the one that starves.
        Circuit earlier = ahead.copy();
        Circuit hour = earlier;
        for (long minute = 0; ahead.timeMillis() - start < HORIZON_MILLIS; minute++) {
            if (minute % 60 == 0) {
                earlier = hour;
                hour = ahead.copy();
            }
            ahead.step(LONG_STEP_MILLIS);
            if (ahead.isStarved()) {
                return untilStarved(earlier) - start;
            }
        }
        return NEVER;
    }

    private static long untilStarved(Circuit plant) {
        long end = plant.timeMillis();
        do {
            end = plant.timeMillis();
            plant.step(SHORT_STEP_MILLIS);
        } while (!plant.isStarved());
        return end;
    }

    /**
     * Time until the loads are not met for the first time, as the scenario goes on.
     *
     * @param plant is not changed
     * @param changes of the scenario that are still to come, in order of time; those due by now
     *     come before the first step, those that the plant does not own are passed over
     * @param endMillis of the scenario
     * @param tickMillis of the scenario
     * @return milliseconds from now, or {@link #NEVER} where the loads are met to the end
     */
    public static long asTheScenarioGoesOn(
            Circuit plant, List<Change> changes, long endMillis, int tickMillis) {
        Circuit ahead = plant.copy();
        long start = ahead.timeMillis();
        int next = 0;
        while (ahead.timeMillis() < endMillis) {
            long before = ahead.timeMillis();
            while (next < changes.size() && changes.get(next).atMillis() <= before) {
                ahead.apply(changes.get(next));
                next++;
            }
            ahead.step(tickMillis);
            if (ahead.isStarved()) {
                return before - start;
            }
        }
        return NEVER;
    }
}
