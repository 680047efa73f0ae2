package org.gaugebench.sim.scenario;

import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;

/**
 * How battery, shunt, gauge and bus are really wired. {@link #RIGHT} is as it should be.
 *
 * @param shuntReversed whether the shunt sits the wrong way round in its cable
 * @param senseLeads where the two leads from the shunt to the gauge end
 * @param lugMicroohms resistance between shunt and lugs that the leads take in; 0 for leads on the
 *     shunt's own screws
 * @param jointMicroohms resistance of cable and joints between battery and bus, shunt excepted
 * @param voltageAtBattery whether the voltage leads are on the battery's terminals, not on the bus
 * @param ownSupplyMicroamps what the gauge draws for itself from the battery side of the shunt
 * @param parallelPartsPerMillion part of the shunt's current that a second path takes round it
 * @param pastShunt by name of a load or charger: part of its current, parts per million, that joins
 *     the battery side and never crosses the shunt; in order of names, none of them 0
 */
public record WiringSpec(
        boolean shuntReversed,
        Leads senseLeads,
        long lugMicroohms,
        long jointMicroohms,
        boolean voltageAtBattery,
        long ownSupplyMicroamps,
        long parallelPartsPerMillion,
        Map<String, Long> pastShunt) {

    /** Nothing wrong: all current crosses the shunt, and the gauge draws nothing. */
    public static final WiringSpec RIGHT =
            new WiringSpec(false, Leads.RIGHT, 0, 0, false, 0, 0, Map.of());

    private static final String PAST = "past-shunt.";

    /** Where the two leads from the shunt to the gauge end. */
    public enum Leads {
        /** As they should. */
        RIGHT("right"),
        /** One in the place of the other. */
        SWAPPED("swapped"),
        /** One is off, and the input is pulled to zero. */
        OPEN("open"),
        /** One is off, and the input floats to its upper rail. */
        OPEN_HIGH("open-high"),
        /** One is off, and the input floats to its lower rail. */
        OPEN_LOW("open-low");

        private final String key;

        Leads(String key) {
            this.key = key;
        }

        /** The word in a scenario. */
        public String key() {
            return key;
        }
    }

    /** Sorts the names and forgets parts of 0, so that equal wirings are equal. */
    public WiringSpec {
        Map<String, Long> sorted = new TreeMap<>(pastShunt);
        sorted.values().removeIf(part -> part == 0);
        pastShunt = Collections.unmodifiableMap(sorted);
    }

    /** Part of a load's or charger's current that never crosses the shunt, parts per million. */
    public long pastShunt(String name) {
        return pastShunt.getOrDefault(name, 0L);
    }

    /** One value by its key below "wiring"; a word is its place in the list of words. */
    public long get(String key) {
        return switch (key) {
            case "shunt" -> shuntReversed ? 1 : 0;
            case "sense-leads" -> senseLeads.ordinal();
            case "lug-resistance" -> lugMicroohms;
            case "joint-resistance" -> jointMicroohms;
            case "voltage-sense" -> voltageAtBattery ? 1 : 0;
            case "own-supply" -> ownSupplyMicroamps;
            case "parallel-path" -> parallelPartsPerMillion;
            default -> pastShunt(key.substring(PAST.length()));
        };
    }

    /** The same wiring with one value changed, by its key below "wiring". */
    public WiringSpec with(String key, long value) {
        Map<String, Long> past = new TreeMap<>(pastShunt);
        if (key.startsWith(PAST)) {
            past.put(key.substring(PAST.length()), value);
        }
        return new WiringSpec(
                key.equals("shunt") ? value != 0 : shuntReversed,
                key.equals("sense-leads") ? Leads.values()[(int) value] : senseLeads,
                key.equals("lug-resistance") ? value : lugMicroohms,
                key.equals("joint-resistance") ? value : jointMicroohms,
                key.equals("voltage-sense") ? value != 0 : voltageAtBattery,
                key.equals("own-supply") ? value : ownSupplyMicroamps,
                key.equals("parallel-path") ? value : parallelPartsPerMillion,
                past);
    }

    /** A wiring with this one's joint and nothing else: what a load alone at the battery meets. */
    public WiringSpec jointAlone() {
        return new WiringSpec(false, Leads.RIGHT, 0, jointMicroohms, false, 0, 0, Map.of());
    }
}
