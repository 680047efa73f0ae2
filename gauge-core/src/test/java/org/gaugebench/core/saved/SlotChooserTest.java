package org.gaugebench.core.saved;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.core.saved.SlotHeader.Content;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Every combination of slot contents for two to four slots. A slot is blank, damaged, of an unknown
 * version, or valid with one of the sequence numbers around a wrap and one of four settings marks.
 * The expected answer is worked out from a sorted list, not by comparing pairs.
 */
class SlotChooserTest {
    private static final SettingsMark NOW = new SettingsMark(10, 1, 12_000);
    private static final SettingsMark OTHER_SETTINGS = new SettingsMark(11, 1, 12_000);
    private static final SettingsMark OTHER_CHEMISTRY = new SettingsMark(10, 2, 12_000);
    private static final SettingsMark OTHER_VOLTAGE = new SettingsMark(10, 1, 24_000);
    private static final SettingsMark[] MARKS = {
        NOW, OTHER_SETTINGS, OTHER_CHEMISTRY, OTHER_VOLTAGE
    };

    /** Each begins a run of numbers that are newer one by one; the last three cross a wrap. */
    private static final int[] FIRST_NUMBERS = {1, -1, -2, -3, Integer.MAX_VALUE - 1};

    private static final int NOT_VALID_KINDS = 3;

    @ParameterizedTest
    @ValueSource(ints = {2, 3, 4})
    void everyCombinationIsDecidedAsTheSortedListSays(int slots) {
        int kinds = NOT_VALID_KINDS + slots * MARKS.length;
        int combinations = 1;
        for (int i = 0; i < slots; i++) {
            combinations *= kinds;
        }
        int checked = 0;
        for (int first : FIRST_NUMBERS) {
            for (int code = 0; code < combinations; code++) {
                checked += check(slots, kinds, code, first) ? 1 : 0;
            }
        }
        System.out.println("slot chooser: " + slots + " slots, " + checked + " combinations");
        assertTrue(checked > 100);
    }

    /** False for combinations in which two slots share a number, which a ring never writes. */
    private static boolean check(int slots, int kinds, int code, int first) {
        SlotHeader[] headers = new SlotHeader[slots];
        Integer[] slotOfRank = new Integer[slots];
        int damaged = 0;
        int rest = code;
        for (int slot = 0; slot < slots; slot++) {
            int kind = rest % kinds;
            rest /= kinds;
            headers[slot] = new SlotHeader();
            if (kind < NOT_VALID_KINDS) {
                headers[slot].content = Content.values()[kind];
                damaged += kind == Content.BLANK.ordinal() ? 0 : 1;
                continue;
            }
            int rank = (kind - NOT_VALID_KINDS) / MARKS.length;
            if (slotOfRank[rank] != null) {
                return false;
            }
            slotOfRank[rank] = slot;
            fill(headers[slot], first + rank, MARKS[(kind - NOT_VALID_KINDS) % MARKS.length]);
        }
        List<Integer> validOldestFirst = new ArrayList<>();
        for (Integer slot : slotOfRank) {
            if (slot != null) {
                validOldestFirst.add(slot);
            }
        }
        checkChoice(headers, validOldestFirst, damaged);
        checkVictims(headers, validOldestFirst);
        return true;
    }

    private static void fill(SlotHeader header, int sequence, SettingsMark mark) {
        header.content = Content.VALID;
        header.sequence = sequence;
        header.fingerprint = mark.fingerprint();
        header.chemistryCode = mark.chemistryCode();
        header.nominalMillivolts = mark.nominalMillivolts();
    }

    private static void checkChoice(
            SlotHeader[] headers, List<Integer> validOldestFirst, int damaged) {
        SlotDecision decision = new SlotDecision();
        SlotChooser.choose(headers, NOW, decision);
        assertEquals(damaged, decision.damagedSlots);
        if (validOldestFirst.isEmpty()) {
            assertEquals(SlotOutcome.NONE_VALID, decision.outcome);
            assertEquals(SlotDecision.NO_SLOT, decision.newestSlot);
            return;
        }
        int newest = validOldestFirst.get(validOldestFirst.size() - 1);
        assertEquals(newest, decision.newestSlot);
        SlotHeader header = headers[newest];
        SlotOutcome expected = damaged > 0 ? SlotOutcome.OLDER_ONE_USED : SlotOutcome.NEWEST;
        if (header.fingerprint == OTHER_SETTINGS.fingerprint()) {
            expected = SlotOutcome.FOREIGN_SETTINGS;
        }
        if (header.chemistryCode == OTHER_CHEMISTRY.chemistryCode()
                || header.nominalMillivolts == OTHER_VOLTAGE.nominalMillivolts()) {
            expected = SlotOutcome.FOREIGN_BATTERY;
        }
        assertEquals(expected, decision.outcome);
    }

    /** Taking victims one by one: first all that are not valid, then from the oldest on. */
    private static void checkVictims(SlotHeader[] headers, List<Integer> validOldestFirst) {
        boolean none = validOldestFirst.isEmpty();
        int newest =
                none ? SlotDecision.NO_SLOT : validOldestFirst.get(validOldestFirst.size() - 1);
        boolean[] excluded = new boolean[headers.length];
        int notValid = headers.length - validOldestFirst.size();
        for (int i = 0; i < notValid; i++) {
            int victim = SlotChooser.chooseVictim(headers, newest, excluded);
            assertFalse(headers[victim].isValid());
            excluded[victim] = true;
        }
        for (int i = 0; i < validOldestFirst.size() - 1; i++) {
            int victim = SlotChooser.chooseVictim(headers, newest, excluded);
            assertEquals(validOldestFirst.get(i), victim);
            assertNotEquals(newest, victim);
            excluded[victim] = true;
        }
        assertEquals(SlotDecision.NO_SLOT, SlotChooser.chooseVictim(headers, newest, excluded));
    }

    @Test
    void amongBlankSlotsTheOneAfterTheNewestIsWritten() {
        SlotHeader[] headers = {
            new SlotHeader(), new SlotHeader(), new SlotHeader(), new SlotHeader()
        };
        boolean[] none = new boolean[4];
        assertEquals(0, SlotChooser.chooseVictim(headers, SlotDecision.NO_SLOT, none));
        fill(headers[2], 1, NOW);
        assertEquals(3, SlotChooser.chooseVictim(headers, 2, none));
        none[3] = true;
        assertEquals(0, SlotChooser.chooseVictim(headers, 2, none));
    }
}
