package org.gaugebench.sim.agree;

import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * Counts as a converter would give them in one phase of a system's life, good or bad. No battery is
 * modelled: a gauge has to do the same on nonsense as another one.
 */
final class Feeder {
    /** What goes on. */
    enum Phase {
        REST,
        DISCHARGE,
        DEEP_DISCHARGE,
        BULK,
        ABSORPTION,
        FLOAT,
        PLATEAU,
        PUMP,
        STEPS,
        NOISE,
        NONSENSE
    }

    private static final int MILD_MILLICELSIUS = 25_000;

    private final Dice dice;
    private final long shuntRatedMilliamps;
    private final long shuntRatedMicrovolts;
    private final int shuntBits;
    private final long shuntFullScaleMicrovolts;
    private final int voltageBits;
    private final long voltageFullScaleMillivolts;
    private final long capacityMilliampHours;
    private final long absorptionMillivolts;
    private final long floatMillivolts;
    private final long emptyMillivolts;
    private final long nominalMillivolts;
    private final long taperMilliamps;
    private int clockMillis;
    private int temperatureMillicelsius = 20_000;
    private Phase phase = Phase.REST;
    private long milliamps;
    private long millivolts;
    private int inPhase;
    private boolean isCalm;

    Feeder(Dice dice, GaugeSettings settings, int clockMillis) {
        this.dice = dice;
        this.clockMillis = clockMillis;
        shuntRatedMilliamps = settings.get(Setting.SHUNT_RATED_CURRENT);
        shuntRatedMicrovolts = settings.get(Setting.SHUNT_RATED_DROP);
        shuntBits = (int) settings.get(Setting.SHUNT_CONVERTER_BITS);
        shuntFullScaleMicrovolts = settings.get(Setting.SHUNT_FULL_SCALE);
        voltageBits = (int) settings.get(Setting.VOLTAGE_CONVERTER_BITS);
        voltageFullScaleMillivolts = settings.get(Setting.VOLTAGE_FULL_SCALE);
        capacityMilliampHours = settings.get(Setting.CAPACITY);
        nominalMillivolts = settings.get(Setting.NOMINAL_VOLTAGE);
        absorptionMillivolts = or(settings.get(Setting.ABSORPTION), nominalMillivolts * 6 / 5);
        floatMillivolts = or(settings.get(Setting.FLOAT_VOLTAGE), nominalMillivolts * 9 / 8);
        emptyMillivolts = or(settings.get(Setting.EMPTY_VOLTAGE), nominalMillivolts * 9 / 10);
        taperMilliamps = capacityMilliampHours * settings.get(Setting.TAPER) / 1_000_000;
    }

    private static long or(long value, long otherwise) {
        return value == 0 ? otherwise : value;
    }

    /** The same with other settings; the clock goes on. */
    Feeder with(GaugeSettings settings) {
        Feeder next = new Feeder(dice, settings, clockMillis);
        next.temperatureMillicelsius = temperatureMillicelsius;
        return next;
    }

    /** A machine that starts anew begins its clock somewhere. */
    void restart(int clock) {
        clockMillis = clock;
    }

    /** Another phase begins, every sample of which comes in its time and is sound. */
    void beginCalm(Phase next) {
        begin(next);
        isCalm = true;
    }

    /** A steady current at a steady voltage begins, in a mild room and without a disturbance. */
    void beginSteady(long currentMilliamps, long voltageMillivolts) {
        beginCalm(Phase.REST);
        temperatureMillicelsius = MILD_MILLICELSIUS;
        set(currentMilliamps, voltageMillivolts);
    }

    /** What a charger sets, what it keeps, where a battery ends, and between. */
    long absorptionMillivolts() {
        return absorptionMillivolts;
    }

    long emptyMillivolts() {
        return emptyMillivolts;
    }

    long nominalMillivolts() {
        return nominalMillivolts;
    }

    long capacityMilliampHours() {
        return capacityMilliampHours;
    }

    /** The current of this moment, positive into the battery. */
    long milliamps() {
        return milliamps;
    }

