package org.gaugebench.sim.bench;

import org.gaugebench.core.port.Sample;

/**
 * The peer that most people would write: the core's work in double fields. The naive form works
 * out 2^bits with Math.pow for every sample; the tidy form, from the same class, once.
 */
final class DoubleGauge implements BenchGauge {
    private static final double CAPACITY = 100;
    private static final double EFFICIENCY = 0.92;
    private static final double OFFSET_COUNTS = 1.5;
    private static final double FULL_SCALE_VOLTS = 0.1;
    private static final double SHUNT_OHMS = 0.075 / 100;
    private static final double VOLTAGE_FULL_SCALE = 65.536;
    private static final double TAPER_AMPS = 2;
    private static final int HOLD_MINUTES = 60;
    private static final double REARM_AMP_HOURS = 2;
    private static final double OFFSET_BOUND_AMPS = 0.01;
    private static final double MINUTE_SECONDS = 60;

    // Parameters; not constants, so that the compiler may not fold the power.
    private final boolean naive;
    private final double shuntBits = 19;
    private final double voltageBits = 16;
    private final double shuntSteps = Math.pow(2, shuntBits);
    private final double voltageSteps = Math.pow(2, voltageBits);

    // State.
    private boolean started;
    private int lastClockMillis;
    private double charge;
    private double minuteCharge;
    private double in;
    private double out;
    private double surplus;
    private double deficit;
    private double energyIn;
    private double energyOut;
    private double minuteSeconds;
    private double voltSeconds;
    private double lowestVolts = Double.MAX_VALUE;
    private double highestVolts;
    private double discharged;
    private boolean full;
    private boolean armed = true;
    private int held;
    private int fullCount;
    private double filtered = Double.NaN;
    private int minutesToEmpty;
    private int faults;

    DoubleGauge(boolean naive) {
        this.naive = naive;
    }

    @Override
    public void start() {
        charge = 0.7 * CAPACITY;
    }

    @Override
    public void tick(Sample sample) {
        double seconds = started ? (sample.clockMillis - lastClockMillis) / 1000.0 : 0;
        started = true;
        lastClockMillis = sample.clockMillis;
        double steps = naive ? Math.pow(2, shuntBits) : shuntSteps;
        double voltSteps = naive ? Math.pow(2, voltageBits) : voltageSteps;
        double amps =
                (sample.shuntCounts - OFFSET_COUNTS) * FULL_SCALE_VOLTS / steps / SHUNT_OHMS;
        double volts = sample.voltageCounts * VOLTAGE_FULL_SCALE / voltSteps;
        if (Math.abs(sample.shuntCounts) >= steps - 1 || sample.voltageCounts >= voltSteps - 1) {
            faults++;
        }
        while (seconds >= MINUTE_SECONDS - minuteSeconds) {
            double stretch = MINUTE_SECONDS - minuteSeconds;
            add(amps, volts, stretch);
            seconds -= stretch;
            closeMinute(sample.temperatureMillicelsius / 1000.0);
        }
        if (seconds > 0) {
            add(amps, volts, seconds);
        }
    }

    private void add(double amps, double volts, double seconds) {
        double ampHours = amps * seconds / 3600;
        minuteCharge += ampHours;
        if (ampHours > 0) {
            in += ampHours;
            energyIn += ampHours * volts;
        } else {
            out -= ampHours;
            energyOut -= ampHours * volts;
        }
        minuteSeconds += seconds;
        voltSeconds += volts * seconds;
        lowestVolts = Math.min(lowestVolts, volts);
        highestVolts = Math.max(highestVolts, volts);
    }

    private void closeMinute(double celsius) {
        double limit = full ? CAPACITY : Math.max(0.99 * CAPACITY, charge);
        double target = charge + (minuteCharge > 0 ? minuteCharge * EFFICIENCY : minuteCharge);
        charge = Math.max(0, Math.min(limit, target));
        surplus += Math.max(0, target - charge);
        deficit += Math.max(0, charge - target);
        double mean = minuteCharge * 60;
        judge(mean, celsius);
        filtered = Double.isNaN(filtered) ? mean : filtered + (mean - filtered) / 8;
        minutesToEmpty =
                filtered < -OFFSET_BOUND_AMPS
                        ? (int) Math.min(99 * 60, charge / -filtered * 60)
                        : 0;
        minuteCharge = 0;
        minuteSeconds = 0;
        voltSeconds = 0;
        lowestVolts = Double.MAX_VALUE;
        highestVolts = 0;
    }

    private void judge(double mean, double celsius) {
        double threshold = 14.4 - 0.2 - 0.024 * (celsius - 25);
        if (!armed) {
            discharged = Math.max(0, discharged - mean / 60);
            if (discharged >= REARM_AMP_HOURS) {
                armed = true;
                full = false;
                held = 0;
            }
        } else if (lowestVolts < threshold || mean > TAPER_AMPS || mean < -TAPER_AMPS / 4) {
            held = 0;
        } else if (++held >= HOLD_MINUTES) {
            charge = CAPACITY;
            full = true;
            armed = false;
            discharged = 0;
            surplus = 0;
            deficit = 0;
            held = 0;
            fullCount++;
        }
    }

    @Override
    public double chargeAmpHours() {
        return charge + (minuteCharge > 0 ? minuteCharge * EFFICIENCY : minuteCharge);
    }

    @Override
    public double energyOutWattHours() {
        return energyOut;
    }

    @Override
    public int fullCount() {
        return fullCount;
    }

    @Override
    public int timeToEmptyMinutes() {
        return minutesToEmpty;
    }
}
