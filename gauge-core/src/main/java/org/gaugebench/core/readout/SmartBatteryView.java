package org.gaugebench.core.readout;

import org.gaugebench.core.estimate.RateModel;
import org.gaugebench.core.fixed.FixedMath;
import org.gaugebench.core.port.Sample;

/**
 * The gauge in the words of the Smart Battery Data Specification 1.1 (1998): sixteen bits each,
 * milliamps, milliampere-hours, minutes, tenths of a kelvin, millivolts.
 *
 * <p>The specification's accuracy is one-sided: the truth lies between the figure and the figure
 * plus MaxError. So the view reports the low end of the error band, rounded down, and the width of
 * the band as MaxError: "62 %, 57 to 65" reads 57 with MaxError 8.
 *
 * <p>Words end at 65,535 mAh and 32,767 mA. A larger battery or shunt needs the specification's
 * IPScale: every current and charge, the asked rate included, is then in units of 10, 100 or 1,000
 * mA or mAh, and SpecificationInfo says so in its bits 12 to 15. Times are held to 65,534; 65,535
 * means "not applicable".
 *
 * <p>What the gauge cannot know (charger set-points, over-temperature and over-charge alarms,
 * manufacturer blocks) is answered as unsupported or never set.
 */
public final class SmartBatteryView {
    /** Stands for "not applicable" in every time word. */
    public static final int NOT_APPLICABLE = 65_535;

    private static final int LONGEST_WORD = 65_534;
    private static final int LARGEST_WORD = 65_535;
    private static final int LARGEST_CURRENT = 32_767;
    private static final int SMALLEST_CURRENT = -32_768;
    private static final int LARGEST_SCALE = 3;
    private static final int SCALE_SHIFT = 12;
    private static final int VERSION_1_1 = 0x0021;
    private static final long NANOCOULOMBS_PER_MILLIAMP_HOUR = 3_600_000_000L;
    private static final int MICROAMPS_PER_MILLIAMP = 1_000;
    private static final int MICROVOLTS_PER_MILLIVOLT = 1_000;
    private static final long MILLIS_PER_MINUTE = 60_000;
    private static final int AT_RATE_OK_MILLIS = 10_000;
    private static final int PERCENT = 100;
    private static final int NO_LONGER_EMPTY_PERCENT = 20;
    private static final int ZERO_CELSIUS_MILLIKELVIN = 273_150;
    private static final int MILLIKELVIN_PER_TENTH = 100;
    private static final int ALARM_MINUTES = 10;
    private static final int ALARM_PART_OF_DESIGN = 10;

    // Parameters.
    private final int scale;
    private final long unitNanocoulombs;
    private final long unitMicroamps;
    private final int designCapacityWord;
    private final long designNanocoulombs;
    private final int designMillivolts;
    private final RateModel rateModel;

    // State: what the host wrote.
    private int atRate;
    private int capacityAlarm;
    private int timeAlarm = ALARM_MINUTES;

    // State: the last input, in words.
    private final SmartBatteryInput in = new SmartBatteryInput();
    private int remaining;
    private int fullCharge;
    private int percent;
    private int maxError = PERCENT;
    private boolean emptyLatch;
    private int error;

    /**
     * Chooses the scale and says what the battery was built as.
     *
     * @param designMilliampHours design capacity, 1 to 65,535,000
     * @param designMillivolts design voltage
     * @param ratedMilliamps largest current that is to be read
     * @param rateModel what part of the charge can be had at a rate, for the times
     */
    public SmartBatteryView(
            long designMilliampHours,
            int designMillivolts,
            long ratedMilliamps,
            RateModel rateModel) {
        int chosen = 0;
        long unit = 1;
        while (chosen < LARGEST_SCALE
                && (designMilliampHours / unit > LARGEST_WORD
                        || ratedMilliamps / unit > LARGEST_CURRENT)) {
            chosen++;
            unit *= 10;
        }
        scale = chosen;
        unitNanocoulombs = unit * NANOCOULOMBS_PER_MILLIAMP_HOUR;
        unitMicroamps = unit * MICROAMPS_PER_MILLIAMP;
        designNanocoulombs = designMilliampHours * NANOCOULOMBS_PER_MILLIAMP_HOUR;
        designCapacityWord = (int) FixedMath.clamp(designMilliampHours / unit, 0, LARGEST_WORD);
        this.designMillivolts = (int) FixedMath.clamp(designMillivolts, 0, LARGEST_WORD);
        this.rateModel = rateModel;
        capacityAlarm = designCapacityWord / ALARM_PART_OF_DESIGN;
    }

