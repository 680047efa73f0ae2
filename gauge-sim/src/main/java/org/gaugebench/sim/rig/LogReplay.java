package org.gaugebench.sim.rig;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.EventSink;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.port.StateStore;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.device.CoreDevice;
import org.gaugebench.sim.device.GaugeDevice;
import org.gaugebench.sim.device.exhibits.ExhibitGauge;
import org.gaugebench.sim.device.exhibits.PlainCounter;
import org.gaugebench.sim.frontend.IdealFrontEnd;
import org.gaugebench.sim.logs.LogProfile;
import org.gaugebench.sim.logs.MeasuredLog;
import org.gaugebench.sim.scenario.GaugeSpec;
import org.jspecify.annotations.Nullable;

/**
 * Sends a measured log through an ideal front end into the core.
 *
 * <p>Ticks run on a grid that starts at the first row; each sample carries the exact mean of the
 * log's current over its tick, so long rows are cut and short ones averaged. The last tick ends
 * with the log, rounded up to a whole millisecond. The first sample only sets the gauge's clock.
 */
public final class LogReplay {
    private static final long NANOS_PER_MILLI = 1_000_000;
    private static final int MILLIS_PER_MINUTE = 60_000;
    private static final int COULOMBS_PER_AMP_HOUR = 3_600;
    private static final int MOST_EVENTS = 100;

    private final MeasuredLog log;
    private final LogProfile profile;
    private final ReplaySetup setup;
    private final IdealFrontEnd frontEnd;
    private final GaugeDevice device;
    private final boolean isDeclared;
    private final List<ReplayResult.TimedEvent> events = new ArrayList<>();
    private final Sample sample = new Sample();
    private final Registers registers = new Registers();

    /**
     * Wires a replay.
     *
     * @param log the log
     * @param setup everything else
     * @throws org.gaugebench.core.settings.SettingsException if no gauge can be built
     */
    public LogReplay(MeasuredLog log, ReplaySetup setup) {
        this(log, setup, null, (event, uptimeMillis, value) -> {});
    }

    /**
     * Wires a replay into another gauge, which is told nothing of its start.
     *
     * @param log the log
     * @param setup shunt, converter, tick and hold; its settings are not used
     * @param gauge of any kind, its settings told the front end's converters; null for the core of
     *     the setup, which is told a start
     * @param sink is told every event
     */
    public LogReplay(
            MeasuredLog log, ReplaySetup setup, @Nullable GaugeSpec gauge, EventSink sink) {
        this.log = log;
        this.setup = setup;
        profile = new LogProfile(log, setup.hold());
        frontEnd =
                new IdealFrontEnd(
                        setup.shunt(),
                        setup.converter(),
                        ReplaySetup.VOLTAGE_BITS,
                        ReplaySetup.VOLTAGE_FULL_SCALE_VOLTS);
        isDeclared = gauge == null;
        EventSink all =
                (event, uptimeMillis, value) -> {
                    if (events.size() < MOST_EVENTS) {
                        events.add(new ReplayResult.TimedEvent(uptimeMillis, event, value));
                    }
                    sink.onEvent(event, uptimeMillis, value);
                };
        device =
                gauge == null
                        ? new CoreDevice(setup.settings(), StateStore.NONE, all)
                        : device(gauge, setup.tickMillis(), all);
    }

    private static GaugeDevice device(GaugeSpec gauge, int tickMillis, EventSink sink) {
        return switch (gauge.kind()) {
            case CORE -> new CoreDevice(gauge.settings(), StateStore.NONE, sink);
            case PLAIN_COUNTER -> new PlainCounter(gauge.settings());
            case EXHIBIT ->
                    new ExhibitGauge(
                            gauge.settings(), gauge.mistakes(), tickMillis, StateStore.NONE, sink);
        };
    }

    /** Settings of a gauge that is told the converters of the front end of a replay. */
    public static GaugeSettings.Builder told(GaugeSettings.Builder settings, ReplaySetup setup) {
        return settings.set(Setting.SHUNT_CONVERTER_BITS, setup.converter().bits())
                .set(Setting.SHUNT_FULL_SCALE, setup.converter().microvolts())
                .set(Setting.VOLTAGE_CONVERTER_BITS, ReplaySetup.VOLTAGE_BITS)
                .set(
                        Setting.VOLTAGE_FULL_SCALE,
                        Math.round(ReplaySetup.VOLTAGE_FULL_SCALE_VOLTS * 1_000));
    }

    /**
     * Runs the whole log; call once.
     *
     * @param listener sees every tick
     * @return what it came to
     */
    public ReplayResult run(ReplayListener listener) {
        device.powerUp(0, OffTime.UNKNOWN);
        if (isDeclared) {
            device.command(Command.DECLARE_STATE_OF_CHARGE, setup.startPartsPerMillion());
        }
        tick(0, log.currentAmps(0), listener);
        long endNanos = log.durationNanos();
        long endMillis = (endNanos + NANOS_PER_MILLI - 1) / NANOS_PER_MILLI;
        long ticks = 0;
        long digest = Registers.DIGEST_START;
        long millis = 0;
        while (millis < endMillis) {
            long next = Math.min(millis + setup.tickMillis(), endMillis);
            double amps = profile.meanAmps(millis * NANOS_PER_MILLI, next * NANOS_PER_MILLI);
            tick(next, amps, listener);
            ticks++;
            if (next / MILLIS_PER_MINUTE > millis / MILLIS_PER_MINUTE) {
                device.inspect(registers);
                digest = registers.fold(digest);
            }
            millis = next;
        }
        device.inspect(registers);
        return result(ticks, registers.fold(digest));
    }

    private void tick(long millis, double amps, ReplayListener listener) {
        long nanos = millis * NANOS_PER_MILLI;
        sample.clockMillis = (int) millis;
        sample.shuntCounts = frontEnd.shuntCounts(amps);
        sample.voltageCounts = frontEnd.voltageCounts(profile.voltageVolts(nanos));
        sample.temperatureMillicelsius =
                log.hasTemperature()
                        ? millicelsius(profile.temperatureCelsius(nanos))
                        : Sample.TEMPERATURE_ABSENT;
        device.tick(sample);
        if (listener != ReplayListener.NONE) {
            device.inspect(registers);
            listener.afterTick(millis, registers);
        }
    }

    /** A broken sensor's figure must not wrap, nor hit the mark for an absent one. */
    private static int millicelsius(double celsius) {
        double limited = Math.min(Math.max(celsius, -1_000), 1_000);
        return (int) Math.round(limited * 1_000);
    }

    private ReplayResult result(long ticks, long digest) {
        return new ReplayResult(
                ticks,
                log.durationNanos() / 1e9,
                registers.get(Register.IN_NANOCOULOMBS),
                registers.get(Register.OUT_NANOCOULOMBS),
                profile.totalCoulombs() / COULOMBS_PER_AMP_HOUR,
                profile.throughputCoulombs() / COULOMBS_PER_AMP_HOUR,
                registers.get(Register.STATE_OF_CHARGE_PARTS_PER_MILLION),
                frontEnd.ampsPerCount(),
                frontEnd.clippedSamples(),
                List.copyOf(events),
                digest);
    }
}
