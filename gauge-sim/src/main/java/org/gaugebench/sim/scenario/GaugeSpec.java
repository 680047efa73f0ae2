package org.gaugebench.sim.scenario;

import java.util.Set;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * A gauge under test on the scenario's truth.
 *
 * @param name as the scenario calls it; the first gauge is called "gauge"
 * @param kind what it is
 * @param settings what its installer told it
 * @param declaredPartsPerMillion state of charge declared at the start, or -1 for unknown
 * @param power what becomes of it when its power goes
 * @param clock its machine's millisecond counter
 * @param mistakes that an exhibit makes; empty for the other kinds
 */
public record GaugeSpec(
        String name,
        Kind kind,
        GaugeSettings settings,
        long declaredPartsPerMillion,
        PowerSpec power,
        ClockSpec clock,
        Set<Mistake> mistakes) {

    /** Whether it can be told another value of a setting while it runs. */
    boolean takes(Setting setting) {
        boolean capacity = setting == Setting.CAPACITY;
        return switch (kind) {
            case CORE -> true;
            case PLAIN_COUNTER -> capacity;
            case EXHIBIT ->
                    capacity || (setting == Setting.COULOMBIC_EFFICIENCY && usesEfficiency());
        };
    }

    private boolean usesEfficiency() {
        return mistakes.contains(Mistake.EFFICIENCY_PER_SAMPLE)
                || mistakes.contains(Mistake.EFFICIENCY_ON_TOTALS);
    }

    /** What a gauge can be. */
    public enum Kind {
        /** The core of this project. */
        CORE("core"),
        /** An exact counter with no rule: counts from what was declared, and never corrects. */
        PLAIN_COUNTER("plain-counter"),
        /** A counter that makes the mistakes it is given by name, and no others. */
        EXHIBIT("exhibit");

        private final String key;

        Kind(String key) {
            this.key = key;
        }

        /** The name in scenario files. */
        public String key() {
            return key;
        }
    }
}
