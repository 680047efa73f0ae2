package org.gaugebench.sim.scenario;

/**
 * One change of the timeline, already spread out: repeats and windows are several changes.
 *
 * @param atMillis when, from the start
 * @param target which part owns it
 * @param name of the load or charger or gauge, or the key of the wiring; empty for the others
 * @param value the new value: 1 for on, open or forced, 0 for off, closed or automatic; else
 *     microamps, microwatts, microohms, millicelsius, nanovolts or parts per million by target
 */
public record Change(long atMillis, Target target, String name, long value) {

    /** The part that owns the changed value. */
    public enum Target {
        /** A load on (1) or off (0). */
        LOAD_SWITCH,
        /** A load's amount, in the unit of its kind. */
        LOAD_AMOUNT,
        /** A charger on (1) or off (0). */
        CHARGER_SWITCH,
        /** The isolator between battery and everything else: open (1) or closed (0). */
        ISOLATOR,
        /** The battery's protection circuit: forced open (1) or automatic (0). */
        PROTECTION,
        /** Temperature of the battery, millicelsius. */
        BATTERY_TEMPERATURE,
        /** Offset of the shunt channel, nanovolts. */
        SENSOR_OFFSET,
        /** The wiring; the name is the key below "wiring", the value as its reader gives it. */
        WIRING,
        /** A gauge's supply on (1) or off (0). */
        GAUGE_POWER,
        /** How well a gauge knows its time without power, by the order of {@code OffTime}. */
        GAUGE_OFF_TIME,
        /** Power goes at this write of a gauge's memory, counted from now; 1 for the next one. */
        GAUGE_CUT,
        /** State of charge declared to a gauge, parts per million. */
        DECLARE
    }
}
