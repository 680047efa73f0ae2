package org.gaugebench.core.port;

/**
 * What a display may show, all of one instant. The caller owns one object; {@code Gauge.read} fills
 * it.
 */
public final class Readout {
    /** Stands in {@link #stateOfChargePartsPerMillion} while nothing is known. */
    public static final int NOT_KNOWN = -1;

    /** State of charge, 0 to 1,000,000 ppm of the full-charge capacity, or {@link #NOT_KNOWN}. */
    public int stateOfChargePartsPerMillion;

    /** Lowest state of charge that the error band allows, 0 to 1,000,000 ppm. */
    public int lowerEdgePartsPerMillion;

    /** Highest state of charge that the error band allows, 0 to 1,000,000 ppm. */
    public int upperEdgePartsPerMillion = 1_000_000;

    /** Whether the band is so wide that the figure says nothing. */
    public boolean bandUnknown = true;

    /** Remaining charge in nanocoulombs (3.6e12 to the ampere-hour); 0 while nothing is known. */
    public long remainingNanocoulombs;

    /** Full-charge capacity in nanocoulombs. */
    public long fullChargeNanocoulombs;

    /** Capacity that the gauge worked out, in mAh; 0 while there is none. */
    public long measuredCapacityMilliampHours;

    /** Efficiency that the gauge worked out, in ppm; 0 while there is none. */
    public long measuredEfficiencyPartsPerMillion;

    /** Current of the last sample. */
    public int currentMicroamps;

    /** Filtered current on which the hours rest. */
    public int averageCurrentMicroamps;

    /** Voltage of the last sample. */
    public int voltageMicrovolts;

    /** Temperature of the last sample, or {@link Sample#TEMPERATURE_ABSENT}. */
    public int temperatureMillicelsius;

    /** What kind of answer {@link #timeToEmptyMinutes} is. */
    public EstimateState timeToEmptyState = EstimateState.NO_ESTIMATE;

    /** Time to empty at the average current; meaning by {@link #timeToEmptyState}. */
    public int timeToEmptyMinutes;

    /** The same if the truth is at the lower edge of the band; meaning by its state. */
    public int timeToEmptyLowMinutes;

    /** The same if the truth is at the upper edge of the band; meaning by its state. */
    public int timeToEmptyHighMinutes;

    /** What kind of answer {@link #timeAtThisLoadMinutes} is. */
    public EstimateState timeAtThisLoadState = EstimateState.NO_ESTIMATE;

    /** Time to empty at the present current. */
    public int timeAtThisLoadMinutes;

    /** What kind of answer {@link #timeAtUsualUseMinutes} is. */
    public EstimateState timeAtUsualUseState = EstimateState.NO_ESTIMATE;

    /** Time to empty at the mean discharge of the last day. */
    public int timeAtUsualUseMinutes;

    /** What kind of answer {@link #timeToFullMinutes} is. */
    public FullTimeState timeToFullState = FullTimeState.NO_ESTIMATE;

    /** Time to full; meaning by {@link #timeToFullState}. */
    public int timeToFullMinutes;

    /** State of charge as a display shows it, 0 to 100 %, or {@link #NOT_KNOWN}. */
    public int shownPercent = NOT_KNOWN;

    /** Current as a display shows it, in steps of 100 mA. */
    public int shownMilliamps;

    /** Time to empty as a display shows it where its state is a value, else 0. */
    public int shownTimeToEmptyMinutes;

    /** Whether the low-charge alarm stands. */
    public boolean lowCharge;

    /** State of the full-charge rule. */
    public RuleState ruleState = RuleState.WAITING;

    /** Reason of that state. */
    public RuleReason ruleReason = RuleReason.NO_MINUTE_YET;

    /** How far the state of charge may be believed. */
    public Trust trust = Trust.UNKNOWN;

    /** The strongest reason to believe it, or not to. */
    public TrustReason trustReason = TrustReason.NOTHING_KNOWN;

    /** Faults of the last tick and those that stand, a bit each, by {@link Fault#bit()}. */
    public int faultBits;

    /** Creates an empty readout, for reuse. */
    public Readout() {}
}
