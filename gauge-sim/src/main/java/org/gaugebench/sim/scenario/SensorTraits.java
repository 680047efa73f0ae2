package org.gaugebench.sim.scenario;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;

/**
 * What a scenario says of a sensor beyond the plain model.
 *
 * @param values those that are not as usual, each in the unit of its trait
 */
public record SensorTraits(Map<SensorTrait, Long> values) {
    /** Nothing beyond the plain model. */
    public static final SensorTraits NONE = new SensorTraits(Map.of());

    /** Keeps a copy, in the order of the table, without what is as usual. */
    public SensorTraits {
        Map<SensorTrait, Long> kept = new EnumMap<>(SensorTrait.class);
        values.forEach(
                (trait, value) -> {
                    if (value != trait.usual()) {
                        kept.put(trait, value);
                    }
                });
        values = Collections.unmodifiableMap(kept);
    }

    /** The value of one trait, in its unit. */
    public long get(SensorTrait trait) {
        return Objects.requireNonNullElse(values.get(trait), trait.usual());
    }

    /** Whether one of some traits is not as usual. */
    public boolean hasAny(SensorTrait... several) {
        boolean any = false;
        for (SensorTrait trait : several) {
            any |= values.containsKey(trait);
        }
        return any;
    }

    /** The same with another value. */
    public SensorTraits with(SensorTrait trait, long value) {
        Map<SensorTrait, Long> changed = new EnumMap<>(SensorTrait.class);
        changed.putAll(values);
        changed.put(trait, value);
        return new SensorTraits(changed);
    }

    static SensorTraits read(Block block) {
        Map<SensorTrait, Long> read = new EnumMap<>(SensorTrait.class);
        for (SensorTrait trait : SensorTrait.values()) {
            read.put(trait, read(block, trait.key(), trait));
        }
        return new SensorTraits(read);
    }

    /** One value, under its own key or another one that means it. */
    static long read(Block block, String key, SensorTrait trait) {
        return block.quantity(key, trait.unit(), trait.minimum(), trait.maximum(), trait.usual());
    }

    void write(Lines lines) {
        values.forEach(
                (trait, value) -> lines.quantity(trait.key(), trait.unit(), value, trait.usual()));
    }
}
