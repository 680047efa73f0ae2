package org.gaugebench.sim.advice;

import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.units.RecordUnit;
import org.jspecify.annotations.Nullable;

/**
 * A gauge by what it does, as its owner typed it. Null and "not-known" are what nobody knows.
 *
 * @param setsFull word of {@link OwnersGauge.SetsFull}
 * @param pastFull word of {@link OwnersGauge.PastFull}
 * @param afterOff word of {@link OwnersGauge.AfterOff}
 * @param smallestAmps such as "100 mA"
 * @param smallestAmpHours such as "0.1 Ah"
 * @param longestHours such as "99 h"
 * @param ownCurrent such as "12 mA"
 * @param zeroError such as "5 mA"
 * @param pastShunt such as "20 mA"
 * @param efficiencySet such as "95 %"
 */
public record TypedGauge(
        @Nullable String setsFull,
        @Nullable String pastFull,
        @Nullable String afterOff,
        @Nullable String smallestAmps,
        @Nullable String smallestAmpHours,
        @Nullable String longestHours,
        @Nullable String ownCurrent,
        @Nullable String zeroError,
        @Nullable String pastShunt,
        @Nullable String efficiencySet) {

    /** Nothing is typed at all. */
    public static final TypedGauge NOTHING =
            new TypedGauge(null, null, null, null, null, null, null, null, null, null);

    private static final String NOT_KNOWN = "not-known";
    private static final TypedFields.Limits AMPS =
            new TypedFields.Limits(
                    RecordUnit.MICROAMPS,
                    0,
                    10_000_000_000L,
                    "0 A to 10000 A, such as \"100 mA\", or not-known");

    /** As a scenario has it for any load. */
    private static final TypedFields.Limits PAST_SHUNT =
            new TypedFields.Limits(
                    RecordUnit.MICROAMPS,
                    0,
                    2_000_000_000L,
                    "0 A to 2000 A, such as \"20 mA\", or not-known");

    /** No gauge draws an ampere. */
    private static final TypedFields.Limits OWN =
            new TypedFields.Limits(
                    RecordUnit.MICROAMPS,
                    Setting.OWN_SUPPLY.minimum(),
                    Setting.OWN_SUPPLY.maximum(),
                    "0 A to 1 A, such as \"12 mA\", or not-known");

    private static final TypedFields.Limits AMP_HOURS =
            new TypedFields.Limits(
                    RecordUnit.MICROAMP_HOURS,
                    0,
                    100_000_000L,
                    "0 Ah to 100 Ah, such as \"0.1 Ah\", or not-known");
    private static final TypedFields.Limits HOURS =
            new TypedFields.Limits(
                    RecordUnit.HOURS, 1, 10_000, "1 h to 10000 h, such as \"99 h\", or not-known");
    private static final TypedFields.Limits EFFICIENCY =
            new TypedFields.Limits(
                    RecordUnit.PARTS_PER_MILLION,
                    500_000,
                    1_000_000,
                    "50 % to 100 %, such as \"95 %\", or not-known");

    /**
     * The gauge.
     *
     * @param fields is told of everything that is wrong
     */
    public OwnersGauge read(TypedFields fields) {
        OwnersGauge.SetsFull full =
                fields.optional(
                        "sets-full",
                        setsFull,
                        it -> TypedFields.word(it, OwnersGauge.SetsFull.class));
        OwnersGauge.PastFull past =
                fields.optional(
                        "past-full",
                        pastFull,
                        it -> TypedFields.word(it, OwnersGauge.PastFull.class));
        OwnersGauge.AfterOff off =
                fields.optional(
                        "after-off",
                        afterOff,
                        it -> TypedFields.word(it, OwnersGauge.AfterOff.class));
        Double unseen = number(fields, "past-shunt", pastShunt, PAST_SHUNT, 1e6);
        return new OwnersGauge(
                full == null ? OwnersGauge.SetsFull.NOT_KNOWN : full,
                past == null ? OwnersGauge.PastFull.NOT_KNOWN : past,
                off == null ? OwnersGauge.AfterOff.NOT_KNOWN : off,
                number(fields, "smallest-amps", smallestAmps, AMPS, 1e6),
                number(fields, "smallest-amp-hours", smallestAmpHours, AMP_HOURS, 1e6),
                number(fields, "longest-hours", longestHours, HOURS, 1),
                number(fields, "own-current", ownCurrent, OWN, 1e6),
                number(fields, "zero-error", zeroError, AMPS, 1e6),
                unseen == null ? 0 : unseen,
                number(fields, "efficiency-set", efficiencySet, EFFICIENCY, 1e6));
    }

    private static @Nullable Double number(
            TypedFields fields,
            String field,
            @Nullable String text,
            TypedFields.Limits limits,
            double steps) {
        return text == null || text.equals(NOT_KNOWN)
                ? null
                : fields.limited(field, 0, text, limits, limits.minimum()) / steps;
    }
}
