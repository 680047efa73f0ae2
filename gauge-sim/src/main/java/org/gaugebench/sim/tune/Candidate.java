package org.gaugebench.sim.tune;

import java.util.ArrayList;
import java.util.List;

/**
 * Values for the searched settings.
 *
 * @param values one for each setting, in the order of {@link SafeLimits#of}
 */
public record Candidate(List<Long> values) implements Comparable<Candidate> {

    /** The value of a setting, by its place. */
    public long value(int index) {
        return values.get(index);
    }

    Candidate with(int index, long value) {
        List<Long> changed = new ArrayList<>(values);
        changed.set(index, value);
        return new Candidate(List.copyOf(changed));
    }

    /** Whether every value may be recommended. */
    boolean isSafe(List<TunedSetting> settings) {
        for (int i = 0; i < settings.size(); i++) {
            if (!settings.get(i).isSafe(value(i))) {
                return false;
            }
        }
        return true;
    }

    /** How many settings differ from the preset, and then how far. */
    long distance(List<TunedSetting> settings) {
        long distance = 0;
        for (int i = 0; i < settings.size(); i++) {
            long own = settings.get(i).distance(value(i));
            distance += own + (value(i) == settings.get(i).preset() ? 0 : 1_000_000);
        }
        return distance;
    }

    @Override
    public int compareTo(Candidate other) {
        for (int i = 0; i < values.size(); i++) {
            int order = Long.compare(value(i), other.value(i));
            if (order != 0) {
                return order;
            }
        }
        return 0;
    }
}