    /** Another phase begins. */
    void begin(Phase next) {
        phase = next;
        inPhase = 0;
        // Rests, holds and whole cycles end at the first sample that is missing or absurd.
        isCalm = dice.once(2);
        if (dice.once(4)) {
            temperatureMillicelsius = dice.between(-40_000, 85_000);
        }
        switch (next) {
            case REST -> set(0, nominalMillivolts + dice.between(-400L, 800L));
            case DISCHARGE -> set(-dice.ofAnySize(capacityMilliampHours), nominalMillivolts);
            case DEEP_DISCHARGE ->
                    set(-dice.ofAnySize(capacityMilliampHours / 10), emptyMillivolts);
            case BULK -> set(dice.ofAnySize(capacityMilliampHours / 2), nominalMillivolts);
            case ABSORPTION -> set(taperMilliamps * 2, absorptionMillivolts);
            case FLOAT -> set(capacityMilliampHours / 1_000, floatMillivolts);
            case PLATEAU -> set(taperMilliamps * 3 / 2, absorptionMillivolts);
            case PUMP, STEPS -> set(-dice.ofAnySize(capacityMilliampHours), nominalMillivolts);
            case NOISE, NONSENSE -> set(0, nominalMillivolts);
        }
    }

    private void set(long current, long voltage) {
        milliamps = current;
        millivolts = voltage;
    }

    /** The next reading, one pace after the last, or not quite. */
    Step.Tick tick(int paceMillis) {
        inPhase++;
        clockMillis += elapsed(paceMillis);
        move();
        int shunt;
        int voltage;
        if (phase == Phase.NONSENSE) {
            shunt = nonsense(shuntBits - 1);
            voltage = nonsense(voltageBits);
        } else {
            shunt = shuntCounts(milliamps) + noise(3);
            voltage = voltageCounts(millivolts) + noise(2);
        }
        return new Step.Tick(shunt, voltage, temperature(), clockMillis);
    }

    private int elapsed(int paceMillis) {
        if (isCalm) {
            return paceMillis;
        }
        return switch (dice.between(0, 199)) {
            case 0 -> 0;
            case 1 -> dice.between(-5_000, -1);
            case 2 -> dice.between(1, 600_000);
            case 3 -> dice.once(20) ? dice.between(0, Integer.MAX_VALUE) : paceMillis;
            case 4 -> paceMillis + dice.between(-paceMillis / 2, paceMillis / 2);
            default -> paceMillis;
        };
    }

    /** How current and voltage go on within the phase. */
    private void move() {
        switch (phase) {
            case DISCHARGE -> millivolts -= dice.once(20) ? 1 : 0;
            case DEEP_DISCHARGE -> millivolts += dice.between(-30L, 25L);
            case BULK -> millivolts += dice.once(10) ? 2 : 0;
            case ABSORPTION -> {
                // Falls through the taper and on to nothing.
                milliamps -= milliamps / 256 + (dice.once(3) ? 1 : 0);
                millivolts = absorptionMillivolts + dice.between(-20L, 60L);
            }
            case PUMP -> {
                if (inPhase % 40 == 0) {
                    milliamps = milliamps == 0 ? -capacityMilliampHours / 7 : 0;
                }
            }
            case STEPS -> {
                if (inPhase % 15 == 0) {
                    long before = milliamps;
                    milliamps = dice.between(-capacityMilliampHours, capacityMilliampHours);
                    millivolts += (milliamps - before) * dice.between(-1, 12) / 1_000;
                }
            }
            case NOISE -> milliamps = dice.between(-50L, 50L);
            case REST, FLOAT, PLATEAU, NONSENSE -> {
                // stands still, or is drawn anew each time
            }
        }
    }

    private int noise(int most) {
        return dice.between(-most, most);
    }

    private int nonsense(int bits) {
        int top = 1 << bits;
        return switch (dice.between(0, 6)) {
            case 0 -> top - 1;
            case 1 -> -top;
            case 2 -> top;
            case 3 -> dice.of(Integer.MIN_VALUE, Integer.MAX_VALUE, 0, -1, 1);
            case 4 -> dice.between(Integer.MIN_VALUE, Integer.MAX_VALUE);
            default -> dice.between(-top, top - 1);
        };
    }

    private int temperature() {
        return !isCalm && dice.once(50)
                ? dice.of(Sample.TEMPERATURE_ABSENT, -300_000, 300_000, 0, -1)
                : temperatureMillicelsius;
    }

    private int shuntCounts(long current) {
        long microvolts = current * shuntRatedMicrovolts / shuntRatedMilliamps;
        long counts = microvolts * (1L << (shuntBits - 1)) / shuntFullScaleMicrovolts;
        return (int)
                Math.max(-(1L << (shuntBits - 1)), Math.min((1L << (shuntBits - 1)) - 1, counts));
    }

    private int voltageCounts(long voltage) {
        long counts = voltage * (1L << voltageBits) / voltageFullScaleMillivolts;
        return (int) Math.max(0, Math.min((1L << voltageBits) - 1, counts));
    }
}
