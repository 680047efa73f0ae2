package org.gaugebench.sim.live;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.gaugebench.core.port.Event;
import org.gaugebench.sim.scenario.ChargerSpec;
import org.gaugebench.sim.scenario.LoadSpec;
import org.gaugebench.sim.scenario.Scenario;

/**
 * What an entry of the account book can be about. The order is: each load, each charger, what flows
 * otherwise (these are the flows, which truth and gauge have in common), then what the truth alone
 * loses, then what the gauge alone books.
 */
final class Causes {
    /** Events by which a gauge moves its count; anything else is an allowance. */
    private static final List<Event> STEPS =
            List.of(
                    Event.SET_TO_FULL,
                    Event.SET_TO_EMPTY,
                    Event.CORRECTED_BY_REST,
                    Event.SETTINGS_CHANGED,
                    Event.NEW_BATTERY,
                    Event.DECLARED,
                    Event.RESTORED);

    private final List<String> words = new ArrayList<>();
    private final int loads;
    private final int chargers;

    Causes(Scenario scenario) {
        loads = scenario.loads().size();
        chargers = scenario.chargers().size();
        for (LoadSpec load : scenario.loads()) {
            words.add("load:" + load.name());
        }
        for (ChargerSpec charger : scenario.chargers()) {
            words.add("charger:" + charger.name());
        }
        words.add("other-flow");
        words.add("self-discharge");
        words.add("not-stored");
        words.add("misread");
        words.add("allowance");
        for (Event step : STEPS) {
            words.add("step:" + step.name().toLowerCase(Locale.ROOT).replace('_', '-'));
        }
    }

    int count() {
        return words.size();
    }

    /** What a cause is called: "load:" or "charger:" and the scenario's name, or a word of ours. */
    String word(int cause) {
        return words.get(cause);
    }

    int loads() {
        return loads;
    }

    int chargers() {
        return chargers;
    }

    /** A flow through the battery that belongs to no load and no charger. */
    int otherFlow() {
        return loads + chargers;
    }

    /** What the battery loses by itself while nothing flows into it. */
    int selfDischarge() {
        return otherFlow() + 1;
    }

    /** What flows into the battery and is not stored. */
    int notStored() {
        return otherFlow() + 2;
    }

    /** What the gauge counts more or less than flows: offset, gain, rounding, bypass. */
    int misread() {
        return otherFlow() + 3;
    }

    /** What the gauge takes off for losses, or holds back at full and empty. */
    int allowance() {
        return otherFlow() + 4;
    }

    /** A step of the gauge's count; -1 where an event is none. */
    int step(Event event) {
        int place = STEPS.indexOf(event);
        return place < 0 ? -1 : allowance() + 1 + place;
    }

    /** Whether a cause shows something of the truth that the gauge does not know. */
    boolean isSecret(int cause) {
        return cause >= selfDischarge() && cause <= misread();
    }
}