    /**
     * Takes the figures of one instant.
     *
     * <p><b>Range:</b> charges of 0 to 2^56; percent is worked out over a hundredth of the
     * capacity. The low end is rounded down and the high end up, so that the truth stays between.
     *
     * @param input copied, not kept
     */
    public void update(SmartBatteryInput input) {
        in.known = input.known;
        in.lowNanocoulombs = input.lowNanocoulombs;
        in.highNanocoulombs = input.highNanocoulombs;
        in.fullChargeNanocoulombs = input.fullChargeNanocoulombs;
        in.currentMicroamps = input.currentMicroamps;
        in.oneMinuteMicroamps = input.oneMinuteMicroamps;
        in.voltageMicrovolts = input.voltageMicrovolts;
        in.temperatureMillicelsius = input.temperatureMillicelsius;
        in.cycleCount = input.cycleCount;
        in.timeToFullMinutes = input.timeToFullMinutes;
        in.fullProven = input.fullProven;
        fullCharge = word(in.fullChargeNanocoulombs / unitNanocoulombs);
        if (!in.known) {
            remaining = 0;
            percent = 0;
            maxError = PERCENT;
            return;
        }
        long low = Math.max(0, in.lowNanocoulombs);
        remaining = word(low / unitNanocoulombs);
        long hundredth = Math.max(1, in.fullChargeNanocoulombs / PERCENT);
        percent = (int) FixedMath.clamp(low / hundredth, 0, PERCENT);
        long highPercent = (Math.max(low, in.highNanocoulombs) + hundredth - 1) / hundredth;
        maxError = (int) FixedMath.clamp(highPercent - percent, 0, PERCENT - percent);
        if (remaining == 0) {
            emptyLatch = true;
        } else if (percent >= NO_LONGER_EMPTY_PERCENT) {
            emptyLatch = false;
        }
    }

    /**
     * Reads one word.
     *
     * @param code function code, {@link SmartBatteryWord}
     * @return the word, 0 to 65,535; currents and the rate as sixteen bits in two's complement; 0
     *     with the error "unsupported" for a code that has no answer
     */
    public int read(int code) {
        if (code != SmartBatteryWord.BATTERY_STATUS) {
            error = 0;
        }
        return switch (code) {
            case SmartBatteryWord.REMAINING_CAPACITY_ALARM -> capacityAlarm;
            case SmartBatteryWord.REMAINING_TIME_ALARM -> timeAlarm;
            case SmartBatteryWord.BATTERY_MODE -> 0;
            case SmartBatteryWord.AT_RATE -> atRate & LARGEST_WORD;
            case SmartBatteryWord.AT_RATE_TIME_TO_FULL -> atRateTimeToFull();
            case SmartBatteryWord.AT_RATE_TIME_TO_EMPTY -> timeToEmpty(atRateMicroamps());
            case SmartBatteryWord.AT_RATE_OK -> atRateOk() ? 1 : 0;
            case SmartBatteryWord.TEMPERATURE -> temperature();
            case SmartBatteryWord.VOLTAGE -> word(in.voltageMicrovolts / MICROVOLTS_PER_MILLIVOLT);
            case SmartBatteryWord.CURRENT -> current(in.currentMicroamps) & LARGEST_WORD;
            case SmartBatteryWord.AVERAGE_CURRENT -> current(in.oneMinuteMicroamps) & LARGEST_WORD;
            case SmartBatteryWord.MAX_ERROR -> maxError;
            case SmartBatteryWord.RELATIVE_STATE_OF_CHARGE -> percent;
            case SmartBatteryWord.ABSOLUTE_STATE_OF_CHARGE -> absolutePercent();
            case SmartBatteryWord.REMAINING_CAPACITY -> remaining;
            case SmartBatteryWord.FULL_CHARGE_CAPACITY -> fullCharge;
            case SmartBatteryWord.RUN_TIME_TO_EMPTY -> timeToEmpty(in.currentMicroamps);
            case SmartBatteryWord.AVERAGE_TIME_TO_EMPTY -> timeToEmpty(in.oneMinuteMicroamps);
            case SmartBatteryWord.AVERAGE_TIME_TO_FULL -> averageTimeToFull();
            case SmartBatteryWord.BATTERY_STATUS -> status();
            case SmartBatteryWord.CYCLE_COUNT -> word(in.cycleCount);
            case SmartBatteryWord.DESIGN_CAPACITY -> designCapacityWord;
            case SmartBatteryWord.DESIGN_VOLTAGE -> designMillivolts;
            case SmartBatteryWord.SPECIFICATION_INFO -> VERSION_1_1 | (scale << SCALE_SHIFT);
            default -> fail(SmartBatteryWord.UNSUPPORTED_COMMAND);
        };
    }

