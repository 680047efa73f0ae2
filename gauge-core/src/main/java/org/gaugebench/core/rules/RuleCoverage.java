package org.gaugebench.core.rules;

import org.gaugebench.core.port.RuleReason;
import org.gaugebench.core.port.RuleState;

/** Which states, transitions and reasons of a rule a run has visited, as bits. */
final class RuleCoverage {
    /** Bit of a transition: from x 8 + to. */
    private static final int STRIDE_BITS = 8;

    // State.
    private int stateBits;
    private long transitionBits;
    private int reasonBits;

    void visit(RuleState from, RuleState to, RuleReason reason) {
        stateBits |= 1 << to.ordinal();
        if (from != to) {
            transitionBits |= 1L << (from.ordinal() * STRIDE_BITS + to.ordinal());
        }
        reasonBits |= reason.bit();
    }

    int statesSeen() {
        return stateBits;
    }

    long transitionsSeen() {
        return transitionBits;
    }

    int reasonsSeen() {
        return reasonBits;
    }
}
