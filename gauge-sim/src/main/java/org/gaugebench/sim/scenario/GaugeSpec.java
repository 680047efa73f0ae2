package org.gaugebench.sim.scenario;

import org.gaugebench.core.settings.GaugeSettings;

/**
 * A gauge under test on the scenario's truth.
 *
 * @param name as the scenario calls it; the first gauge is called "gauge"
 * @param kind what it is
 * @param settings what its installer told it
 * @param declaredPartsPerMillion state of charge declared at the start, or -1 for unknown
 * @param power what becomes of it when its power goes
 */
public record GaugeSpec(
        String name,
        Kind kind,
        GaugeSettings settings,
        long declaredPartsPerMillion,
        PowerSpec power) {

    /** What a gauge can be. */
    public enum Kind {
        /** The core of this project. */
        CORE("core"),
        /** An exact counter with no rule: counts from what was declared, and never corrects. */
        PLAIN_COUNTER("plain-counter");

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
