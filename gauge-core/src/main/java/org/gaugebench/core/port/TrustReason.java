package org.gaugebench.core.port;

/** The strongest reason to believe, or not to believe, the state of charge. */
public enum TrustReason {
    /** Never anchored. */
    NOTHING_KNOWN("nothing is known yet"),
    /** A standing fault says that current or voltage may not be what is measured. */
    SENSOR_SUSPECT("the sensor is suspect"),
    /** The error band says nothing any more. */
    BAND_UNKNOWN("the error band is too wide"),
    /** The last full charge contradicted the count. */
    SCALE_SUSPECT("the last full charge contradicted the count"),
    /** Not full for longer than the settings allow. */
    FULL_OVERDUE("full charge overdue"),
    /** Somebody declared it; nothing has proved it since. */
    DECLARED_ONLY("declared, not proven since"),
    /** Counted on from a proof, within the band. */
    NO_OBJECTION("counted from a proven anchor");

    private final String sentence;

    TrustReason(String sentence) {
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
