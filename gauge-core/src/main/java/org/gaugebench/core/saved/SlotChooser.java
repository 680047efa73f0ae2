package org.gaugebench.core.saved;

import org.gaugebench.core.fixed.Sequence;
import org.gaugebench.core.saved.SlotHeader.Content;

/**
 * Which record to believe and which slot to write next: headers in, decision out. Touches no
 * memory, so every combination can be tried.
 */
public final class SlotChooser {
    private SlotChooser() {}

    /**
     * Decides which record to believe. Only the newest record that checks is ever believed: an
     * older one under the present settings would describe a battery or a time that has gone.
     *
     * @param headers what the slots hold
     * @param settings the settings of now
     * @param decision receives the answer
     */
    public static void choose(SlotHeader[] headers, SettingsMark settings, SlotDecision decision) {
        decision.newestSlot = SlotDecision.NO_SLOT;
        decision.damagedSlots = 0;
        for (int i = 0; i < headers.length; i++) {
            if (headers[i].isValid()) {
                if (decision.newestSlot == SlotDecision.NO_SLOT
                        || Sequence.isNewer(
                                headers[i].sequence, headers[decision.newestSlot].sequence)) {
                    decision.newestSlot = i;
                }
            } else if (headers[i].content != Content.BLANK) {
                decision.damagedSlots++;
            }
        }
        decision.outcome = outcome(headers, settings, decision);
    }

    private static SlotOutcome outcome(
            SlotHeader[] headers, SettingsMark settings, SlotDecision decision) {
        if (decision.newestSlot == SlotDecision.NO_SLOT) {
            return SlotOutcome.NONE_VALID;
        }
        SlotHeader newest = headers[decision.newestSlot];
        if (newest.chemistryCode != settings.chemistryCode()
                || newest.nominalMillivolts != settings.nominalMillivolts()) {
            return SlotOutcome.FOREIGN_BATTERY;
        }
        if (newest.fingerprint != settings.fingerprint()) {
            return SlotOutcome.FOREIGN_SETTINGS;
        }
        return decision.damagedSlots > 0 ? SlotOutcome.OLDER_ONE_USED : SlotOutcome.NEWEST;
    }

    /**
     * Decides which slot to write next: one that holds no record that checks, else the oldest
     * record; among equals the first after the newest, so that a ring wears evenly. Never the
     * newest record that checks, whatever else is left.
     *
     * @param headers what the slots hold
     * @param newestSlot the slot to keep, or {@link SlotDecision#NO_SLOT}
     * @param excluded slots not to be chosen, one flag each
     * @return a slot, or {@link SlotDecision#NO_SLOT} where none is left
     */
    public static int chooseVictim(SlotHeader[] headers, int newestSlot, boolean[] excluded) {
        int victim = SlotDecision.NO_SLOT;
        for (int step = 1; step <= headers.length; step++) {
            // From NO_SLOT (-1) the first step leads to slot 0.
            int slot = (newestSlot + step) % headers.length;
            if (slot == newestSlot || excluded[slot]) {
                continue;
            }
            if (victim == SlotDecision.NO_SLOT || isWorthLess(headers[slot], headers[victim])) {
                victim = slot;
            }
        }
        return victim;
    }

    private static boolean isWorthLess(SlotHeader candidate, SlotHeader other) {
        if (!other.isValid()) {
            return false;
        }
        return !candidate.isValid() || Sequence.isNewer(other.sequence, candidate.sequence);
    }
}
