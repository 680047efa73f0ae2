package org.gaugebench.core.port;

/**
 * Everything a gauge announces: code, severity, unit of its one figure and a sentence. Only the
 * simulator turns an event into text; the core hands over the code and the figure.
 *
 * <p>A step of the count is told as 0 where nothing was known before: nobody was shown that count.
 */
public enum Event {
    /** Power came up; figure: the stated off-time. */
    POWERED_UP(Severity.NOTE, "ms", "powered up"),
    /** The saved state was taken over; figure: the state of charge in it. */
    RESTORED(Severity.NOTE, "ppm", "saved state taken over"),
    /** The rested voltage is not the saved one: perhaps another battery; figure: the voltage. */
    BATTERY_DOUBTFUL(Severity.WARNING, "uV", "not the battery that was saved?"),
    /** The state of charge was declared from outside; figure: the declared value. */
    DECLARED(Severity.NOTE, "ppm", "state of charge declared"),
    /** The full-charge rule proved full and the count was set; figure: the step of the count. */
    SET_TO_FULL(Severity.NOTE, "nC", "set to full"),
    /**
     * Enough was discharged for the full-charge rule to look for full again; figure: discharged.
     */
    FULL_RULE_ARMED(Severity.NOTE, "nC", "full-charge rule armed again"),
    /** The count reached its upper limit; what still comes in is counted apart. */
    HELD_AT_LIMIT(Severity.NOTE, "nC", "count held at its upper limit"),
    /** The count reached zero; what still goes out is counted apart. */
    HELD_AT_EMPTY(Severity.WARNING, "nC", "count held at zero"),
    /** The empty rule proved empty and the count was set; figure: the step of the count. */
    SET_TO_EMPTY(Severity.NOTE, "nC", "set to empty"),
    /** The battery reached its empty voltage though the count says otherwise; figure: the count. */
    EARLY_EMPTY(Severity.WARNING, "ppm", "empty earlier than counted"),
    /** A rested voltage moved the count; figure: the step of the count. */
    CORRECTED_BY_REST(Severity.NOTE, "nC", "corrected by the rested voltage"),
    /** The settings were changed; figure: the step of the count. */
    SETTINGS_CHANGED(Severity.NOTE, "nC", "settings changed"),
    /** Zero or gain of the shunt channel was adjusted; figure: the zero adjustment. */
    ADJUSTED(Severity.NOTE, "counts/256", "shunt channel adjusted"),
    /** Another battery was fitted: nothing is known of it; figure: the step of the count. */
    NEW_BATTERY(Severity.NOTE, "nC", "new battery"),
    /** The measured capacity moved; figure: its new value. */
    CAPACITY_MEASURED(Severity.NOTE, "mAh", "capacity measured"),
    /** The measured efficiency moved; figure: its new value. */
    EFFICIENCY_MEASURED(Severity.NOTE, "ppm", "efficiency measured"),
    /** A fault appeared that was not present before; figure: the fault's number. */
    FAULT_RAISED(Severity.WARNING, "fault", "fault raised");

    /** How much attention an event deserves. */
    public enum Severity {
        /** Ordinary life. */
        NOTE,
        /** Somebody should look. */
        WARNING
    }

    private final Severity severity;
    private final String unit;
    private final String sentence;

    Event(Severity severity, String unit, String sentence) {
        this.severity = severity;
        this.unit = unit;
        this.sentence = sentence;
    }

    /**
     * How much attention this event deserves.
     *
     * @return its severity
     */
    public Severity severity() {
        return severity;
    }

    /**
     * Unit of the event's figure.
     *
     * @return an SI symbol, "ppm", or "fault" for a fault's number
     */
    public String unit() {
        return unit;
    }

    /**
     * What happened, for people.
     *
     * @return a few words without a full stop
     */
    public String sentence() {
        return sentence;
    }
}
