package org.gaugebench.sim.judge;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.RuleReason;
import org.gaugebench.core.port.RuleState;

/**
 * Which states, transitions and reasons of the full-charge rule one or many runs visited, as the
 * bits of the coverage registers. A restart clears the registers, so they are collected each
 * minute; the rule itself moves once a minute.
 *
 * @param states a bit for each ordinal of {@link RuleState}
 * @param transitions bit from x 8 + to
 * @param reasons a bit for each ordinal of {@link RuleReason}
 */
public record RuleCoverage(long states, long transitions, long reasons) {
    /** Nothing visited. */
    public static final RuleCoverage NONE = new RuleCoverage(0, 0, 0);

    private static final int STRIDE_BITS = 8;

    /**
     * A move from one state to another that the rule can make.
     *
     * @param from where it stood
     * @param to where it stands
     */
    public record Transition(RuleState from, RuleState to) {
        long bit() {
            return 1L << (from.ordinal() * STRIDE_BITS + to.ordinal());
        }

        @Override
        public String toString() {
            return words(from) + " -> " + words(to);
        }
    }

    /**
     * The nine moves that exist. The other three do not: a rule that is not armed only ever starts
     * to look (F13), and a pause needs a hold before it (F6).
     */
    public static final List<Transition> POSSIBLE =
            List.of(
                    new Transition(RuleState.NOT_ARMED, RuleState.WAITING),
                    new Transition(RuleState.WAITING, RuleState.NOT_ARMED),
                    new Transition(RuleState.WAITING, RuleState.HOLDING),
                    new Transition(RuleState.HOLDING, RuleState.NOT_ARMED),
                    new Transition(RuleState.HOLDING, RuleState.WAITING),
                    new Transition(RuleState.HOLDING, RuleState.PAUSED),
                    new Transition(RuleState.PAUSED, RuleState.NOT_ARMED),
                    new Transition(RuleState.PAUSED, RuleState.WAITING),
                    new Transition(RuleState.PAUSED, RuleState.HOLDING));

    /** What a gauge's registers say. */
    static RuleCoverage of(Registers registers) {
        return new RuleCoverage(
                registers.get(Register.RULE_STATES_SEEN),
                registers.get(Register.RULE_TRANSITIONS_SEEN),
                registers.get(Register.RULE_REASONS_SEEN));
    }

    /**
     * What either visited.
     *
     * @param other another run's
     */
    public RuleCoverage plus(RuleCoverage other) {
        return new RuleCoverage(
                states | other.states, transitions | other.transitions, reasons | other.reasons);
    }

    /** Whether a state was visited. */
    public boolean has(RuleState state) {
        return (states >> state.ordinal() & 1) != 0;
    }

    /** Whether a move was made. */
    public boolean has(Transition transition) {
        return (transitions & transition.bit()) != 0;
    }

    /** Whether a reason was given. */
    public boolean has(RuleReason reason) {
        return (reasons & reason.bit()) != 0;
    }

    /** Moves that were made though {@link #POSSIBLE} does not know them: the list is wrong then. */
    public List<Transition> unforeseen() {
        List<Transition> found = new ArrayList<>();
        for (RuleState from : RuleState.values()) {
            for (RuleState to : RuleState.values()) {
                Transition transition = new Transition(from, to);
                if (has(transition) && !POSSIBLE.contains(transition)) {
                    found.add(transition);
                }
            }
        }
        return found;
    }

    /** A state as people read it. */
    public static String words(RuleState state) {
        return state.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
