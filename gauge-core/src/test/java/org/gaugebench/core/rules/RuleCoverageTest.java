package org.gaugebench.core.rules;

import static org.gaugebench.core.rules.FullChargeFixture.TAPER;
import static org.gaugebench.core.rules.FullChargeFixture.THRESHOLD;
import static org.gaugebench.core.rules.FullChargeFixture.UNDER;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.port.RuleReason;
import org.gaugebench.core.port.RuleState;
import org.junit.jupiter.api.Test;

/** Which states, transitions and reasons a run has visited (rule F17). */
class RuleCoverageTest {
    private static long transition(RuleState from, RuleState to) {
        return 1L << (from.ordinal() * 8 + to.ordinal());
    }

    @Test
    void nothingIsVisitedAtFirst() {
        RuleCoverage coverage = new RuleCoverage();
        assertEquals(0, coverage.statesSeen());
        assertEquals(0, coverage.transitionsSeen());
        assertEquals(0, coverage.reasonsSeen());
    }

    @Test
    void everyStateTransitionAndReasonHasABitOfItsOwn() {
        assertTrue(RuleState.values().length <= 8 && RuleReason.values().length <= 31);
        RuleCoverage coverage = new RuleCoverage();
        for (RuleState from : RuleState.values()) {
            for (RuleState to : RuleState.values()) {
                coverage.visit(from, to, RuleReason.NO_FLOW);
            }
        }
        assertEquals(0b1111, coverage.statesSeen());
        assertEquals(12, Long.bitCount(coverage.transitionsSeen()));
        assertEquals(RuleReason.NO_FLOW.bit(), coverage.reasonsSeen());
        int bits = 0;
        for (RuleReason reason : RuleReason.values()) {
            bits |= reason.bit();
            assertEquals(1, Integer.bitCount(reason.bit()), reason.name());
        }
        assertEquals((1 << RuleReason.values().length) - 1, bits);
    }

    @Test
    void aRunLeavesItsTrace() {
        FullChargeFixture f = new FullChargeFixture();
        f.bulk().silent(3, THRESHOLD, TAPER).silent(1, UNDER, TAPER).silent(1, THRESHOLD, TAPER);
        f.minute(THRESHOLD, TAPER);
        assertEquals(RuleState.NOT_ARMED, f.rule.state());
        assertEquals(0b1111, f.rule.statesSeen());
        assertEquals(
                transition(RuleState.WAITING, RuleState.HOLDING)
                        | transition(RuleState.HOLDING, RuleState.PAUSED)
                        | transition(RuleState.PAUSED, RuleState.HOLDING)
                        | transition(RuleState.HOLDING, RuleState.NOT_ARMED),
                f.rule.transitionsSeen());
        assertEquals(
                RuleReason.VOLTAGE_UNDER_THRESHOLD.bit()
                        | RuleReason.HOLD_RUNNING.bit()
                        | RuleReason.PROVEN_BY_TAPER.bit(),
                f.rule.reasonsSeen());
    }
}
