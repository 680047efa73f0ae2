package org.gaugebench.sim.device;

import java.util.function.ObjLongConsumer;
import java.util.function.ToLongFunction;
import org.gaugebench.core.port.EstimateState;
import org.gaugebench.core.port.FullTimeState;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.RuleReason;
import org.gaugebench.core.port.RuleState;
import org.gaugebench.core.port.Trust;
import org.gaugebench.core.port.TrustReason;

/** The fields of a {@link Readout} as whole numbers, in the order of the pipe's table. */
public enum ReadoutField {
    /** State of charge; -1 while not known. */
    STATE_OF_CHARGE(
            "ppm",
            Size.INT,
            "-1 while not known, and if left out",
            r -> r.stateOfChargePartsPerMillion,
            (r, v) -> r.stateOfChargePartsPerMillion = (int) v),
    /** Lower edge of the band. */
    LOWER_EDGE(
            "ppm",
            Size.INT,
            "lowest state of charge that the error band allows",
            r -> r.lowerEdgePartsPerMillion,
            (r, v) -> r.lowerEdgePartsPerMillion = (int) v),
    /** Upper edge of the band. */
    UPPER_EDGE(
            "ppm",
            Size.INT,
            "highest one; 1000000 if left out",
            r -> r.upperEdgePartsPerMillion,
            (r, v) -> r.upperEdgePartsPerMillion = (int) v),
    /** Whether the band says nothing. */
    BAND_UNKNOWN(
            "0 or 1",
            Size.FLAG,
            "1 where the band says nothing; 1 if left out",
            r -> r.bandUnknown ? 1 : 0,
            (r, v) -> r.bandUnknown = v != 0),
    /** Remaining charge. */
    REMAINING(
            "nC",
            Size.LONG,
            "remaining charge; 0 while not known",
            r -> r.remainingNanocoulombs,
            (r, v) -> r.remainingNanocoulombs = v),
    /** Full-charge capacity. */
    FULL_CHARGE(
            "nC",
            Size.LONG,
            "full-charge capacity",
            r -> r.fullChargeNanocoulombs,
            (r, v) -> r.fullChargeNanocoulombs = v),
    /** Measured capacity. */
    MEASURED_CAPACITY(
            "mAh",
            Size.LONG,
            "0 while there is none",
            r -> r.measuredCapacityMilliampHours,
            (r, v) -> r.measuredCapacityMilliampHours = v),
    /** Measured efficiency. */
    MEASURED_EFFICIENCY(
            "ppm",
            Size.LONG,
            "0 while there is none",
            r -> r.measuredEfficiencyPartsPerMillion,
            (r, v) -> r.measuredEfficiencyPartsPerMillion = v),
    /** Current of the last sample. */
    CURRENT(
            "uA",
            Size.INT,
            "of the last sample",
            r -> r.currentMicroamps,
            (r, v) -> r.currentMicroamps = (int) v),
    /** Current on which the hours rest. */
    AVERAGE_CURRENT(
            "uA",
            Size.INT,
            "on which the hours rest",
            r -> r.averageCurrentMicroamps,
            (r, v) -> r.averageCurrentMicroamps = (int) v),
    /** Voltage of the last sample. */
    VOLTAGE(
            "uV",
            Size.INT,
            "of the last sample",
            r -> r.voltageMicrovolts,
            (r, v) -> r.voltageMicrovolts = (int) v),
    /** Temperature of the last sample. */
    TEMPERATURE(
            "m°C",
            Size.INT,
            "of the last sample; -2147483648 where absent, and if left out",
            r -> r.temperatureMillicelsius,
            (r, v) -> r.temperatureMillicelsius = (int) v),
    /** Kind of the time to empty. */
    TIME_TO_EMPTY_STATE(
            "estimate state",
            Size.ESTIMATE,
            "kind of the next three",
            r -> r.timeToEmptyState.ordinal(),
            (r, v) -> r.timeToEmptyState = estimate(v)),
    /** Time to empty. */
    TIME_TO_EMPTY(
            "min",
            Size.INT,
            "at the average current",
            r -> r.timeToEmptyMinutes,
            (r, v) -> r.timeToEmptyMinutes = (int) v),
    /** Time to empty from the lower edge. */
    TIME_TO_EMPTY_LOW(
            "min",
            Size.INT,
            "the same from the lower edge",
            r -> r.timeToEmptyLowMinutes,
            (r, v) -> r.timeToEmptyLowMinutes = (int) v),
    /** Time to empty from the upper edge. */
    TIME_TO_EMPTY_HIGH(
            "min",
            Size.INT,
            "the same from the upper edge",
            r -> r.timeToEmptyHighMinutes,
            (r, v) -> r.timeToEmptyHighMinutes = (int) v),
    /** Kind of the time at this load. */
    TIME_AT_THIS_LOAD_STATE(
            "estimate state",
            Size.ESTIMATE,
            "kind of the next",
            r -> r.timeAtThisLoadState.ordinal(),
            (r, v) -> r.timeAtThisLoadState = estimate(v)),
    /** Time to empty at the present current. */
    TIME_AT_THIS_LOAD(
            "min",
            Size.INT,
            "at the present current",
            r -> r.timeAtThisLoadMinutes,
            (r, v) -> r.timeAtThisLoadMinutes = (int) v),
    /** Kind of the time at usual use. */
    TIME_AT_USUAL_USE_STATE(
            "estimate state",
            Size.ESTIMATE,
            "kind of the next",
            r -> r.timeAtUsualUseState.ordinal(),
            (r, v) -> r.timeAtUsualUseState = estimate(v)),
    /** Time to empty at the mean discharge of the last day. */
    TIME_AT_USUAL_USE(
            "min",
            Size.INT,
            "at the mean discharge of the last day",
            r -> r.timeAtUsualUseMinutes,
            (r, v) -> r.timeAtUsualUseMinutes = (int) v),
    /** Kind of the time to full. */
    TIME_TO_FULL_STATE(
            "full-time state",
            Size.FULL_TIME,
            "kind of the next",
            r -> r.timeToFullState.ordinal(),
            (r, v) -> r.timeToFullState = FullTimeState.values()[(int) v]),
    /** Time to full. */
    TIME_TO_FULL(
            "min",
            Size.INT,
            "time to full",
            r -> r.timeToFullMinutes,
            (r, v) -> r.timeToFullMinutes = (int) v),
    /** State of charge on a display. */
    SHOWN_PERCENT(
            "%",
            Size.INT,
            "as a display shows it; -1 while not known, and if left out",
            r -> r.shownPercent,
            (r, v) -> r.shownPercent = (int) v),
    /** Current on a display. */
    SHOWN_CURRENT(
            "mA",
            Size.INT,
            "as a display shows it",
            r -> r.shownMilliamps,
            (r, v) -> r.shownMilliamps = (int) v),
    /** Time to empty on a display. */
    SHOWN_TIME_TO_EMPTY(
            "min",
            Size.INT,
            "as a display shows it; 0 where there is none",
            r -> r.shownTimeToEmptyMinutes,
            (r, v) -> r.shownTimeToEmptyMinutes = (int) v),
    /** Low-charge alarm. */
    LOW_CHARGE(
            "0 or 1",
            Size.FLAG,
            "the low-charge alarm stands",
            r -> r.lowCharge ? 1 : 0,
            (r, v) -> r.lowCharge = v != 0),
    /** State of the full-charge rule. */
    RULE_STATE(
            "rule state",
            Size.RULE,
            "of the full-charge rule; 1 if left out",
            r -> r.ruleState.ordinal(),
            (r, v) -> r.ruleState = RuleState.values()[(int) v]),
    /** Reason of that state. */
    RULE_REASON(
            "rule reason",
            Size.REASON,
            "of that state",
            r -> r.ruleReason.ordinal(),
            (r, v) -> r.ruleReason = RuleReason.values()[(int) v]),
    /** Trust. */
    TRUST(
            "trust",
            Size.TRUST,
            "with 0 no state of charge is shown; if left out, 1 while that is 0 or more",
            r -> r.trust.ordinal(),
            (r, v) -> r.trust = Trust.values()[(int) v]),
    /** Its reason. */
    TRUST_REASON(
            "trust reason",
            Size.TRUST_REASON,
            "the strongest reason for or against",
            r -> r.trustReason.ordinal(),
            (r, v) -> r.trustReason = TrustReason.values()[(int) v]),
    /** Faults. */
    FAULTS("bits", Size.INT, "bit n is fault n", r -> r.faultBits, (r, v) -> r.faultBits = (int) v);

