package org.gaugebench.sim.device.exhibits;

import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.CommandOutcome;
import org.gaugebench.core.port.EstimateState;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.port.Trust;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.device.GaugeDevice;

/**
 * An exact counter with no mistake and no rule: it adds what crosses the shunt to what somebody
 * declared, stops at 0 and at 100 %, and never corrects itself.
 *
 * <p>It shows what counting alone is worth, beside a core that knows when it may set itself. It
 * sums counts times milliseconds, which are whole numbers, so nothing is lost to rounding; offset
 * and scale enter only when it is read.
 */
public final class PlainCounter implements GaugeDevice {
    private static final double NANOCOULOMBS_PER_MILLIAMP_HOUR = 3.6e9;

    private final double nanocoulombsPerCountMilli;
    private final long capacityMilliampHours;
    private final long capacityCountMillis;
    private final long fullScaleMillivolts;
    private final int voltageBits;

    private boolean started;
    private boolean declared;
    private int lastClockMillis;
    private int shuntCounts;
    private int voltageCounts;
    private int temperatureMillicelsius = Sample.TEMPERATURE_ABSENT;
    private long uptimeMillis;
    private long countMillis;

    /** Builds a counter; only the figures of the sensor and the capacity are used. */
    public PlainCounter(GaugeSettings settings) {
        double microampsPerCount =
                (double) settings.get(Setting.SHUNT_FULL_SCALE)
                        * settings.get(Setting.SHUNT_RATED_CURRENT)
                        * 1_000
                        / settings.get(Setting.SHUNT_RATED_DROP)
                        / (1L << (settings.get(Setting.SHUNT_CONVERTER_BITS) - 1));
        nanocoulombsPerCountMilli = microampsPerCount;
        capacityMilliampHours = settings.get(Setting.CAPACITY);
        capacityCountMillis = countMillisOf(capacityNanocoulombs());
        fullScaleMillivolts = settings.get(Setting.VOLTAGE_FULL_SCALE);
        voltageBits = (int) settings.get(Setting.VOLTAGE_CONVERTER_BITS);
    }

    private double capacityNanocoulombs() {
        return capacityMilliampHours * NANOCOULOMBS_PER_MILLIAMP_HOUR;
    }

    private long countMillisOf(double nanocoulombs) {
        return StrictMath.round(nanocoulombs / nanocoulombsPerCountMilli);
    }

    @Override
    public void powerUp(long offMillis, OffTime offTime) {
        started = false;
    }

    @Override
    public void tick(Sample sample) {
        int elapsedMillis = sample.clockMillis - lastClockMillis;
        lastClockMillis = sample.clockMillis;
        shuntCounts = sample.shuntCounts;
        voltageCounts = sample.voltageCounts;
        temperatureMillicelsius = sample.temperatureMillicelsius;
        if (!started) {
            started = true;
            return;
        }
        uptimeMillis += elapsedMillis;
        long sum = countMillis + (long) shuntCounts * elapsedMillis;
        countMillis = Math.max(0, Math.min(sum, capacityCountMillis));
    }

    @Override
    public CommandOutcome command(Command command, long argument) {
        if (command != Command.DECLARE_STATE_OF_CHARGE) {
            return CommandOutcome.REFUSED_NOT_OFFERED;
        }
        countMillis = countMillisOf(capacityNanocoulombs() * argument / 1e6);
        declared = true;
        return CommandOutcome.DONE;
    }

    private long remainingNanocoulombs() {
        return StrictMath.round(countMillis * nanocoulombsPerCountMilli);
    }

    private int stateOfChargePartsPerMillion() {
        return (int) StrictMath.round(1e6 * countMillis / capacityCountMillis);
    }

    private int currentMicroamps() {
        return (int) StrictMath.round(shuntCounts * nanocoulombsPerCountMilli);
    }

    private int voltageMicrovolts() {
        return (int) ((fullScaleMillivolts * 1_000L * voltageCounts) >> voltageBits);
    }

    @Override
    public void read(Readout readout) {
        readout.stateOfChargePartsPerMillion =
                declared ? stateOfChargePartsPerMillion() : Readout.NOT_KNOWN;
        readout.remainingNanocoulombs = remainingNanocoulombs();
        readout.fullChargeNanocoulombs = StrictMath.round(capacityNanocoulombs());
        readout.currentMicroamps = currentMicroamps();
        readout.averageCurrentMicroamps = currentMicroamps();
        readout.voltageMicrovolts = voltageMicrovolts();
        readout.temperatureMillicelsius = temperatureMillicelsius;
        readout.timeToEmptyState = EstimateState.NO_ESTIMATE;
        readout.timeToEmptyMinutes = 0;
        readout.trust = declared ? Trust.DECLARED : Trust.UNKNOWN;
    }

    @Override
    public void inspect(Registers registers) {
        registers.set(Register.CLOCK_MILLIS, lastClockMillis & 0xFFFFFFFFL);
        registers.set(Register.UPTIME_MILLIS, uptimeMillis);
        registers.set(Register.SHUNT_COUNTS, shuntCounts);
        registers.set(Register.VOLTAGE_COUNTS, voltageCounts);
        registers.set(Register.CURRENT_MICROAMPS, currentMicroamps());
        registers.set(Register.VOLTAGE_MICROVOLTS, voltageMicrovolts());
        registers.set(Register.CHARGE_NANOCOULOMBS, remainingNanocoulombs());
        registers.set(
                Register.STATE_OF_CHARGE_PARTS_PER_MILLION,
                declared ? stateOfChargePartsPerMillion() : Readout.NOT_KNOWN);
    }
}
