package org.gaugebench.sim.device.exhibits;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Trust;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.scenario.Mistake;
import org.gaugebench.sim.scenario.MistakeFamily;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Full, empty, capacity and start believed without proof. Figures: catalogue of edge cases. */
class BeliefMistakesTest {
    /** 14.4 V of absorption, threshold 14.2 V, 2 % taper, 60 min hold, 13.5 V float. */
    private static final GaugeSettings SETTINGS = Bench.settings().build();

    @Test
    void theLooseRuleTakesWeakSunForFull() {
        Bench bench = new Bench(SETTINGS, Mistake.LOOSE_FULL_RULE).declare(70);
        // 3 % of the capacity at 13.46 V: FUL01's highest voltage
        bench.volts(13_460).run(3, 179);
        assertEquals(0, bench.count(Event.SET_TO_FULL));
        bench.run(3, 1);
        assertEquals(1, bench.count(Event.SET_TO_FULL));
        assertEquals(100, bench.percent(), 1e-9);
        assertEquals(Trust.PROVEN, bench.read().trust);
        assertEquals(70.15, bench.plainAmpHours(), 1e-9);
    }

    @Test
    void theLooseRuleIsArmedAgainByADischarge() {
        Bench bench = new Bench(SETTINGS, Mistake.LOOSE_FULL_RULE).declare(70);
        bench.volts(14_400).run(0, 3 * 3_600);
        assertEquals(1, bench.count(Event.SET_TO_FULL));
        bench.volts(12_600).run(-2, 3_600).volts(14_400).run(0, 600);
        assertEquals(2, bench.count(Event.SET_TO_FULL));
    }

    /** FUL08: the battery's protection opens, the bus stays at 14.4 V for 3 h without current. */
    @Test
    void withoutRearmThreeHoursOfNothingAreSixtyFullCharges() {
        Bench bench = new Bench(SETTINGS, Mistake.LOOSE_FULL_RULE, Mistake.NO_REARM);
        bench.declare(82).volts(14_400).run(0, 3 * 3_600);
        // Every 3 minutes; the catalogue's 45 are those of a hold of 4 minutes.
        assertEquals(60, bench.count(Event.SET_TO_FULL));
        assertEquals(18, bench.percent() - bench.plainAmpHours(), 1e-9);
    }

    @Test
    void theStrictRuleSeesAFullBatteryThatIsLeftAlone() {
        Bench bench = new Bench(SETTINGS, Mistake.STRICT_FULL_RULE).declare(90);
        bench.volts(14_400).run(2, 3_599);
        assertEquals(0, bench.count(Event.SET_TO_FULL));
        bench.run(2, 1);
        assertEquals(1, bench.count(Event.SET_TO_FULL));
    }

    @Test
    void theStrictRuleNeverSeesFullBesideAPump() {
        Bench bench = new Bench(SETTINGS, Mistake.STRICT_FULL_RULE).declare(90);
        bench.volts(14_400);
        for (int i = 0; i < 72; i++) {
            bench.run(1, 540).run(-4, 60);
        }
        assertEquals(0, bench.count(Event.SET_TO_FULL));
    }

    @Test
    void theStrictRuleNeverSeesFullWhenTheCurrentBounces() {
        Bench bench = new Bench(SETTINGS, Mistake.STRICT_FULL_RULE).declare(97);
        bench.volts(14_300);
        for (int i = 0; i < 540; i++) {
            bench.run(0.3, 20).run(-0.5, 20);
        }
        assertEquals(0, bench.count(Event.SET_TO_FULL));
    }

    /** 40 °C: 14.4 V less 15 K x 24 mV/K. */
    @Test
    void theStrictRuleNeverSeesFullBehindACompensatedCharger() {
        Bench bench = new Bench(SETTINGS, Mistake.STRICT_FULL_RULE).declare(97);
        bench.volts(14_040).run(0.5, 16 * 3_600);
        assertEquals(0, bench.count(Event.SET_TO_FULL));
    }

    @ParameterizedTest
    @CsvSource({"10, 0", "100, 1"})
    void voltageAloneTakesTheDropOfAPathForFull(int amps, int times) {
        Bench bench = new Bench(SETTINGS, Mistake.FULL_BY_VOLTAGE_ONLY).declare(30);
        // 13.3 V behind 10 mOhm: 13.4 V at 10 A, 14.3 V at 100 A
        bench.volts(13_300 + 10 * amps).run(amps, 60);
        assertEquals(times, bench.count(Event.SET_TO_FULL));
    }

