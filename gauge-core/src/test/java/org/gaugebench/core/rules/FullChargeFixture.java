package org.gaugebench.core.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.gaugebench.core.port.RuleReason;
import org.gaugebench.core.port.RuleState;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.Setting;

/**
 * A full-charge rule on 100 Ah: 14.4 V less 0.2 V, taper 2 A (so the range is -0.5 A to 2 A), hold
 * 5 minutes, quiet time 10, float 13.5 V less 0.1125 V; driven minute by minute.
 */
final class FullChargeFixture {
    static final int THRESHOLD = 14_200_000;
    static final int UNDER = 13_000_000;
    static final int TAPER = 2_000_000;
    static final int WHOLE = 1_000_000;

    private final Minutes minutes = new Minutes();
    final FullChargeRule rule;
    int millicelsius = Sample.TEMPERATURE_ABSENT;
    int upperEdge = WHOLE;
    boolean atLimit;

    FullChargeFixture(Object... settingsAndValues) {
        Object[] all = new Object[settingsAndValues.length + 2];
        all[0] = Setting.HOLD;
        all[1] = 5;
        System.arraycopy(settingsAndValues, 0, all, 2, settingsAndValues.length);
        rule = new FullChargeRule(Minutes.settings(all));
    }

    /** Charge flows in, the voltage is still low; too little for its end to be a step. */
    FullChargeFixture bulk() {
        minute(UNDER, 3 * Minutes.AMP);
        return this;
    }

    RuleOutcome minute(int microvolts, int microamps) {
        return rule.judge(minutes.still(microvolts, microamps), millicelsius, upperEdge, atLimit);
    }

    RuleOutcome minute(int firstVolts, int secondVolts, int firstAmps, int secondAmps) {
        return rule.judge(
                minutes.of(firstVolts, secondVolts, firstAmps, secondAmps),
                millicelsius,
                upperEdge,
                atLimit);
    }

    RuleOutcome doubtful(int microvolts, int microamps) {
        return rule.judge(
                minutes.doubtful(microvolts, microamps), millicelsius, upperEdge, atLimit);
    }

    /** So many minutes, none of which may say anything. */
    FullChargeFixture silent(int number, int microvolts, int microamps) {
        for (int i = 0; i < number; i++) {
            assertEquals(RuleOutcome.NONE, minute(microvolts, microamps), "minute " + i);
        }
        return this;
    }

    /** Minutes until it speaks, at most a limit; 0 if it stays silent. */
    int minutesUntilFull(int limit, int microvolts, int microamps) {
        for (int i = 1; i <= limit; i++) {
            if (minute(microvolts, microamps) == RuleOutcome.SET_TO_FULL) {
                return i;
            }
        }
        return 0;
    }

    void assertStands(RuleState state, RuleReason reason, int heldMinutes) {
        assertEquals(reason, rule.reason());
        assertEquals(state, rule.state());
        assertEquals(heldMinutes, rule.heldMinutes());
    }
}
