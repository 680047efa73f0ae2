package org.gaugebench.sim.bench;

import java.math.BigDecimal;
import java.math.MathContext;
import org.gaugebench.core.port.Sample;

/**
 * The peer that trusts no binary fraction: the core's work in {@link BigDecimal} with 16 digits
 * (DECIMAL64). Constants are made once; quantities are in SI units with hours.
 */
final class BigDecimalGauge implements BenchGauge {
    private static final MathContext MC = MathContext.DECIMAL64;
    private static final BigDecimal ZERO = BigDecimal.ZERO;
    private static final BigDecimal CAPACITY = new BigDecimal("100");
    private static final BigDecimal UNPROVEN_LIMIT = new BigDecimal("99");
    private static final BigDecimal EFFICIENCY = new BigDecimal("0.92");
    private static final BigDecimal OFFSET_COUNTS = new BigDecimal("1.5");
    private static final BigDecimal FULL_SCALE_VOLTS = new BigDecimal("0.1");
    private static final BigDecimal SHUNT_OHMS = new BigDecimal("0.00075");
    private static final BigDecimal SHUNT_STEPS = new BigDecimal("524288");
    private static final BigDecimal VOLTAGE_FULL_SCALE = new BigDecimal("65.536");
    private static final BigDecimal VOLTAGE_STEPS = new BigDecimal("65536");
    private static final BigDecimal ABSORPTION = new BigDecimal("14.2");
    private static final BigDecimal COEFFICIENT = new BigDecimal("0.024");
    private static final BigDecimal REFERENCE_CELSIUS = new BigDecimal("25");
    private static final BigDecimal TAPER = new BigDecimal("2");
    private static final BigDecimal TAPER_FLOOR = new BigDecimal("-0.5");
    private static final BigDecimal REARM = new BigDecimal("2");
    private static final BigDecimal OFFSET_BOUND = new BigDecimal("-0.01");
    private static final BigDecimal THOUSAND = new BigDecimal("1000");
    private static final BigDecimal SECONDS_PER_HOUR = new BigDecimal("3600");
    private static final BigDecimal SIXTY = new BigDecimal("60");
    private static final BigDecimal EIGHT = new BigDecimal("8");
    private static final BigDecimal LONGEST_MINUTES = new BigDecimal("5940");
    private static final int HOLD_MINUTES = 60;

    // State.
    private boolean started;
    private int lastClockMillis;
    private BigDecimal charge = ZERO;
    private BigDecimal minuteCharge = ZERO;
    private BigDecimal in = ZERO;
    private BigDecimal out = ZERO;
    private BigDecimal surplus = ZERO;
    private BigDecimal deficit = ZERO;
    private BigDecimal energyIn = ZERO;
    private BigDecimal energyOut = ZERO;
    private BigDecimal minuteSeconds = ZERO;
    private BigDecimal voltSeconds = ZERO;
    private BigDecimal lowestVolts = THOUSAND;
    private BigDecimal highestVolts = ZERO;
    private BigDecimal discharged = ZERO;
    private BigDecimal filtered;
    private boolean full;
    private boolean armed = true;
    private int held;
    private int fullCount;
    private int minutesToEmpty;
    private int faults;

    @Override
    public void start() {
        charge = new BigDecimal("70");
    }

    @Override
    public void tick(Sample sample) {
        BigDecimal seconds =
                started
                        ? BigDecimal.valueOf(sample.clockMillis - lastClockMillis)
                                .divide(THOUSAND, MC)
                        : ZERO;
        started = true;
        lastClockMillis = sample.clockMillis;
        BigDecimal amps =
                BigDecimal.valueOf(sample.shuntCounts)
                        .subtract(OFFSET_COUNTS, MC)
                        .multiply(FULL_SCALE_VOLTS, MC)
                        .divide(SHUNT_STEPS, MC)
                        .divide(SHUNT_OHMS, MC);
        BigDecimal volts =
                BigDecimal.valueOf(sample.voltageCounts)
                        .multiply(VOLTAGE_FULL_SCALE, MC)
                        .divide(VOLTAGE_STEPS, MC);
        if (Math.abs(sample.shuntCounts) >= 524_287 || sample.voltageCounts >= 65_535) {
            faults++;
        }
        while (seconds.compareTo(SIXTY.subtract(minuteSeconds, MC)) >= 0) {
            BigDecimal stretch = SIXTY.subtract(minuteSeconds, MC);
            add(amps, volts, stretch);
            seconds = seconds.subtract(stretch, MC);
            closeMinute(BigDecimal.valueOf(sample.temperatureMillicelsius).divide(THOUSAND, MC));
        }
        if (seconds.signum() > 0) {
            add(amps, volts, seconds);
        }
    }

