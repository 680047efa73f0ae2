package org.gaugebench.core.rules;

import org.gaugebench.core.port.RuleReason;
import org.gaugebench.core.port.RuleState;

/** Which states, transitions and reasons of a rule a run has visited, as bits. */
final class RuleCoverage {
    /** Bit of a transition: from x 8 + to. */
    private static final int STATE_STRIDE = 8;

    // State.
    private int statesSeen;
    private long transitionsSeen;
    private int reasonsSeen;

    void visit(RuleState from, RuleState to, RuleReason reason) {
        statesSeen |= 1 << to.ordinal();
        if (from != to) {
            transitionsSeen |= 1L << (from.ordinal() * STATE_STRIDE + to.ordinal());
        }
        reasonsSeen |= reason.bit();
    }

    int statesSeen() {
        return statesSeen;
    }

    long transitionsSeen() {
        return transitionsSeen;
    }

    int reasonsSeen() {
        return reasonsSeen;
    }
}
