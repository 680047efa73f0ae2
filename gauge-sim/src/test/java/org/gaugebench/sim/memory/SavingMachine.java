package org.gaugebench.sim.memory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.gaugebench.core.saved.SaveReason;
import org.gaugebench.core.saved.SaveSchedule;
import org.gaugebench.core.saved.SavedField;
import org.gaugebench.core.saved.SavedState;
import org.gaugebench.core.saved.SettingsMark;
import org.gaugebench.core.saved.SlotOutcome;
import org.gaugebench.core.saved.SlotRing;
import org.gaugebench.core.saved.States;
import org.jspecify.annotations.Nullable;

/**
 * A machine that counts charge and saves, life after life, on one memory; and the book-keeper
 * beside it, who knows what was written and refuses any other state after a restart. Every field of
 * a saved state depends on the number of the save, so a mix of two shows.
 */
final class SavingMachine {
    static final long CAPACITY = 360_000_000_000_000L;
    private static final SettingsMark[] SETTINGS = {
        new SettingsMark(0x1111, 1, 12_000), new SettingsMark(0x2222, 1, 12_000)
    };
    private static final int TICK_MILLIS = 60_000;
    private static final int VOLTS_12_5 = 12_500_000;

    private final SimulatedStore store;
    private final int ticksOfALife;

    // The installer's settings outlive the machine.
    private int settingsNumber;

    // The book-keeper.
    private long @Nullable [] lastCompleted;
    private long @Nullable [] underWay;
    private int completedSettings;
    private int underWaySettings;
    private int savesBegun;
    private boolean anchorUnsaved;
    private long countBeforeAnchor;
    private boolean everCounted;
    int savesDone;
    int anchorSaves;

    // The machine's own memory, lost with each life.
    private long count;

    SavingMachine(SimulatedStore store, int ticksOfALife) {
        this.store = store;
        this.ticksOfALife = ticksOfALife;
    }

    /** The state that save number n writes, before the count is put in. */
    static SavedState stateOf(int number) {
        SavedState state = States.filled(number);
        // The count that is put in has to lie within it.
        state.capacityNanocoulombs = Math.max(state.capacityNanocoulombs, CAPACITY);
        return state;
    }

    /** All fields but the count of saves, which the ring keeps itself. */
    private static long[] snapshot(SavedState state) {
        long[] values = new long[SavedField.values().length];
        for (SavedField field : SavedField.values()) {
            values[field.ordinal()] = field == SavedField.SAVES_COUNT ? 0 : field.get(state);
        }
        return values;
    }

    /** A record of an earlier life is already in the memory. */
    void wasSavedBefore(SavedState state) {
        lastCompleted = snapshot(state);
        count = state.chargeNanocoulombs;
        everCounted = true;
    }

    /** One life from power-up to the end of the script, or to the power cut that is thrown. */
    void live() {
        SlotRing ring = new SlotRing(store, SETTINGS[settingsNumber]);
        SavedState restored = new SavedState();
        SlotOutcome outcome = ring.open(restored);
        check(outcome, restored);
        SaveSchedule schedule =
                new SaveSchedule(CAPACITY, SaveSchedule.DEFAULT_STEP_PARTS_PER_MILLION, 12_000);
        long gross = 0;
        if (outcome == SlotOutcome.NONE_VALID) {
            count = CAPACITY / 2;
            schedule.powerUp(count, gross);
            schedule.anchored();
        } else {
            count = restored.chargeNanocoulombs;
            schedule.powerUp(count, gross);
        }
        everCounted = true;
        // A quarter of a step a tick: a save is due when exactly a step has moved.
        long move = schedule.stepNanocoulombs() / 4;
        for (int tick = 1; tick <= ticksOfALife; tick++) {
            count -= move;
            gross += move;
            if (tick % 7 == 0) {
                anchor(schedule);
            }
            if (tick % 10 == 0) {
                settingsNumber = 1 - settingsNumber;
                ring.changeSettings(SETTINGS[settingsNumber]);
                schedule.settingsChanged();
            }
            SaveReason reason = schedule.due(count, gross, VOLTS_12_5, TICK_MILLIS);
            if (reason != SaveReason.NONE) {
                save(ring);
                anchorSaves += reason == SaveReason.ANCHORED ? 1 : 0;
                schedule.attempted(count, gross);
            }
        }
    }

    private void anchor(SaveSchedule schedule) {
        if (!anchorUnsaved) {
            countBeforeAnchor = count;
            anchorUnsaved = true;
        }
        count = CAPACITY / 10 * 9;
        schedule.anchored();
    }

    private void save(SlotRing ring) {
        SavedState state = stateOf(++savesBegun);
        state.chargeNanocoulombs = count;
        underWay = snapshot(state);
        underWaySettings = settingsNumber;
        assertTrue(ring.save(state).isSaved());
        lastCompleted = underWay;
        completedSettings = underWaySettings;
        underWay = null;
        anchorUnsaved = false;
        savesDone++;
    }

    /** After a restart: the old record or the new one, whole, and within a save step. */
    private void check(SlotOutcome outcome, SavedState restored) {
        if (outcome == SlotOutcome.NONE_VALID) {
            assertEquals(null, lastCompleted, "a completed record was lost");
            underWay = null;
            anchorUnsaved = false;
            return;
        }
        long[] found = snapshot(restored);
        boolean isNew = underWay != null && Arrays.equals(underWay, found);
        boolean isOld = lastCompleted != null && Arrays.equals(lastCompleted, found);
        assertTrue(isNew || isOld, "neither the old record nor the new one");
        if (isNew) {
            completedSettings = underWaySettings;
        }
        assertEquals(
                completedSettings != settingsNumber,
                outcome == SlotOutcome.FOREIGN_SETTINGS,
                "settings of the record");
        long step = CAPACITY / 200;
        long reference = anchorUnsaved && !isNew ? countBeforeAnchor : count;
        assertTrue(everCounted);
        assertTrue(
                Math.abs(restored.chargeNanocoulombs - reference) <= step,
                "restored further than a save step from the count");
        lastCompleted = found;
        underWay = null;
        anchorUnsaved = false;
    }
}
