package org.gaugebench.core.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Strong above 4 A, nothing under 50 mA, something above 200 mA (rules F7 and F8). */
class FlowWatchTest {
    private final FlowWatch watch = new FlowWatch(4_000_000, 50_000, 200_000);

    private void minutes(boolean voltageUp, int... microamps) {
        for (int one : microamps) {
            watch.addMinute(one, voltageUp);
        }
    }

    private void assertFlow(boolean seen, boolean stopped) {
        assertEquals(seen, watch.flowSeen(), "seen");
        assertEquals(stopped, watch.stopped(), "stopped");
    }

    @Test
    void hasSeenNothingAtFirst() {
        assertFlow(false, false);
        minutes(true, 200_000);
        assertFlow(false, false);
        minutes(true, 200_001);
        assertFlow(true, false);
    }

    @Test
    void anotherBatteryHasSeenNeitherFlowNorStop() {
        minutes(true, 300_000);
        watch.forgetBattery();
        assertFlow(false, false);
        minutes(true, 4_000_001, 0);
        watch.forgetBattery();
        assertFlow(false, false);
        minutes(true, 0);
        assertFlow(false, false);
    }

    /** A setting is corrected while the charger tapers: what flowed before has flowed (F16). */
    @Test
    void otherSettingsTakeTheFlowOver() {
        minutes(true, 300_000);
        FlowWatch other = new FlowWatch(4_000_000, 50_000, 400_000);
        other.takeOver(watch);
        assertEquals(true, other.flowSeen());
        minutes(true, 4_000_001);
        other.takeOver(watch);
        other.addMinute(0, true);
        assertEquals(true, other.stopped(), "the strong minute is remembered too");
        FlowWatch third = new FlowWatch(4_000_000, 50_000, 400_000);
        third.takeOver(other);
        assertEquals(true, third.stopped());
    }

    @Test
    void aFallFromStrongToNothingIsAStop() {
        minutes(true, 4_000_001, 49_999);
        assertFlow(false, true);
    }

    @Test
    void theMinuteOfTheStopMayHaveAMeanOfItsOwn() {
        minutes(true, 4_000_001, 2_000_000, 49_999);
        assertFlow(false, true);
    }

    @Test
    void aFallOverThreeMinutesIsATaper() {
        minutes(true, 4_000_001, 2_000_000, 400_000, 49_999);
        assertFlow(true, false);
    }

    @Test
    void fromFourAmpsOrToFiftyMilliampsIsNoStop() {
        minutes(true, 4_000_000, 0);
        assertFlow(true, false);
        minutes(true, 4_000_001, 50_000);
        assertFlow(true, false);
    }

    @Test
    void aStopStandsUntilSomethingFlowsAgain() {
        minutes(true, 5_000_000, 0, 0, 0, 0, 0, 200_000);
        assertFlow(false, true);
        minutes(true, 200_001);
        assertFlow(true, false);
    }

    /** A pump that outdraws the charger stops the flow for its minute; then it flows again. */
    @Test
    void aLoadThatOutdrawsTheChargerHealsItself() {
        minutes(true, 12_000_000, -3_000_000);
        assertFlow(false, true);
        minutes(true, 5_000_000);
        assertFlow(true, false);
    }

    @Test
    void whileTheVoltageIsUpTheFlowIsRemembered() {
        minutes(true, 300_000);
        for (int i = 0; i < 10_000; i++) {
            minutes(true, 0);
        }
        assertFlow(true, false);
    }

    @Test
    void withoutAChargersVoltageItIsForgottenAfterFifteenMinutes() {
        minutes(false, 300_000);
        for (int i = 0; i < 14; i++) {
            minutes(false, 0);
        }
        assertFlow(true, false);
        minutes(false, 0);
        assertFlow(false, false);
    }

    @Test
    void flowOrVoltageBeginsTheFifteenMinutesAnew() {
        minutes(false, 300_000);
        for (int i = 0; i < 14; i++) {
            minutes(false, 0);
        }
        minutes(true, 0);
        for (int i = 0; i < 14; i++) {
            minutes(false, 0);
        }
        assertFlow(true, false);
        minutes(false, 300_000);
        for (int i = 0; i < 14; i++) {
            minutes(false, 0);
        }
        assertFlow(true, false);
    }

    @Test
    void aStopIsForgottenWithTheCharger() {
        minutes(true, 5_000_000, 0);
        for (int i = 0; i < 15; i++) {
            minutes(false, 0);
        }
        assertFlow(false, false);
    }

    @Test
    void aDoubtfulMinuteDoesNotHideAStop() {
        minutes(true, 5_000_000);
        watch.addDoubtfulMinute();
        minutes(true, 0);
        assertFlow(false, true);
    }

    @Test
    void fifteenDoubtfulMinutesForgetTheFlow() {
        minutes(true, 300_000);
        for (int i = 0; i < 14; i++) {
            watch.addDoubtfulMinute();
        }
        assertTrue(watch.flowSeen());
        watch.addDoubtfulMinute();
        assertFalse(watch.flowSeen());
    }

    @Test
    void missingSamplesForgetTheFlowButNotAStop() {
        minutes(true, 5_000_000);
        watch.forget();
        assertFlow(false, false);
        minutes(true, 0);
        assertFlow(false, false);
        minutes(true, 5_000_000, 0);
        watch.forget();
        assertFlow(false, true);
    }

    /** Exactly 0.2 % an hour is no flow (F8), so it does not begin the fifteen minutes anew. */
    @Test
    void whatIsNoFlowDoesNotKeepTheFlow() {
        minutes(false, 300_000);
        for (int i = 0; i < 14; i++) {
            minutes(false, 200_000);
        }
        assertFlow(true, false);
        minutes(false, 200_000);
        assertFlow(false, false);
    }
}
