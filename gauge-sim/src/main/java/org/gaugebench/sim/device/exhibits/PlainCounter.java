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
 * sums counts times milliseconds, which are whole numbers, so nothing is lost to rounding; the
 * scale enters only when it is read. {@link ExhibitGauge} without a mistake does the same by other
 * code, and a test holds the two together.
 *
 * <p>After a restart it counts on from where it was, as if every tick had been saved: what it then
 * shows wrong is the charge that flowed unseen, and nothing else.
 */
public final class PlainCounter implements GaugeDevice {
    private final CountScale scale;
    private final LastSample last;

    private double capacityNanocoulombs;
    private long capacityCountMillis;
    private boolean started;
    private boolean declared;
    private int shuntCounts;
    private long countMillis;

    /** Builds a counter; only the figures of the sensor and the capacity are used. */
    public PlainCounter(GaugeSettings settings) {
        scale = new CountScale(settings);
        last = new LastSample(scale);
        capacityNanocoulombs =
                settings.get(Setting.CAPACITY) * CountScale.NANOCOULOMBS_PER_MILLIAMP_HOUR;
        capacityCountMillis = scale.countMillis(capacityNanocoulombs);
    }

    @Override
    public void powerUp(long offMillis, OffTime offTime) {
        started = false;
    }

    @Override
    public void tick(Sample sample) {
        long elapsedMillis = Clock.exactMillis(sample.clockMillis, last.clockMillis());
        last.take(sample);
        shuntCounts = sample.shuntCounts;
        if (!started) {
            started = true;
            return;
        }
        last.pass(elapsedMillis);
        long sum = countMillis + shuntCounts * elapsedMillis;
        countMillis = Math.max(0, Math.min(sum, capacityCountMillis));
    }

    @Override
    public CommandOutcome command(Command command, long argument) {
        if (command != Command.DECLARE_STATE_OF_CHARGE) {
            return CommandOutcome.REFUSED_NOT_OFFERED;
        }
        countMillis = scale.countMillis(capacityNanocoulombs * argument / 1e6);
        declared = true;
        return CommandOutcome.DONE;
    }

    /**
     * Takes another capacity and keeps the part that is left; nothing else is used while it runs.
     */
    @Override
    public CommandOutcome changeSettings(GaugeSettings settings) {
        double nanocoulombs =
                settings.get(Setting.CAPACITY) * CountScale.NANOCOULOMBS_PER_MILLIAMP_HOUR;
        if (nanocoulombs != capacityNanocoulombs) {
            long old = capacityCountMillis;
            capacityNanocoulombs = nanocoulombs;
            capacityCountMillis = scale.countMillis(nanocoulombs);
            countMillis = StrictMath.round((double) countMillis * capacityCountMillis / old);
        }
        return CommandOutcome.DONE;
    }

    private long remainingNanocoulombs() {
        return StrictMath.round(scale.nanocoulombs(countMillis));
    }

    private int stateOfChargePartsPerMillion() {
        return declared
                ? (int) StrictMath.round(1e6 * countMillis / capacityCountMillis)
                : Readout.NOT_KNOWN;
    }

    private int currentMicroamps() {
        return scale.wholeMicroamps(scale.microamps(shuntCounts));
    }

    /** Its count moves by what flows and by nothing else: nothing of it jumps. */
    @Override
    public void readSample(Readout readout) {
        last.read(readout);
        readout.currentMicroamps = currentMicroamps();
    }

    @Override
    public void read(Readout readout) {
        last.read(readout);
        readout.stateOfChargePartsPerMillion = stateOfChargePartsPerMillion();
        readout.remainingNanocoulombs = remainingNanocoulombs();
        readout.fullChargeNanocoulombs = StrictMath.round(capacityNanocoulombs);
        readout.currentMicroamps = currentMicroamps();
        readout.averageCurrentMicroamps = currentMicroamps();
        readout.timeToEmptyState = EstimateState.NO_ESTIMATE;
        readout.timeToEmptyMinutes = 0;
        readout.trust = declared ? Trust.DECLARED : Trust.UNKNOWN;
    }

    @Override
    public void inspect(Registers registers) {
        last.inspect(registers);
        registers.set(Register.CURRENT_MICROAMPS, currentMicroamps());
        registers.set(Register.CHARGE_NANOCOULOMBS, remainingNanocoulombs());
        registers.set(Register.STATE_OF_CHARGE_PARTS_PER_MILLION, stateOfChargePartsPerMillion());
    }
}
