package org.gaugebench.sim.scenario;

import org.gaugebench.core.port.Command;
import org.jspecify.annotations.Nullable;

/**
 * One change of the timeline, already spread out: repeats and windows are several changes.
 *
 * @param atMillis when, from the start
 * @param target which part owns it
 * @param name of the load or charger or gauge, or the key of the wiring; for a setting the gauge's
 *     name, a dot and the setting's key; empty for the others
 * @param value the new value: 1 for on, open or forced, 0 for off, closed or automatic; else
 *     microamps, microwatts, microohms, millicelsius, nanovolts or parts per million by target; for
 *     a setting in the setting's unit
 */
public record Change(long atMillis, Target target, String name, long value) {

    /** Whether it is about another gauge than this one. */
    boolean isOfOtherGauge(String gauge) {
        return target.isOfOneGauge() && !name.equals(gauge) && !name.startsWith(gauge + ".");
    }

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
        /** A trait of the sensor, in its unit; the name is the trait's key. */
        SENSOR_TRAIT,
        /** What becomes of the samples, by the order of {@link SampleMode}. */
        SENSOR_SAMPLES,
        /** How much too fast a gauge's clock runs, parts per million. */
        CLOCK_ERROR,
        /** Largest trembling of a gauge's clock, milliseconds. */
        CLOCK_JITTER,
        /** Milliseconds by which a gauge's clock jumps, once. */
        CLOCK_JUMP,
        /** A gauge's clock running (1) or stopped (0). */
        CLOCK_SWITCH,
        /** State of charge declared to a gauge, parts per million. */
        DECLARE,
        /** A setting of a gauge, in the setting's unit. */
        SETTING,
        /** Another battery was fitted, and the gauge is told. */
        NEW_BATTERY,
        /** A gauge drops what it has measured. */
        FORGET_MEASURED,
        /** A gauge takes the last minute's mean as zero. */
        ZERO_ADJUSTMENT,
        /** A gauge is told what a reference meter reads, microamps. */
        SPAN_ADJUSTMENT;

        /** The command that a gauge is given; null where the change is none. */
        public @Nullable Command command() {
            return switch (this) {
                case DECLARE -> Command.DECLARE_STATE_OF_CHARGE;
                case NEW_BATTERY -> Command.NEW_BATTERY;
                case FORGET_MEASURED -> Command.FORGET_MEASURED;
                case ZERO_ADJUSTMENT -> Command.ZERO_ADJUSTMENT;
                case SPAN_ADJUSTMENT -> Command.SPAN_ADJUSTMENT;
                default -> null;
            };
        }

        /** Whether it is about one gauge, its power, clock or memory included, and names it. */
        public boolean isOfOneGauge() {
            return switch (this) {
                case GAUGE_POWER,
                        GAUGE_OFF_TIME,
                        GAUGE_CUT,
                        CLOCK_ERROR,
                        CLOCK_JITTER,
                        CLOCK_JUMP,
                        CLOCK_SWITCH ->
                        true;
                default -> isToldToGauge();
            };
        }

        /** Whether a gauge is told: it hears nothing before it has power. */
        public boolean isToldToGauge() {
            return this == SETTING || command() != null;
        }
    }
}
