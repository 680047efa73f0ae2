package org.gaugebench.sim.device.exhibits;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.memory.CutPlan;
import org.gaugebench.sim.memory.PowerCut;
import org.gaugebench.sim.scenario.Mistake;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The form in which the count is held, and where it ends. Figures: catalogue of edge cases. */
class AccumulatorMistakesTest {
    private static final GaugeSettings SETTINGS = Bench.settings().build();

    /** Whole counts and whole milliseconds: only the last printed nanocoulomb is rounded. */
    private static final double EXACT = 1e-9;

    /** 360 000 As; steps of 0.03125 As; addends of 0.015 and 0.02 As. */
    @ParameterizedTest
    @CsvSource({"1.5, 5400, 0", "2.0, 7200, 11250"})
    void floatSwallowsOrDoublesSmallTicks(double amps, double trueAmpSeconds, double counted) {
        Bench bench = new Bench(SETTINGS, 10, 0, Mistake.FLOAT_ACCUMULATOR).declare(100);
        bench.run(-amps, 3_600);
        assertEquals(counted, (100 - bench.ampHours()) * 3_600, EXACT * 3_600);
        assertEquals(trueAmpSeconds, (100 - bench.plainAmpHours()) * 3_600, EXACT * 3_600);
    }

    @Test
    void thirtyTwoBitsOfMilliampSecondsEndAt596AmpHoursAndAHalf() {
        GaugeSettings bank = Bench.settings().set(Setting.CAPACITY, 610_000).build();
        Bench bench = new Bench(bank, Mistake.OVERFLOW_32_BIT).declare(97);
        double highest = 0;
        for (int second = 0; second < 3_600 && bench.ampHours() >= highest; second++) {
            highest = bench.ampHours();
            bench.run(100, 1);
        }
        // 2^31 mA.s; one tick of 100 A for 1 s is 0.028 Ah
        assertEquals(596.523, highest, 0.028);
        assertEquals(0, bench.ampHours(), EXACT);
        assertEquals(596.523, bench.plainAmpHours(), 0.056);
    }

    @ParameterizedTest
    @CsvSource({"3, 0", "5, 0.72", "7, 0.5143"})
    void truncatingEachTickLosesWhatIsBelowAMilliampHour(double amps, double counted) {
        Bench bench = new Bench(SETTINGS, Mistake.TRUNCATE_EACH_TICK).declare(100);
        bench.run(-amps, 3_600);
        // 1 mAh a tick is exact; 0.5143 is 3.6 / 7 to four digits
        assertEquals(counted, (100 - bench.ampHours()) / amps, 5e-5);
        assertEquals(100 - amps, bench.plainAmpHours(), EXACT);
    }

    @Test
    void aLostSignTurnsWhatWentOutIntoWhatCameIn() {
        Bench bench = new Bench(SETTINGS, Mistake.LOST_SIGN).declare(60);
        bench.run(-5, 1_800);
        assertEquals(57.5, bench.percent(), 1e-3);
        double before = bench.percent();
        bench.run(5, 1);
        // 2 x 9000 As on 100 Ah; the second of charge itself is 0.0014 %
        assertEquals(5, bench.percent() - before, 2e-3);
        assertEquals(57.501, bench.plainAmpHours(), 1e-3);
    }

    @Test
    void efficiencyOnTotalsMovesTheCountWhenItIsEdited() {
        GaugeSettings settings =
                Bench.settings().set(Setting.COULOMBIC_EFFICIENCY, 990_000).build();
        Bench bench =
                new Bench(settings, Mistake.EFFICIENCY_ON_TOTALS, Mistake.NO_CLAMP).declare(0);
        bench.tickOf(3_600_000);
        for (int cycle = 0; cycle < 100; cycle++) {
            bench.run(100, 3_600).run(-99, 3_600);
        }
        assertEquals(0, bench.ampHours(), 1e-6);
        bench.change(Setting.COULOMBIC_EFFICIENCY, 980_000);
        // 10 000 Ah times one hundredth
        assertEquals(-100, bench.ampHours(), 1e-6);
    }

    @Test
    void aClampOfTheDisplayAloneLeavesFifteenAmpHoursToBurn() {
        Bench bench = new Bench(SETTINGS, Mistake.DISPLAY_ONLY_CLAMP).declare(100);
        bench.run(5, 3 * 3_600);
        assertEquals(100, bench.percent(), EXACT);
        bench.run(-20, 3_600);
        assertEquals(95, bench.percent(), 1e-4);
        assertEquals(80, bench.plainAmpHours(), EXACT);
    }