    @Test
    void voltageAloneTakesASpikeForFull() {
        Bench bench = new Bench(SETTINGS, Mistake.FULL_BY_VOLTAGE_ONLY).declare(80);
        bench.run(1, 600).volts(14_500).run(1, 2);
        assertEquals(100, bench.percent(), 1e-9);
        assertEquals(1, bench.count(Event.SET_TO_FULL));
    }

    @Test
    void anAbsorptionVoltageOfZeroSwitchesEveryFullRuleOff() {
        GaugeSettings off = Bench.settings().set(Setting.ABSORPTION, 0).build();
        for (Mistake mistake : Mistake.values()) {
            if (mistake.family() == MistakeFamily.FULL) {
                Bench bench = new Bench(off, mistake).declare(80);
                bench.volts(15_000).run(1, 7_200);
                assertEquals(0, bench.count(Event.SET_TO_FULL), mistake.key());
            }
        }
    }

    @Test
    void voltsAloneTakeSagForEmpty() {
        GaugeSettings settings = Bench.settings().set(Setting.EMPTY_VOLTAGE, 10_800).build();
        Bench bench = new Bench(settings, Mistake.EMPTY_BY_VOLTS_ALONE).declare(60);
        // 100 A x 20 mOhm under 12.8 V, ten bursts of 20 s
        for (int burst = 0; burst < 10; burst++) {
            bench.volts(10_800).run(-100, 20).volts(12_800).run(0, 60);
        }
        assertEquals(0, bench.percent(), 1e-9);
        assertEquals(10, bench.count(Event.SET_TO_EMPTY));
        // 0.56 Ah a burst
        assertEquals(60 - 10 * 100 * 20 / 3_600.0, bench.plainAmpHours(), 1e-9);
    }

    /** AGE02: the voltage says full at true 62 %; 62 Ah later it says empty. */
    @Test
    void twoVoltagesLearn62AmpHoursForABatteryOf100() {
        Bench bench = new Bench(SETTINGS, Mistake.CAPACITY_FROM_ANY_TWO_VOLTAGES);
        bench.declare(62).volts(12_800).run(0, 1);
        bench.volts(11_800).tickOf(62 * 36_000).run(-100, 62 * 36);
        assertEquals(62_000, bench.read().measuredCapacityMilliampHours);
        assertEquals(62, bench.read().fullChargeNanocoulombs / 3.6e12, 1e-9);
    }

    @Test
    void aSaggingVoltageLearnsACapacityOfNextToNothing() {
        Bench bench = new Bench(SETTINGS, Mistake.CAPACITY_FROM_ANY_TWO_VOLTAGES);
        bench.declare(80).volts(12_700).run(0, 60).volts(12_100).run(-30, 60);
        // The floor: a hundredth of what was declared.
        assertEquals(1_000, bench.read().measuredCapacityMilliampHours);
        assertEquals(1, bench.count(Event.CAPACITY_MEASURED));
    }

    @Test
    void startingAtFullIsFiftyTooHigh() {
        Bench bench = new Bench(SETTINGS, Mistake.START_AT_FULL);
        assertEquals(100, bench.percent(), 1e-9);
        bench.declare(50).run(-10, 3_600);
        assertEquals(40, bench.percent(), 1e-4);
        bench.powerUp(12_400);
        assertEquals(100, bench.percent(), 1e-9);
    }

    /** 10 A through 10 mOhm. */
    @Test
    void aGuessFromAVoltageUnderChargeIsTwelvePointsTooHigh() {
        Bench rested = new Bench(SETTINGS, Mistake.VOLTAGE_GUESS_AT_START);
        rested.powerUp(12_400);
        assertEquals(50, rested.percent(), 1e-4);
        Bench charged = new Bench(SETTINGS, Mistake.VOLTAGE_GUESS_AT_START);
        charged.powerUp(12_500);
        assertEquals(12.5, charged.percent() - 50, 1e-4);
    }

    @Test
    void withoutAMistakeNothingIsKnownUntilItIsDeclared() {
        Bench bench = new Bench(SETTINGS);
        assertEquals(Readout.NOT_KNOWN, bench.read().stateOfChargePartsPerMillion);
        bench.volts(14_400).run(0.1, 7_200).volts(9_000).run(-100, 60);
        assertEquals(Readout.NOT_KNOWN, bench.read().stateOfChargePartsPerMillion);
        assertEquals(0, bench.events.size());
    }
}
