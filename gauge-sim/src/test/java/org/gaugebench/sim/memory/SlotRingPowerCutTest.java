package org.gaugebench.sim.memory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.gaugebench.core.saved.SavedState;
import org.gaugebench.core.saved.SavedStateCodec;
import org.gaugebench.core.saved.SettingsMark;
import org.gaugebench.sim.memory.CutPlan.Manner;
import org.junit.jupiter.api.Test;

/**
 * Counts the memory operations of a clean run, then cuts power at each of them, and at each pair of
 * them (the second counted from the restart), with each manner for each cut. After every restart
 * the state must be the old record or the new one and within a save step of the count.
 *
 * <p>The ordinary run takes pairs of every manner for two slots and a short life. {@code
 * .ci/power-cuts} takes all pairs of all geometries ({@code -Dgaugebench.powercuts=all}).
 */
class SlotRingPowerCutTest {
    private static final boolean ALL = "all".equals(System.getProperty("gaugebench.powercuts"));
    private static final int SLOT_BYTES = 256;
    private static final long SEED = 20_261_125L;

    /** How the memory is prepared: slots, and whether its sequence is about to wrap. */
    private record Geometry(int slots, boolean sequenceAboutToWrap) {}

    private static final List<Geometry> GEOMETRIES =
            List.of(
                    new Geometry(2, false),
                    new Geometry(2, true),
                    new Geometry(3, false),
                    new Geometry(3, true),
                    new Geometry(5, true));

    private int lives;

    private static SimulatedStore store(Geometry geometry) {
        SimulatedStore store = new SimulatedStore(geometry.slots, SLOT_BYTES, SEED);
        if (geometry.sequenceAboutToWrap) {
            store.load(1, new SavedStateCodec().encode(earlier(), -3, mark()).clone());
        }
        return store;
    }

    private static SavedState earlier() {
        SavedState state = SavingMachine.stateOf(0);
        state.chargeNanocoulombs = SavingMachine.CAPACITY / 2;
        return state;
    }

    private static SettingsMark mark() {
        return new SettingsMark(0x1111, 1, 12_000);
    }

    private static SavingMachine machine(Geometry geometry, SimulatedStore store, int ticks) {
        SavingMachine machine = new SavingMachine(store, ticks);
        if (geometry.sequenceAboutToWrap) {
            machine.wasSavedBefore(earlier());
        }
        return machine;
    }

    /** Operations of a run of so many lives without a cut, the last life's alone. */
    private static int operationsOfACleanRun(Geometry geometry, int ticks) {
        SimulatedStore store = store(geometry);
        SavingMachine machine = machine(geometry, store, ticks);
        machine.live();
        assertEquals(0, store.misuses());
        assertTrue(machine.savesDone >= 4, "saves: " + machine.savesDone);
        assertTrue(machine.anchorSaves >= 1, "anchor saves: " + machine.anchorSaves);
        return store.operations();
    }

    /** Runs a plan to its end and one life beyond, so that the last cut's leftover is judged. */
    private void run(Geometry geometry, int ticks, CutPlan plan) {
        SimulatedStore store = store(geometry);
        store.setPlan(plan);
        SavingMachine machine = machine(geometry, store, ticks);
        try {
            for (int life = 0; life <= plan.cuts().size(); life++) {
                liveUntilCut(machine);
                store.powerUp();
            }
            // What the last, undisturbed life left must be its last record.
            liveUntilCut(machine);
            assertEquals(0, store.misuses());
        } catch (AssertionError e) {
            throw new AssertionError(geometry + ", " + plan + ": " + e.getMessage(), e);
        }
    }

    private void liveUntilCut(SavingMachine machine) {
        lives++;
        try {
            machine.live();
        } catch (PowerCut e) {
            // The machine's own memory is gone; the store and the book-keeper go on.
        }
    }

    @Test
    void oneCutAtEveryOperationLeavesTheOldOrTheNewRecord() {
        int cuts = 0;
        for (Geometry geometry : GEOMETRIES) {
            int operations = operationsOfACleanRun(geometry, 44);
            for (int at = 0; at < operations; at++) {
                for (Manner manner : Manner.values()) {
                    run(geometry, 44, CutPlan.at(at, manner));
                    cuts++;
                }
            }
        }
        System.out.println("power cuts: " + cuts + " single cuts, " + lives + " lives");
        assertTrue(cuts > 500, "cuts: " + cuts);
    }

    @Test
    void aSecondCutAtEveryOperationAfterTheRestartLeavesTheOldOrTheNewRecord() {
        int pairs = 0;
        List<Geometry> geometries = ALL ? GEOMETRIES : GEOMETRIES.subList(0, 2);
        int ticks = ALL ? 44 : 14;
        for (Geometry geometry : geometries) {
            int operations = operationsOfACleanRun(geometry, ticks);
            // A life after a restart may begin with reads repeated on a damaged slot.
            int second = operations + 2 * geometry.slots;
            for (int i = 0; i < operations; i++) {
                for (int j = 0; j < second; j++) {
                    pairs += runPairs(geometry, ticks, i, j);
                }
            }
        }
        System.out.println(
                "power cuts: "
                        + pairs
                        + " pairs of cuts, "
                        + lives
                        + " lives"
                        + (ALL ? "" : " (a slice; .ci/power-cuts runs all)"));
        assertTrue(pairs > 5_000, "pairs: " + pairs);
    }

    private int runPairs(Geometry geometry, int ticks, int first, int second) {
        for (Manner a : Manner.values()) {
            for (Manner b : Manner.values()) {
                run(geometry, ticks, CutPlan.atBoth(first, a, second, b));
            }
        }
        return Manner.values().length * Manner.values().length;
    }
}