    private final String unit;
    private final Size size;
    private final String meaning;

    // Lambdas without state; the checker cannot know.
    @SuppressWarnings("ImmutableEnumChecker")
    private final ToLongFunction<Readout> getter;

    @SuppressWarnings("ImmutableEnumChecker")
    private final ObjLongConsumer<Readout> setter;

    ReadoutField(
            String unit,
            Size size,
            String meaning,
            ToLongFunction<Readout> getter,
            ObjLongConsumer<Readout> setter) {
        this.unit = unit;
        this.size = size;
        this.meaning = meaning;
        this.getter = getter;
        this.setter = setter;
    }

    /** What a field can hold. */
    private enum Size {
        INT("32 bits", Integer.MIN_VALUE, Integer.MAX_VALUE),
        LONG("64 bits", Long.MIN_VALUE, Long.MAX_VALUE),
        FLAG("", 0, 1),
        ESTIMATE("", 0, EstimateState.values().length - 1),
        FULL_TIME("", 0, FullTimeState.values().length - 1),
        RULE("", 0, RuleState.values().length - 1),
        REASON("", 0, RuleReason.values().length - 1),
        TRUST("", 0, Trust.values().length - 1),
        TRUST_REASON("", 0, TrustReason.values().length - 1);

        private final String words;
        private final long least;
        private final long most;

        Size(String words, long least, long most) {
            this.words = words;
            this.least = least;
            this.most = most;
        }
    }

    private static EstimateState estimate(long value) {
        return EstimateState.values()[(int) value];
    }

    /** Reads the field. */
    public long get(Readout readout) {
        return getter.applyAsLong(readout);
    }

    /** Writes the field; the value is one that {@link #accepts}. */
    public void set(Readout readout, long value) {
        setter.accept(readout, value);
    }

    /** Whether the field can hold a value. */
    public boolean accepts(long value) {
        return value >= size.least && value <= size.most;
    }

    /** What it can hold, for a message. */
    public String range() {
        return size.least + " to " + size.most;
    }

    /** Unit, or the table that its numbers are from. */
    public String unit() {
        return unit;
    }

    /** "32 bits" or "64 bits"; empty where a table or "0 or 1" says it. */
    public String sizeWords() {
        return size.words;
    }

    /** What it is, for people. */
    public String meaning() {
        return meaning;
    }
}
