package org.gaugebench.core;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.Map;
import org.gaugebench.core.port.EstimateState;
import org.gaugebench.core.port.FullTimeState;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.RuleReason;
import org.gaugebench.core.port.RuleState;
import org.gaugebench.core.port.Trust;
import org.gaugebench.core.settings.Setting;

/**
 * What each register may show, whatever was fed and restored: the ranges of docs/arithmetic.md. A
 * sum that wraps falls out of its range.
 */
final class RegisterRanges {
    private static final Map<Register, long[]> RANGES = new EnumMap<>(Register.class);
    private static final long CAPACITY = Setting.CAPACITY.maximum() * 3_600_000_000L;
    private static final long BAND = 1L << 62;
    private static final long LONGEST_MINUTES = Setting.LONGEST_TIME.maximum() * 60;

    /** A minute at the clamp of 32 bits, and the own supply against it. */
    private static final long MINUTE = ((1L << 31) + Setting.OWN_SUPPLY.maximum()) * 60_000;

    private static void range(Register register, long low, long high) {
        RANGES.put(register, new long[] {low, high});
    }

    static {
        range(Register.CLOCK_MILLIS, 0, (1L << 32) - 1);
        range(Register.UPTIME_MILLIS, 0, Long.MAX_VALUE);
        range(Register.CURRENT_MICROAMPS, -Integer.MAX_VALUE, Integer.MAX_VALUE);
        range(Register.VOLTAGE_MICROVOLTS, 0, Setting.VOLTAGE_FULL_SCALE.maximum() * 1_000);
        range(
                Register.ZERO_ADJUSTMENT_COUNTS_Q8,
                65_536L - Integer.MAX_VALUE,
                Integer.MAX_VALUE - 65_536L);
        range(Register.SPAN_ADJUSTMENT_PARTS_PER_MILLION, -50_000, 50_000);
        range(Register.IN_NANOCOULOMBS, 0, Long.MAX_VALUE);
        range(Register.OUT_NANOCOULOMBS, 0, Long.MAX_VALUE);
        range(Register.MINUTE_NANOCOULOMBS, -MINUTE, MINUTE);
        range(Register.MINUTE_MILLIS, 0, 59_999);
        range(Register.SETTLED_NANOCOULOMBS, 0, CAPACITY);
        range(Register.EFFICIENCY_REMAINDER_Q16, 0, 65_535);
        range(Register.CHARGE_NANOCOULOMBS, 0, CAPACITY);
        range(Register.CAPACITY_NANOCOULOMBS, 360_000_000_000L, CAPACITY);
        range(Register.SURPLUS_NANOCOULOMBS, 0, Long.MAX_VALUE);
        range(Register.DEFICIT_NANOCOULOMBS, 0, Long.MAX_VALUE);
        range(Register.STATE_OF_CHARGE_PARTS_PER_MILLION, -1, 1_000_000);
        range(Register.LOWER_EDGE_PARTS_PER_MILLION, 0, 1_000_000);
        range(Register.UPPER_EDGE_PARTS_PER_MILLION, 0, 1_000_000);
        range(Register.BAND_RESIDUAL_PARTS_PER_MILLION, 0, 1_000_000);
        range(Register.BAND_MILLIS, 0, 1L << 39);
        range(Register.BAND_NET_NANOCOULOMBS, -BAND, BAND);
        range(Register.BAND_GROSS_NANOCOULOMBS, 0, BAND);
        range(Register.BAND_IN_NANOCOULOMBS, 0, BAND);
        range(Register.BAND_GAP_NANOCOULOMBS, 0, BAND);
        range(Register.BAND_WARM_MILLIS_Q8, 0, 1L << 47);
        range(Register.IN_MICROJOULES, 0, Long.MAX_VALUE);
        range(Register.OUT_MICROJOULES, 0, Long.MAX_VALUE);
        range(Register.RULE_STATE, 0, RuleState.values().length - 1);
        range(Register.RULE_REASON, 0, RuleReason.values().length - 1);
        range(Register.RULE_HELD_MINUTES, 0, Integer.MAX_VALUE);
        range(Register.RULE_DISCHARGED_NANOCOULOMBS, 0, CAPACITY / 2);
        range(Register.FULL_COUNT, 0, Integer.MAX_VALUE);
        range(Register.EMPTY_COUNT, 0, Integer.MAX_VALUE);
        range(Register.MINUTES_SINCE_FULL, 0, 1L << 40);
        range(Register.MEASURED_CAPACITY_MILLIAMP_HOURS, 0, Setting.CAPACITY.maximum() / 10 * 11);
        range(Register.MEASURED_EFFICIENCY_PARTS_PER_MILLION, 0, 1_000_000);
        range(Register.TIME_TO_EMPTY_STATE, 0, EstimateState.values().length - 1);
        range(Register.TIME_TO_EMPTY_MINUTES, 0, LONGEST_MINUTES);
        range(Register.TIME_TO_EMPTY_LOW_MINUTES, 0, LONGEST_MINUTES);
        range(Register.TIME_TO_EMPTY_HIGH_MINUTES, 0, LONGEST_MINUTES);
        range(Register.TIME_AT_THIS_LOAD_MINUTES, 0, LONGEST_MINUTES);
        range(Register.TIME_AT_USUAL_USE_MINUTES, 0, LONGEST_MINUTES);
        range(Register.TIME_TO_FULL_STATE, 0, FullTimeState.values().length - 1);
        range(Register.TIME_TO_FULL_MINUTES, 0, LONGEST_MINUTES);
        range(Register.SHOWN_PERCENT, -1, 100);
        range(Register.LOW_CHARGE_ALARM, 0, 1);
        range(Register.TRUST, 0, Trust.values().length - 1);
        range(Register.SAVES, 0, Integer.MAX_VALUE);
        range(Register.FAULT_TICKS, 0, Long.MAX_VALUE);
    }

    private RegisterRanges() {}

    static void check(Registers registers) {
        RANGES.forEach(
                (register, range) -> {
                    long value = registers.get(register);
                    assertTrue(
                            value >= range[0] && value <= range[1],
                            () -> register + " is " + value + ", out of its range");
                });
        assertTrue(
                registers.get(Register.CHARGE_NANOCOULOMBS)
                        <= registers.get(Register.CAPACITY_NANOCOULOMBS),
                "more charge than capacity");
    }
}
