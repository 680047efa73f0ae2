package org.gaugebench.core.port;

/** Why the full-charge rule stands where it stands. */
public enum RuleReason {
    /** No whole minute has been seen since power-up. */
    NO_MINUTE_YET("no whole minute seen yet"),
    /** The first minutes after a restart or a change of settings: figures are still settling. */
    QUIET_TIME("quiet time after a restart"),
    /** The battery's voltage is under the compensated threshold. */
    VOLTAGE_UNDER_THRESHOLD("voltage under the threshold"),
    /** More current flows in than the taper allows: still charging. */
    CURRENT_ABOVE_TAPER("current above the taper range"),
    /** Current flows out: a load draws more than the charger gives. */
    CURRENT_BELOW_TAPER("current below the taper range"),
    /**
     * The voltage is up but no charge has flowed in: battery not connected, or charging blocked.
     */
    NO_FLOW("no charge has flowed in"),
    /** Charging stopped in a step instead of tapering: something opened. */
    FLOW_STOPPED("charging stopped in a step"),
    /**
     * The voltage moved too much during the hold: the source, not the battery, sets the current.
     */
    VOLTAGE_NOT_FLAT("voltage not flat"),
    /** Voltage and taper speak for full; the hold time has not run out. */
    HOLD_RUNNING("hold time running"),
    /** The hold ran out but the count contradicts: four times the hold is asked for. */
    LONGER_HOLD_RUNNING("longer hold running, the count contradicts"),
    /** The current stays above the taper but does not fall any more: a tired battery's end. */
    PLATEAU_RUNNING("current steady above the taper, plateau hold running"),
    /** At float voltage with next to no current. */
    FLOAT_RUNNING("float hold running"),
    /** Full was proven by taper and hold. */
    PROVEN_BY_TAPER("full proven by taper"),
    /** Full was proven by taper after the longer hold, against the count. */
    PROVEN_LATE("full proven late, against the count"),
    /** Full was proven by a current that no longer falls. */
    PROVEN_BY_PLATEAU("full proven by plateau"),
    /** Full was proven by a long float. */
    PROVEN_BY_FLOAT("full proven by float"),
    /** Somebody declared full. */
    DECLARED_FULL("full declared"),
    /** Somebody declared another state of charge. */
    DECLARED_NOT_FULL("another state of charge declared"),
    /** Enough was discharged since full: looking again. */
    ARMED_BY_DISCHARGE("armed by discharge"),
    /** Samples were missing: what was held no longer counts. */
    SAMPLES_MISSING("samples missing"),
    /** The rule is switched off by its settings. */
    SWITCHED_OFF("rule switched off"),
    /** A sample of the minute was clipped or implausible: the minute speaks for nothing. */
    READING_DOUBTFUL("reading clipped or implausible");

    private final String sentence;

    RuleReason(String sentence) {
        this.sentence = sentence;
    }

    /**
     * The reason, for people.
     *
     * @return a few words without a full stop
     */
    public String sentence() {
        return sentence;
    }

    /**
     * The reason's bit in {@link Register#RULE_REASONS_SEEN}.
     *
     * @return a single bit
     */
    public int bit() {
        return 1 << ordinal();
    }
}