    /**
     * Writes one of the three words that are the host's: the rate and the two alarms.
     *
     * @param code function code
     * @param value sixteen bits; the rate in two's complement
     * @return whether it was taken; else the status word carries the error
     */
    public boolean write(int code, int value) {
        error = 0;
        switch (code) {
            case SmartBatteryWord.AT_RATE -> atRate = (short) value;
            case SmartBatteryWord.REMAINING_CAPACITY_ALARM -> capacityAlarm = value & LARGEST_WORD;
            case SmartBatteryWord.REMAINING_TIME_ALARM -> timeAlarm = value & LARGEST_WORD;
            default -> {
                fail(SmartBatteryWord.ACCESS_DENIED);
                return false;
            }
        }
        return true;
    }

    private int fail(int code) {
        error = code;
        return 0;
    }

    private static int word(long value) {
        return (int) FixedMath.clamp(value, 0, LARGEST_WORD);
    }

    /** Toward zero, so that no current is reported that is not there. */
    private int current(int microamps) {
        return (int) FixedMath.clamp(microamps / unitMicroamps, SMALLEST_CURRENT, LARGEST_CURRENT);
    }

    private long atRateMicroamps() {
        return atRate * unitMicroamps;
    }

    /**
     * Minutes at a discharge current, from the charge that the host reads.
     *
     * <p><b>Range:</b> remaining word times unit at most 65,535 x 1000 x 3.6e9 below 2^58; nC / uA
     * = ms. Rounded down, held to 65,534, because 65,535 says "not discharged". A current beyond 32
     * bits of microamps is held there for the rate model only.
     */
    private int timeToEmpty(long microamps) {
        if (microamps >= 0 || !in.known) {
            return NOT_APPLICABLE;
        }
        long usable =
                rateModel.usableNanocoulombs(
                        remaining * unitNanocoulombs,
                        FixedMath.clampToInt(microamps),
                        in.temperatureMillicelsius);
        return (int) Math.min(usable / -microamps / MILLIS_PER_MINUTE, LONGEST_WORD);
    }

    private int atRateTimeToFull() {
        if (atRate <= 0 || !in.known) {
            return NOT_APPLICABLE;
        }
        long missing = Math.max(0, fullCharge - remaining) * unitNanocoulombs;
        return (int) Math.min(missing / atRateMicroamps() / MILLIS_PER_MINUTE, LONGEST_WORD);
    }

    private int averageTimeToFull() {
        if (in.oneMinuteMicroamps <= 0 || in.timeToFullMinutes < 0) {
            return NOT_APPLICABLE;
        }
        return Math.min(in.timeToFullMinutes, LONGEST_WORD);
    }

    /** Ten seconds of the rate on top of what flows now. */
    private boolean atRateOk() {
        if (atRate >= 0) {
            return true;
        }
        long outMicroamps = -atRateMicroamps() - Math.min(0, in.currentMicroamps);
        return in.known && remaining * unitNanocoulombs >= outMicroamps * AT_RATE_OK_MILLIS;
    }

    /** 0 where there is no sensor: no battery is at absolute zero. */
    private int temperature() {
        if (in.temperatureMillicelsius == Sample.TEMPERATURE_ABSENT) {
            return 0;
        }
        long millikelvin = (long) in.temperatureMillicelsius + ZERO_CELSIUS_MILLIKELVIN;
        return word((millikelvin + MILLIKELVIN_PER_TENTH / 2) / MILLIKELVIN_PER_TENTH);
    }

    private int absolutePercent() {
        if (!in.known) {
            return 0;
        }
        return word(Math.max(0, in.lowNanocoulombs) / Math.max(1, designNanocoulombs / PERCENT));
    }

    private int status() {
        boolean charging = current(in.currentMicroamps) > 0;
        boolean discharging = current(in.currentMicroamps) < 0;
        int bits = error;
        bits |= charging ? 0 : SmartBatteryWord.DISCHARGING_MASK;
        if (!in.known) {
            return bits;
        }
        bits |= SmartBatteryWord.INITIALIZED_MASK;
        bits |= in.fullProven ? SmartBatteryWord.FULLY_CHARGED_MASK : 0;
        bits |= emptyLatch ? SmartBatteryWord.FULLY_DISCHARGED_MASK : 0;
        bits |= remaining < capacityAlarm ? SmartBatteryWord.REMAINING_CAPACITY_MASK : 0;
        bits |=
                timeToEmpty(in.oneMinuteMicroamps) < timeAlarm
                        ? SmartBatteryWord.REMAINING_TIME_MASK
                        : 0;
        boolean nothingLeft = discharging && timeToEmpty(in.currentMicroamps) == 0;
        return bits | (nothingLeft ? SmartBatteryWord.TERMINATE_DISCHARGE_MASK : 0);
    }
}
