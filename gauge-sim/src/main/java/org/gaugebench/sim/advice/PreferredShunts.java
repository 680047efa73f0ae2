package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;

/**
 * Ratings that a shop has: rated currents in preferred steps, rated drops of 50, 75 and 100 mV (US
 * trade) and 60 and 150 mV (DIN 43703, which starts at 60 mV). Currents: common practice, no
 * source.
 */
final class PreferredShunts {
    private static final int[] RATED_AMPS = {50, 100, 150, 200, 300, 500, 1_000};
    private static final long MICRO = 1_000_000;

    /** Proposed where no shunt is there yet: the middle one of the usual drops. */
    static final long USUAL_MICROVOLTS = 75_000;

    private PreferredShunts() {}

    /**
     * The smallest one that carries the peak, and the steady current with two thirds of its rating.
     *
     * @return null if none in a shop is large enough
     */
    static @Nullable ShuntRating smallestFor(
            double peakAmps, double steadyAmps, long ratedMicrovolts) {
        for (int rated : RATED_AMPS) {
            if (peakAmps <= rated && Sizing.carriesForHours(rated, steadyAmps)) {
                return new ShuntRating(rated * MICRO, ratedMicrovolts);
            }
        }
        return null;
    }

    /** Every one of a shop, the usual drops first. */
    static List<ShuntRating> all() {
        List<ShuntRating> all = new ArrayList<>();
        for (long drop : new long[] {75_000, 50_000, 60_000, 100_000, 150_000}) {
            for (int rated : RATED_AMPS) {
                all.add(new ShuntRating(rated * MICRO, drop));
            }
        }
        return all;
    }

    /** The next smaller one, the one itself, the next larger one, as far as there are such. */
    static List<ShuntRating> around(ShuntRating middle) {
        List<ShuntRating> found = new ArrayList<>();
        for (int i = RATED_AMPS.length - 1; i >= 0; i--) {
            if (RATED_AMPS[i] * MICRO < middle.microamps()) {
                found.add(new ShuntRating(RATED_AMPS[i] * MICRO, middle.microvolts()));
                break;
            }
        }
        found.add(middle);
        for (int rated : RATED_AMPS) {
            if (rated * MICRO > middle.microamps()) {
                found.add(new ShuntRating(rated * MICRO, middle.microvolts()));
                break;
            }
        }
        return found;
    }
}
