package org.gaugebench.core;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.gaugebench.core.charge.EnergyCounter;
import org.gaugebench.core.port.EventSink;
import org.gaugebench.core.saved.SavedField;
import org.gaugebench.core.saved.SavedState;
import org.gaugebench.core.saved.SettingsMark;
import org.gaugebench.core.saved.SlotOutcome;
import org.gaugebench.core.saved.SlotRing;
import org.gaugebench.core.saved.StrictStore;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/** Capture, restore, capture: the second record equals the first in every field. */
final class RecordIdentity {
    private RecordIdentity() {}

    /** Restores the newest record of a memory into fresh stages and captures them again. */
    static void check(StrictStore store, GaugeSettings settings) {
        StrictStore copy = new StrictStore(store.slots(), store.slotBytes());
        for (int slot = 0; slot < store.slots(); slot++) {
            copy.cells[slot] = store.cells[slot].clone();
        }
        SavedState before = new SavedState();
        if (new SlotRing(copy, mark(settings)).open(before) != SlotOutcome.NEWEST) {
            return;
        }
        Stages stages = new Stages(settings);
        EnergyCounter energy = new EnergyCounter();
        Corrections corrections = new Corrections(EventSink.NONE);
        GaugeMemory memory = new GaugeMemory(copy, settings);
        memory.open();
        memory.restore(stages, energy, corrections);
        stages.markAccounted();
        memory.begin(stages);
        LastSample last = new LastSample();
        last.voltageMicrovolts = before.voltageMicrovolts;
        last.currentMicroamps = before.currentMicroamps;
        memory.save(stages, energy, corrections, 0, last);
        SavedState after = new SavedState();
        new SlotRing(copy, mark(settings)).open(after);
        assertEquals(before.savesCount + 1, after.savesCount);
        for (SavedField field : SavedField.values()) {
            if (field != SavedField.SAVES_COUNT) {
                assertEquals(field.get(before), field.get(after), field.name());
            }
        }
    }

    private static SettingsMark mark(GaugeSettings settings) {
        return new SettingsMark(
                settings.fingerprint(),
                (int) settings.get(Setting.CHEMISTRY),
                (int) settings.get(Setting.NOMINAL_VOLTAGE));
    }
}
