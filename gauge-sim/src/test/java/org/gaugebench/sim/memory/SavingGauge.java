package org.gaugebench.sim.memory;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.Gauge;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.RuleState;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * A whole gauge on a simulated memory, and a book-keeper beside it that outlives every power cut.
 *
 * <p>A life: a declaration, a discharge with saves by charge moved, a charge that is proven full, a
 * settings edit, a discharge again. One second a tick; a battery of 1 Ah, so that a save step is
 * nine seconds of two amperes.
 */
final class SavingGauge {
    /** 5,000 ppm, the default save step. */
    static final long STEP_PARTS_PER_MILLION = 5_000;

    /** 2 A for a second out of 1 Ah, rounded up. */
    static final long TICK_PARTS_PER_MILLION = 556;

    private static final long NO_JUMP = Long.MIN_VALUE / 2;
    private static final int COUNTS_PER_AMP = 8_000;
    private static final int DISCHARGE_UNTIL = 25;
    private static final int DECLARE_AT = 12;
    private static final int CHARGE_UNTIL = 215;
    private static final int EDIT_AT = 228;
    static final int LIFE_TICKS = 255;

    /** What a record must bring back; the percentage stands for the charge. */
    private record Kept(
            long partsPerMillion,
            long residual,
            long bandMillis,
            long in,
            long out,
            long fullCount,
            long trust,
            boolean notArmed,
            long discharged) {
        /** The same moment: all but the residual, which every restart widens. */
        boolean isMomentOf(Kept other) {
            return Math.abs(partsPerMillion - other.partsPerMillion) <= 1
                    && bandMillis == other.bandMillis
                    && in == other.in
                    && out == other.out
                    && fullCount == other.fullCount
                    && trust == other.trust
                    && notArmed == other.notArmed
                    && discharged == other.discharged
                    && residual >= Math.min(other.residual + STEP_PARTS_PER_MILLION, 1_000_000)
                    && residual <= Math.min(other.residual + MOST_WIDENING, 1_000_000);
        }
    }

    /**
     * Two save steps where a slot does not check; under other settings the capacity bound, and by
     * how much all that a battery holds differs as a part of 1000 and of 1100 mAh (rule S2).
     */
    private static final long MOST_WIDENING = 2 * STEP_PARTS_PER_MILLION + 50_000 + 90_910;

    private final SimulatedStore store;
    private final Registers registers = new Registers();
    private GaugeSettings settings = settings(1_000);
    private Kept last;
    private Kept saved;

    /** The count before a correction that no record holds yet: the old record belongs to it. */
    private long beforeJump = NO_JUMP;

    private boolean anchored;
    int anchorSaves;
    int savesDone;
    int restores;
    int newRecords;

    SavingGauge(SimulatedStore store) {
        this.store = store;
        // An empty memory: nothing is known, nothing is armed off.
        saved = new Kept(-1, 1_000_000, 0, 0, 0, 0, 0, false, 0);
        last = saved;
    }

    static GaugeSettings settings(long capacityMilliampHours) {
        return GaugeSettings.builder()
                .set(Setting.SHUNT_CONVERTER_BITS, 24)
                .set(Setting.SHUNT_RATED_CURRENT, 1_048_576)
                .set(Setting.SHUNT_RATED_DROP, 100_000)
                .set(Setting.SHUNT_FULL_SCALE, 100_000)
                .set(Setting.VOLTAGE_CONVERTER_BITS, 16)
                .set(Setting.VOLTAGE_FULL_SCALE, 65_536)
                .set(Setting.CAPACITY, capacityMilliampHours)
                .set(Setting.HOLD, 1)
                .set(Setting.QUIET_TIME, 0)
                .set(Setting.TAPER, 100_000)
                .set(Setting.PLATEAU_HOLD, 0)
                .build();
    }

    /** One life from power-up to its last tick, or to the power cut that passes through. */
    void live() {
        Gauge gauge = new Gauge(settings, store, this::onEvent);
        gauge.powerUp(0, OffTime.EXACT);
        checkRestored(gauge);
        Sample sample = new Sample();
        for (int tick = 0; tick < LIFE_TICKS; tick++) {
            script(gauge, sample, tick);
            long savesBefore = savesOf(gauge);
            try {
                gauge.tick(sample);
            } finally {
                // On a power cut this is what the record under way holds.
                last = kept(gauge);
            }
            if (savesOf(gauge) > savesBefore) {
                saved = last;
                savesDone++;
                anchorSaves += anchored ? 1 : 0;
                anchored = false;
                beforeJump = NO_JUMP;
            }
        }
        // The power goes at the end of the life, between two saves.
    }

    private void onEvent(Event event, long uptimeMillis, long value) {
        boolean full = event == Event.SET_TO_FULL;
        anchored |= full;
        if ((full || event == Event.DECLARED) && beforeJump == NO_JUMP) {
            beforeJump = last.partsPerMillion;
        }
    }

    private void script(Gauge gauge, Sample sample, int tick) {
        sample.clockMillis += 1_000;
        if (tick == DECLARE_AT) {
            gauge.command(Command.DECLARE_STATE_OF_CHARGE, 900_000);
            last = kept(gauge);
        }
        if (tick == EDIT_AT) {
            settings = settings(settings.get(Setting.CAPACITY) == 1_000 ? 1_100 : 1_000);
            gauge.changeSettings(settings);
            last = kept(gauge);
        }
        boolean charging = tick >= DISCHARGE_UNTIL && tick < CHARGE_UNTIL;
        sample.voltageCounts = charging ? 14_400 : 12_500;
        sample.shuntCounts = charging ? COUNTS_PER_AMP * 9 / 100 : -2 * COUNTS_PER_AMP;
    }

    /** The state is the old record or the new one, whole, and within a save step of the count. */
    private void checkRestored(Gauge gauge) {
        Kept now = kept(gauge);
        boolean isOld = now.isMomentOf(saved);
        boolean isNew = now.isMomentOf(last);
        assertTrue(isOld || isNew, "a mix: " + now + "\n  old " + saved + "\n  new " + last);
        if (saved.partsPerMillion >= 0) {
            long most = STEP_PARTS_PER_MILLION + TICK_PARTS_PER_MILLION;
            long off =
                    Math.min(
                            Math.abs(now.partsPerMillion - last.partsPerMillion),
                            Math.abs(now.partsPerMillion - beforeJump));
            assertTrue(off <= most, "restored " + off + " ppm from the count");
            restores++;
            newRecords += isNew && !isOld ? 1 : 0;
        }
        if (!isOld) {
            saved = last;
        }
        last = now;
        beforeJump = NO_JUMP;
        anchored = false;
    }

    private Kept kept(Gauge gauge) {
        gauge.inspect(registers);
        boolean notArmed = registers.get(Register.RULE_STATE) == RuleState.NOT_ARMED.ordinal();
        return new Kept(
                registers.get(Register.STATE_OF_CHARGE_PARTS_PER_MILLION),
                registers.get(Register.BAND_RESIDUAL_PARTS_PER_MILLION),
                registers.get(Register.BAND_MILLIS) + registers.get(Register.MINUTE_MILLIS),
                registers.get(Register.IN_NANOCOULOMBS),
                registers.get(Register.OUT_NANOCOULOMBS),
                registers.get(Register.FULL_COUNT),
                registers.get(Register.TRUST),
                notArmed,
                notArmed ? registers.get(Register.RULE_DISCHARGED_NANOCOULOMBS) : 0);
    }

    private long savesOf(Gauge gauge) {
        gauge.inspect(registers);
        return registers.get(Register.SAVES);
    }
}
