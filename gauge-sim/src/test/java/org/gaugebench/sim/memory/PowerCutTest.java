package org.gaugebench.sim.memory;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.Gauge;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.EventSink;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.saved.SavedState;
import org.gaugebench.core.saved.SavedStateCodec;
import org.gaugebench.core.saved.SettingsMark;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.memory.CutPlan.Manner;
import org.junit.jupiter.api.Test;

/**
 * Power goes while a whole gauge saves: at every store operation of a life with saves by charge, a
 * declaration, an anchor, a settings edit and a sequence that wraps, and at every pair of them, in
 * every manner. {@link SavingGauge} judges what each restart finds.
 *
 * <p>The ordinary run takes a fixed slice of the pairs; {@code .ci/power-cuts} takes all.
 */
class PowerCutTest {
    private static final boolean ALL = "all".equals(System.getProperty("gaugebench.powercuts"));
    private static final int SLOT_BYTES = 256;
    private static final int[] SLOTS = {2, 3, 5};

    /** A stride without a common factor with 3 operations a save or with 4 manners. */
    private static final int STRIDE = ALL ? 1 : 37;

    private int restores;
    private int newRecords;

    /** A memory whose newest record's sequence wraps with the third save. */
    private static SimulatedStore store(int slots) {
        SimulatedStore store = new SimulatedStore(slots, SLOT_BYTES, 20_261_125L);
        GaugeSettings settings = SavingGauge.settings(1_000);
        SavedState nothingKnown = new SavedState();
        nothingKnown.bandResidualPartsPerMillion = 1_000_000;
        nothingKnown.capacityNanocoulombs = 3_600_000_000_000L;
        nothingKnown.ruleArmed = true;
        SettingsMark mark =
                new SettingsMark(
                        settings.fingerprint(),
                        (int) settings.get(Setting.CHEMISTRY),
                        (int) settings.get(Setting.NOMINAL_VOLTAGE));
        store.load(1, new SavedStateCodec().encode(nothingKnown, -3, mark).clone());
        return store;
    }

    private static int operationsOfACleanLife(int slots) {
        SimulatedStore store = store(slots);
        SavingGauge gauge = new SavingGauge(store);
        gauge.live();
        assertEquals(0, store.misuses());
        assertTrue(gauge.savesDone >= 8, "saves: " + gauge.savesDone);
        assertEquals(1, gauge.anchorSaves);
        return store.operations();
    }

    private void run(int slots, CutPlan plan) {
        SimulatedStore store = store(slots);
        store.setPlan(plan);
        SavingGauge gauge = new SavingGauge(store);
        try {
            for (int life = 0; life <= plan.cuts().size() + 1; life++) {
                try {
                    gauge.live();
                } catch (PowerCut e) {
                    // The gauge's own memory is gone; the store and the book-keeper go on.
                }
                store.powerUp();
            }
            assertEquals(0, store.misuses());
        } catch (AssertionError e) {
            throw new AssertionError(slots + " slots, " + plan + ": " + e.getMessage(), e);
        }
        restores += gauge.restores;
        newRecords += gauge.newRecords;
    }

    @Test
    void oneCutAtEveryOperationLeavesTheOldRecordOrTheNewOne() {
        int cuts = 0;
        for (int slots : SLOTS) {
            int operations = operationsOfACleanLife(slots);
            for (int at = 0; at < operations; at++) {
                for (Manner manner : Manner.values()) {
                    run(slots, CutPlan.at(at, manner));
                    cuts++;
                }
            }
        }
        print(cuts, "single cuts");
        assertTrue(cuts > 300, "cuts: " + cuts);
        assertTrue(newRecords > 0, "no cut ever left the new record: nothing was shown of it");
    }

    @Test
    void twoCutsAtEveryPairOfOperationsLeaveTheOldRecordOrTheNewOne() {
        int pairs = 0;
        int number = 0;
        for (int slots : SLOTS) {
            int operations = operationsOfACleanLife(slots);
            // A life after a restart may begin with reads repeated on a damaged slot.
            int second = operations + 2 * slots;
            for (int i = 0; i < operations * second; i++) {
                for (int manners = 0; manners < 16; manners++) {
                    if (number++ % STRIDE == 0) {
                        Manner first = Manner.values()[manners / 4];
                        Manner then = Manner.values()[manners % 4];
                        run(slots, CutPlan.atBoth(i / second, first, i % second, then));
                        pairs++;
                    }
                }
            }
        }
        print(pairs, "pairs of cuts" + (ALL ? "" : " (a slice; .ci/power-cuts runs all)"));
        assertTrue(pairs > 1_000, "pairs: " + pairs);
    }

    private void print(int cuts, String what) {
        System.out.println(
                "power cuts of a whole gauge: "
                        + cuts
                        + " "
                        + what
                        + ", "
                        + restores
                        + " restarts judged, "
                        + newRecords
                        + " of them on the new record");
    }

    /** Cranking pulls the battery down ten times in three seconds; the gauge resets each time. */
    @Test
    void tenBrownOutsInThreeSecondsWriteNothing() {
        SimulatedStore store = store(4);
        GaugeSettings settings = SavingGauge.settings(100_000);
        Sample sample = new Sample();
        Gauge gauge = new Gauge(settings, store, EventSink.NONE);
        gauge.powerUp(0, OffTime.EXACT);
        gauge.command(Command.DECLARE_STATE_OF_CHARGE, 700_000);
        sample.voltageCounts = 12_600;
        for (int second = 0; second < 30; second++) {
            sample.clockMillis += 1_000;
            gauge.tick(sample);
        }
        int writes = store.writes();
        assertTrue(writes >= 2, "the declaration was saved");
        byte[] before = store.bytesOf(0);
        Readout readout = new Readout();
        for (int brownOut = 0; brownOut < 10; brownOut++) {
            store.powerUp();
            Gauge again = new Gauge(settings, store, EventSink.NONE);
            again.powerUp(0, OffTime.EXACT);
            // 500 A, from 12.6 V down to 5 V within 300 ms.
            for (int i = 0; i < 3; i++) {
                sample.clockMillis += 100;
                sample.shuntCounts = -500 * 8_000;
                sample.voltageCounts = 12_600 - 3_800 * i;
                again.tick(sample);
            }
            again.read(readout);
            assertEquals(700_000, readout.stateOfChargePartsPerMillion, 500);
        }
        assertEquals(writes, store.writes(), "writes in ten brown-outs");
        assertArrayEquals(before, store.bytesOf(0));
    }
}