    private void add(BigDecimal amps, BigDecimal volts, BigDecimal seconds) {
        BigDecimal ampHours = amps.multiply(seconds, MC).divide(SECONDS_PER_HOUR, MC);
        minuteCharge = minuteCharge.add(ampHours, MC);
        if (ampHours.signum() > 0) {
            in = in.add(ampHours, MC);
            energyIn = energyIn.add(ampHours.multiply(volts, MC), MC);
        } else {
            out = out.subtract(ampHours, MC);
            energyOut = energyOut.subtract(ampHours.multiply(volts, MC), MC);
        }
        minuteSeconds = minuteSeconds.add(seconds, MC);
        voltSeconds = voltSeconds.add(volts.multiply(seconds, MC), MC);
        lowestVolts = lowestVolts.min(volts);
        highestVolts = highestVolts.max(volts);
    }

    private BigDecimal stored() {
        return minuteCharge.signum() > 0 ? minuteCharge.multiply(EFFICIENCY, MC) : minuteCharge;
    }

    private void closeMinute(BigDecimal celsius) {
        BigDecimal limit = full ? CAPACITY : UNPROVEN_LIMIT.max(charge);
        BigDecimal target = charge.add(stored(), MC);
        charge = ZERO.max(limit.min(target));
        surplus = surplus.add(ZERO.max(target.subtract(charge, MC)), MC);
        deficit = deficit.add(ZERO.max(charge.subtract(target, MC)), MC);
        BigDecimal mean = minuteCharge.multiply(SIXTY, MC);
        judge(mean, celsius);
        filtered =
                filtered == null
                        ? mean
                        : filtered.add(mean.subtract(filtered, MC).divide(EIGHT, MC), MC);
        minutesToEmpty =
                filtered.compareTo(OFFSET_BOUND) < 0
                        ? charge.divide(filtered.negate(), MC)
                                .multiply(SIXTY, MC)
                                .min(LONGEST_MINUTES)
                                .intValue()
                        : 0;
        minuteCharge = ZERO;
        minuteSeconds = ZERO;
        voltSeconds = ZERO;
        lowestVolts = THOUSAND;
        highestVolts = ZERO;
    }

    private void judge(BigDecimal mean, BigDecimal celsius) {
        BigDecimal threshold =
                ABSORPTION.subtract(
                        COEFFICIENT.multiply(celsius.subtract(REFERENCE_CELSIUS, MC), MC), MC);
        if (!armed) {
            discharged = ZERO.max(discharged.subtract(mean.divide(SIXTY, MC), MC));
            if (discharged.compareTo(REARM) >= 0) {
                armed = true;
                full = false;
                held = 0;
            }
        } else if (lowestVolts.compareTo(threshold) < 0
                || mean.compareTo(TAPER) > 0
                || mean.compareTo(TAPER_FLOOR) < 0) {
            held = 0;
        } else if (++held >= HOLD_MINUTES) {
            charge = CAPACITY;
            full = true;
            armed = false;
            discharged = ZERO;
            surplus = ZERO;
            deficit = ZERO;
            held = 0;
            fullCount++;
        }
    }

    @Override
    public double chargeAmpHours() {
        return charge.add(stored(), MC).doubleValue();
    }

    @Override
    public double energyOutWattHours() {
        return energyOut.doubleValue();
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
