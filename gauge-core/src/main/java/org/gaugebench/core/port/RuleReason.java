package org.gaugebench.core.port;

/** Why the full-charge rule stands where it stands. */
public enum RuleReason {
    /** No whole minute has been seen since power-up. */
    NO_MINUTE_YET("no whole minute seen yet"),
    /** The battery's voltage is under the compensated threshold. */
    VOLTAGE_UNDER_THRESHOLD("voltage under the threshold"),
    /** More current flows in than the taper allows: still charging. */
    CURRENT_ABOVE_TAPER("current above the taper range"),
    /** Current flows out: a load draws more than the charger gives. */
    CURRENT_BELOW_TAPER("current below the taper range"),
    /** Voltage and current speak for full; the hold time has not run out. */
    HOLD_RUNNING("hold time running"),
    /** The hold time ran out: full is proven. */
    FULL_PROVEN("full proven"),
    /** Enough was discharged since full: looking again. */
    ARMED_BY_DISCHARGE("armed by discharge"),
    /** Samples were missing: what was held no longer counts. */
    SAMPLES_MISSING("samples missing"),
    /** The rule is switched off by its settings. */
    SWITCHED_OFF("rule switched off");

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
}