    @Test
    void withoutAClampTheFigureGoesBeyondFull() {
        Bench bench = new Bench(SETTINGS, Mistake.NO_CLAMP).declare(98);
        bench.run(5, 3 * 3_600);
        assertEquals(113, bench.percent(), 1e-4);
        assertEquals(100, bench.plainAmpHours(), EXACT);
    }

    @ParameterizedTest
    @CsvSource({"NO_CLAMP, -10", "DISPLAY_ONLY_CLAMP, 0"})
    void withoutAClampOfTheCountTenAmpHoursPastZeroAreOwed(Mistake mistake, double shown) {
        Bench bench = new Bench(SETTINGS, mistake).declare(10);
        bench.run(-20, 3_600);
        assertEquals(shown, bench.percent(), 1e-4);
        bench.run(50, 3_600);
        assertEquals(40, bench.percent(), 1e-4);
        assertEquals(50, bench.plainAmpHours(), EXACT);
    }

    @Test
    void aCountOfOnePartUnderZeroIsNotTakenForUnknown() {
        Bench bench = new Bench(SETTINGS, Mistake.NO_CLAMP).declare(0);
        bench.run(-0.36, 1);
        assertEquals(0, bench.read().stateOfChargePartsPerMillion);
        assertTrue(bench.read().remainingNanocoulombs < 0);
    }

    /** 40 % of 100 Ah, then 200 Ah: 60 Ah used leave 70 %, 40 Ah left are 20 %, 40 % are 40 %. */
    @ParameterizedTest
    @CsvSource({
        "EDIT_KEEPS_CHARGE_USED, 70, 140",
        "EDIT_KEEPS_CHARGE_LEFT, 20, 40",
        "LOST_SIGN, 40, 80"
    })
    void aCapacityEditKeepsWhatTheGaugeStores(Mistake mistake, double percent, double ampHours) {
        Bench bench = new Bench(Bench.settings().build(), mistake).declare(40);
        bench.change(Setting.CAPACITY, 200_000);
        assertEquals(percent, bench.percent(), 1e-4);
        assertEquals(ampHours, bench.ampHours(), 1e-6);
        assertEquals(80, bench.plainAmpHours(), 1e-6);
        assertEquals(1, bench.count(Event.SETTINGS_CHANGED));
        bench.change(Setting.CAPACITY, 200_000);
        assertEquals(1, bench.count(Event.SETTINGS_CHANGED), "told the same, it does nothing");
    }

    /** 60 Ah used do not fit into 50 Ah, and 40 Ah left do not fit into 30 Ah. */
    @Test
    void anEditedCountEndsAtEmptyAndFull() {
        Bench used = new Bench(Bench.settings().build(), Mistake.EDIT_KEEPS_CHARGE_USED);
        assertEquals(0, used.declare(40).change(Setting.CAPACITY, 50_000).percent());
        Bench left = new Bench(Bench.settings().build(), Mistake.EDIT_KEEPS_CHARGE_LEFT);
        assertEquals(100, left.declare(40).change(Setting.CAPACITY, 30_000).percent());
    }

    @Test
    void anOverwritingGaugeKnowsAfterARestartWhatItSavedLast() {
        Bench bench = new Bench(Bench.settings().build(), Mistake.SAVE_BY_OVERWRITE);
        bench.powerUp(12_600);
        assertEquals(Readout.NOT_KNOWN, bench.read().stateOfChargePartsPerMillion);
        // A save step is 0.5 Ah: 1.2 Ah out are two steps and a rest of 0.2 Ah.
        bench.declare(80).run(-6, 720);
        assertEquals(78.8, bench.percent(), 1e-3);
        bench.powerUp(12_600);
        assertEquals(79, bench.percent(), 1e-2);
        assertEquals(1, bench.count(Event.RESTORED));
    }

    /** Erase and program are the two writes of a save; whatever is cut, no record is left. */
    @ParameterizedTest
    @CsvSource({"1, HALF", "1, GARBAGE", "2, NOTHING", "2, HALF", "2, GARBAGE"})
    void aCutInsideASaveLeavesNoRecord(int write, CutPlan.Manner manner) {
        Bench bench = new Bench(Bench.settings().build(), Mistake.SAVE_BY_OVERWRITE);
        bench.declare(80).run(-6, 10);
        bench.store.cutAtWrite(write, manner);
        assertThrows(PowerCut.class, () -> bench.run(-6, 720));
        bench.store.powerUp();
        bench.powerUp(12_600);
        assertEquals(Readout.NOT_KNOWN, bench.read().stateOfChargePartsPerMillion);
        assertEquals(0, bench.count(Event.RESTORED));
        assertEquals(0, bench.store.misuses());
        bench.declare(50).run(-6, 10);
        bench.powerUp(12_600);
        assertEquals(50, bench.percent(), 0.5);
    }
}
