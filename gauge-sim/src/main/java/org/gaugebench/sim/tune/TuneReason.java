package org.gaugebench.sim.tune;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Why a setting stands where it stands.
 *
 * @param setting which, and its safe range
 * @param value chosen
 * @param profile every step of the safe range with all other settings as chosen, rising
 * @param lower the nearest step below it with another number of false or missed fulls, else the
 *     nearest with another error; null where none makes a difference
 * @param higher the same above it
 */
public record TuneReason(
        TunedSetting setting,
        long value,
        List<Step> profile,
        @Nullable Step lower,
        @Nullable Step higher) {

    /**
     * Another value of this setting, all others as chosen.
     *
     * @param value the other one
     * @param score what it comes to
     */
    public record Step(long value, TuneScore score) {}

    /** Whether nothing else in the safe range comes to anything else. */
    public boolean isIndifferent() {
        return lower == null && higher == null;
    }
}
