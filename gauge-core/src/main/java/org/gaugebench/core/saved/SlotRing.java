package org.gaugebench.core.saved;

import java.util.Arrays;
import org.gaugebench.core.fixed.Sequence;
import org.gaugebench.core.port.StateStore;
import org.gaugebench.core.saved.SlotHeader.Content;

/**
 * Keeps the state in a ring of slots so that a power cut at any moment leaves the record before or
 * the new one, whole.
 *
 * <p>A save erases the slot that is worth least (never the newest record that checks), programs it,
 * reads it back, and only when every byte is equal counts it as current. A slot that fails is left
 * aside until nothing else is left or power comes up again, and the save goes on with the next. A
 * slot that reads as blank is erased all the same: an erase that was cut can leave cells that read
 * as erased today and not tomorrow (common practice, no source).
 *
 * <p>Nothing is written at power-up. No method throws or allocates after construction. An exception
 * thrown by the store (the simulator's power cut) passes through; the object is then to be dropped,
 * as a machine's memory is.
 */
public final class SlotRing {
    /** Each slot is read at most this often: one reading may be spoilt by low volts. */
    private static final int READING_COUNT = 2;

    private static final int FEWEST_SLOTS = 2;

    // Parameters.
    private final StateStore store;
    private final boolean usable;

    // State.
    private final SavedStateCodec codec = new SavedStateCodec();
    private final byte[] image = new byte[SavedStateLayout.recordBytes(SavedStateLayout.VERSION)];
    private final SlotHeader[] headers;
    private final boolean[] failed;
    private final boolean[] tried;
    private final boolean[] excluded;
    private final SlotDecision decision = new SlotDecision();
    private SettingsMark settings;
    private boolean surveyed;
    private int lastSequence;
    private int savesCount;

    /**
     * Makes a ring on a store. The store is not touched before {@link #open}.
     *
     * @param store the memory; one with fewer than two slots, or too small ones, keeps nothing
     * @param settings the settings of now
     */
    public SlotRing(StateStore store, SettingsMark settings) {
        this.store = store;
        this.settings = settings;
        usable = store.slots() >= FEWEST_SLOTS && store.slotBytes() >= image.length;
        headers = new SlotHeader[usable ? store.slots() : 0];
        for (int i = 0; i < headers.length; i++) {
            headers[i] = new SlotHeader();
        }
        failed = new boolean[headers.length];
        tried = new boolean[headers.length];
        excluded = new boolean[headers.length];
    }

    /**
     * Reads the slots after power-up and hands over the newest state that checks. Writes nothing.
     *
     * @param state receives the fields, unless the answer is {@link SlotOutcome#NONE_VALID} or
     *     {@link SlotOutcome#FOREIGN_BATTERY}: then it is left as it is
     * @return what was found
     */
    public SlotOutcome open(SavedState state) {
        for (int i = 0; i < failed.length; i++) {
            failed[i] = false;
        }
        survey();
        if (decision.outcome != SlotOutcome.NONE_VALID
                && decision.outcome != SlotOutcome.FOREIGN_BATTERY) {
            SavedStateCodec.decode(image, state);
        }
        return decision.outcome;
    }

    /** Reads every slot, decides, and leaves the chosen record in the image. */
    private void survey() {
        for (int i = 0; i < headers.length; i++) {
            read(i);
        }
        do {
            SlotChooser.choose(headers, settings, decision);
            // A record that checked a moment ago and does not now is damaged: choose again.
        } while (decision.newestSlot != SlotDecision.NO_SLOT && !read(decision.newestSlot));
        boolean found = decision.newestSlot != SlotDecision.NO_SLOT;
        lastSequence = found ? headers[decision.newestSlot].sequence : 0;
        savesCount = found ? (int) SavedStateCodec.valueOf(image, SavedField.SAVES_COUNT) : 0;
        surveyed = true;
    }

    /** Reads a slot into the image and its header; a second time where the first does not check. */
    private boolean read(int slot) {
        SlotHeader header = headers[slot];
        for (int reading = 0; reading < READING_COUNT; reading++) {
            if (store.read(slot, image) == StateStore.OK) {
                SavedStateCodec.inspect(image, header);
                if (header.isValid() && !SavedStateCodec.isPlausible(image)) {
                    header.content = Content.DAMAGED;
                }
            } else {
                header.content = Content.DAMAGED;
            }
            if (header.isValid() || header.content == Content.BLANK) {
                break;
            }
        }
        return header.isValid();
    }

    /**
     * Writes a state as the newest record.
     *
     * <p>Every attempt takes a sequence number of its own: were the number of a failed attempt used
     * again, a slot that failed only on reading back could later compete with the record that
     * replaced it.
     *
     * @param state what to keep; its {@link SavedState#savesCount} is set here
     * @return one word
     */
    public SaveOutcome save(SavedState state) {
        if (!usable) {
            return SaveOutcome.NO_STORE;
        }
        if (!surveyed) {
            // Without a survey the newest record could be the one erased.
            survey();
        }
        clearTried();
        boolean anyFailed = false;
        for (int slot = nextVictim(); slot != SlotDecision.NO_SLOT; slot = nextVictim()) {
            tried[slot] = true;
            failed[slot] = !write(slot, state);
            if (!failed[slot]) {
                return anyFailed ? SaveOutcome.SAVED_AFTER_FAILURE : SaveOutcome.SAVED;
            }
            anyFailed = true;
        }
        return SaveOutcome.NOT_SAVED;
    }

    private void clearTried() {
        for (int i = 0; i < tried.length; i++) {
            tried[i] = false;
        }
    }

    /** A slot not tried in this save: first one that never failed, then any. */
    private int nextVictim() {
        for (int i = 0; i < excluded.length; i++) {
            excluded[i] = tried[i] || failed[i];
        }
        int slot = SlotChooser.chooseVictim(headers, decision.newestSlot, excluded);
        return slot != SlotDecision.NO_SLOT
                ? slot
                : SlotChooser.chooseVictim(headers, decision.newestSlot, tried);
    }

    /** Erase, program, read back, compare; only then is the record the current one. */
    private boolean write(int slot, SavedState state) {
        lastSequence = Sequence.next(lastSequence);
        savesCount += savesCount < Integer.MAX_VALUE ? 1 : 0;
        state.savesCount = savesCount;
        byte[] record = codec.encode(state, lastSequence, settings);
        headers[slot].content = Content.DAMAGED;
        if (store.erase(slot) != StateStore.OK
                || store.program(slot, record) != StateStore.OK
                || store.read(slot, image) != StateStore.OK
                || !Arrays.equals(record, image)) {
            return false;
        }
        SavedStateCodec.inspect(image, headers[slot]);
        decision.newestSlot = slot;
        return true;
    }

    /**
     * Other settings are in force from the next save on. The caller saves at once after this.
     *
     * @param changed the settings of now
     */
    public void changeSettings(SettingsMark changed) {
        settings = changed;
    }

    /**
     * How many slots were neither blank nor valid when the slots were last surveyed.
     *
     * @return 0 for a sound memory, or one in which no save was ever cut
     */
    public int damagedSlots() {
        return decision.damagedSlots;
    }

    /**
     * How many slots failed to take a record since power-up and have not taken one since.
     *
     * @return 0 for a sound memory
     */
    public int failedSlots() {
        int count = 0;
        for (int i = 0; i < failed.length; i++) {
            if (failed[i]) {
                count++;
            }
        }
        return count;
    }

    /**
     * The slot that holds the current record.
     *
     * @return its number, or {@link SlotDecision#NO_SLOT}
     */
    public int newestSlot() {
        return decision.newestSlot;
    }
}
