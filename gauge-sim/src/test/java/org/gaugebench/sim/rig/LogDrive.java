package org.gaugebench.sim.rig;

import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.ChemistryPreset;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.device.GaugeDevice;
import org.gaugebench.sim.frontend.IdealFrontEnd;
import org.gaugebench.sim.logs.Hold;
import org.gaugebench.sim.logs.LogProfile;
import org.gaugebench.sim.logs.MeasuredLog;
import org.gaugebench.sim.units.ConverterRange;
import org.gaugebench.sim.units.ShuntRating;

/**
 * Sends a measured log through an ideal front end into any gauge with its rules on, a tick a
 * second. The replay command keeps the full-charge rule off, because a log does not say its
 * charger; these tests know it.
 */
final class LogDrive {
    static final int MILLIS_PER_MINUTE = 60_000;
    private static final int TICK_MILLIS = 1_000;
    private static final long NANOS_PER_MILLI = 1_000_000;
    private static final int SHUNT_MICROVOLTS = 60_000;
    private static final int BITS = 20;
    private static final int FULL_SCALE_MICROVOLTS = 100_000;

    private final MeasuredLog log;
    private final int shuntAmps;

    /** Wires a log of current, voltage and temperature to a shunt that its currents fit. */
    LogDrive(MeasuredLog log, int shuntAmps) {
        this.log = log;
        this.shuntAmps = shuntAmps;
    }

    /** What an installer sets for a 12 V mat battery on this shunt. */
    GaugeSettings.Builder settings(double ampHours) {
        return ChemistryPreset.LEAD_ACID_AGM
                .builder(12_000)
                .set(Setting.SHUNT_RATED_CURRENT, shuntAmps * 1_000L)
                .set(Setting.SHUNT_RATED_DROP, SHUNT_MICROVOLTS)
                .set(Setting.SHUNT_CONVERTER_BITS, BITS)
                .set(Setting.SHUNT_FULL_SCALE, FULL_SCALE_MICROVOLTS)
                .set(Setting.VOLTAGE_CONVERTER_BITS, ReplaySetup.VOLTAGE_BITS)
                .set(
                        Setting.VOLTAGE_FULL_SCALE,
                        Math.round(ReplaySetup.VOLTAGE_FULL_SCALE_VOLTS * 1_000))
                .set(Setting.CAPACITY, Math.round(ampHours * 1_000));
    }

    /**
     * Runs the whole log.
     *
     * @param startPercent state of charge declared at the first row
     * @param each sees the registers after every tick
     */
    void run(GaugeDevice gauge, int startPercent, ReplayListener each) {
        LogProfile profile = new LogProfile(log, Hold.NEXT);
        IdealFrontEnd frontEnd =
                new IdealFrontEnd(
                        new ShuntRating(shuntAmps * 1_000_000L, SHUNT_MICROVOLTS),
                        new ConverterRange(BITS, FULL_SCALE_MICROVOLTS),
                        ReplaySetup.VOLTAGE_BITS,
                        ReplaySetup.VOLTAGE_FULL_SCALE_VOLTS);
        Sample sample = new Sample();
        Registers registers = new Registers();
        gauge.powerUp(0, OffTime.UNKNOWN);
        gauge.command(Command.DECLARE_STATE_OF_CHARGE, startPercent * 10_000L);
        long end = log.durationNanos() / NANOS_PER_MILLI;
        for (long millis = 0; millis <= end; millis += TICK_MILLIS) {
            long nanos = millis * NANOS_PER_MILLI;
            double amps =
                    millis == 0
                            ? log.currentAmps(0)
                            : profile.meanAmps(nanos - TICK_MILLIS * NANOS_PER_MILLI, nanos);
            sample.clockMillis = (int) millis;
            sample.shuntCounts = frontEnd.shuntCounts(amps);
            sample.voltageCounts = frontEnd.voltageCounts(profile.voltageVolts(nanos));
            sample.temperatureMillicelsius =
                    (int) Math.round(profile.temperatureCelsius(nanos) * 1_000);
            gauge.tick(sample);
            gauge.inspect(registers);
            each.afterTick(millis, registers);
        }
    }
}
