package org.gaugebench.sim.advice;

import static org.gaugebench.sim.advice.TroubleCause.*;

import java.util.List;
import java.util.Locale;

/** What an owner sees; with each what may be behind it, the commonest first (no source). */
public enum Seen {
    /** The charger is done, the figure is not. */
    BELOW_100_WHEN_CHARGED(FULL_NEVER, ZERO_DOWN, CAPACITY_SMALL, SCALE, REVERSED),
    /** Falls at rest. */
    FALLS_WITH_NOTHING_ON(ZERO_DOWN),
    /** Rises at rest. */
    RISES_WITH_NOTHING_ON(ZERO_UP),
    /** Rises in use. */
    RISES_WITH_LOADS_ON(REVERSED, ZERO_UP),
    /** Empty earlier than shown. */
    DARK_AT_30_PERCENT(
            AGED,
            HEAT,
            OWN_CURRENT,
            PAST_SHUNT,
            SELF_DISCHARGE,
            ZERO_UP,
            FULL_TOO_EARLY,
            CAPACITY_LARGE,
            SCALE,
            SMALLEST_STEP,
            VOLTS_DIP),
    /** Shown empty, and the lamps burn. */
    LIGHT_AT_0_PERCENT(CAPACITY_SMALL, ZERO_DOWN, SCALE, FULL_NEVER, REVERSED),
    /** Stand still. */
    HOURS_NEVER_CHANGE(HOURS_FULL, SMALLEST_STEP),
    /** Full after a restart. */
    BACK_AT_100_AFTER_OFF(STARTS_FULL, FULL_TOO_EARLY),
    /** Empty after a restart. */
    BACK_AT_0_AFTER_OFF(FORGETS);

    // Never handed out to be changed: List.of refuses it.
    @SuppressWarnings("ImmutableEnumChecker")
    private final List<TroubleCause> causes;

    Seen(TroubleCause... causes) {
        this.causes = List.of(causes);
    }

    /** What may be behind it, the commonest first. */
    List<TroubleCause> causes() {
        return causes;
    }

    /** The word on a command line. */
    public String key() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
