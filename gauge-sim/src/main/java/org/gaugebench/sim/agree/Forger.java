package org.gaugebench.sim.agree;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.core.saved.SavedField;
import org.gaugebench.core.saved.SavedState;
import org.gaugebench.core.saved.SavedStateCodec;
import org.gaugebench.core.saved.SavedStateLayout;
import org.gaugebench.core.saved.SettingsMark;
import org.gaugebench.core.saved.SlotHeader;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.memory.SimulatedStore;

/**
 * Records that nobody's gauge wrote, with a right check word: half of them hold figures at the ends
 * of their ranges and between, half also some that no core can have written (rule M7).
 */
final class Forger {
    private static final SavedField[] FIELDS = SavedField.values();
    private static final int RECORD_BYTES = SavedStateLayout.recordBytes(SavedStateLayout.VERSION);
    private static final long NANOCOULOMBS_PER_MILLIAMP_HOUR = 3_600_000_000L;

    private Forger() {}

    /** Draws a record for a memory of so many slots. */
    static Step.Forge draw(Dice dice, GaugeSettings settings, int slots) {
        List<Long> figures = new ArrayList<>();
        for (SavedField field : FIELDS) {
            figures.add(
                    switch (dice.between(0, 4)) {
                        case 0 -> field.lowest();
                        case 1 -> field.highest();
                        case 2 -> field.lowest() + dice.ofAnySize(1L << 62) % 1_000;
                        default -> dice.between(field.lowest(), field.highest());
                    });
        }
        int capacity = SavedField.CAPACITY_NANOCOULOMBS.ordinal();
        int charge = SavedField.CHARGE_NANOCOULOMBS.ordinal();
        if (dice.once(2)) {
            figures.set(capacity, settings.get(Setting.CAPACITY) * NANOCOULOMBS_PER_MILLIAMP_HOUR);
        }
        figures.set(charge, Math.min(figures.get(charge), figures.get(capacity)));
        for (int beyond = dice.between(-2, 2); beyond > 0; beyond--) {
            SavedField field = dice.of(FIELDS);
            int spare = Long.SIZE - Byte.SIZE * field.sizeBytes();
            long bits = dice.between(Long.MIN_VALUE, Long.MAX_VALUE);
            long extreme = dice.once(2) ? Long.MIN_VALUE : Long.MAX_VALUE;
            figures.set(field.ordinal(), (dice.once(2) ? bits << spare : extreme) >> spare);
        }
        return new Step.Forge(dice.between(0, slots - 1), dice.once(4), figures);
    }

    /** Puts a record into a memory; one without slots, or with too small ones, stays as it is. */
    static void put(Step.Forge forge, SimulatedStore memory, GaugeSettings settings) {
        if (memory.slots() == 0 || memory.slotBytes() < RECORD_BYTES) {
            return;
        }
        SavedState state = new SavedState();
        for (SavedField field : FIELDS) {
            field.set(state, forge.figures().get(field.ordinal()));
        }
        SettingsMark mark =
                new SettingsMark(
                        forge.isForeign() ? ~settings.fingerprint() : settings.fingerprint(),
                        (int) settings.get(Setting.CHEMISTRY),
                        (int) settings.get(Setting.NOMINAL_VOLTAGE));
        byte[] record = new SavedStateCodec().encode(state, afterAllOf(memory), mark);
        memory.load(forge.slot() % memory.slots(), record);
    }

    /** A sequence number that is newer than those of all records there; both wrap on purpose. */
    private static int afterAllOf(SimulatedStore memory) {
        SlotHeader header = new SlotHeader();
        boolean any = false;
        int newest = 0;
        for (int slot = 0; slot < memory.slots(); slot++) {
            SavedStateCodec.inspect(memory.bytesOf(slot), header);
            if (header.isValid() && (!any || header.sequence - newest > 0)) {
                newest = header.sequence;
                any = true;
            }
        }
        return newest + 1;
    }
}
