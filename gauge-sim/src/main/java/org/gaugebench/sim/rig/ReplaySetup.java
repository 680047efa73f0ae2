package org.gaugebench.sim.rig;

import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.logs.Hold;
import org.gaugebench.sim.units.ConverterRange;
import org.gaugebench.sim.units.ShuntRating;

/**
 * What a replay assumes beside the log.
 *
 * @param shunt the modelled shunt
 * @param converter the modelled shunt converter
 * @param capacityMilliampHours declared to the gauge
 * @param startPartsPerMillion state of charge declared at the first row
 * @param tickMillis length of a tick, 1 to 60,000
 * @param hold what a row means between rows
 */
public record ReplaySetup(
        ShuntRating shunt,
        ConverterRange converter,
        long capacityMilliampHours,
        long startPartsPerMillion,
        int tickMillis,
        Hold hold) {
    /** Longest tick: the gauge calls an interval above 65,535 ms missing samples. */
    public static final int LONGEST_TICK_MILLIS = 60_000;

    /** Voltages of 12 to 48 V systems fit 65.536 V at 1 mV a code. */
    static final int VOLTAGE_BITS = 16;

    static final double VOLTAGE_FULL_SCALE_VOLTS = 65.536;

    private static final int MICROAMPS_PER_MILLIAMP = 1_000;
    private static final int FULL_PARTS_PER_MILLION = 1_000_000;

    /**
     * The gauge's settings: the shunt and converter as modelled, efficiency 100 % and the
     * full-charge rule off, because a log does not say what charger or battery it came from.
     *
     * @throws org.gaugebench.core.settings.SettingsException if no gauge can be built from them
     */
    public GaugeSettings settings() {
        return GaugeSettings.builder()
                .set(Setting.SHUNT_RATED_CURRENT, shunt.microamps() / MICROAMPS_PER_MILLIAMP)
                .set(Setting.SHUNT_RATED_DROP, shunt.microvolts())
                .set(Setting.SHUNT_CONVERTER_BITS, converter.bits())
                .set(Setting.SHUNT_FULL_SCALE, converter.microvolts())
                .set(Setting.VOLTAGE_CONVERTER_BITS, VOLTAGE_BITS)
                .set(Setting.VOLTAGE_FULL_SCALE, Math.round(VOLTAGE_FULL_SCALE_VOLTS * 1_000))
                .set(Setting.CAPACITY, capacityMilliampHours)
                .set(Setting.COULOMBIC_EFFICIENCY, FULL_PARTS_PER_MILLION)
                .set(Setting.ABSORPTION, 0)
                .build();
    }
}
