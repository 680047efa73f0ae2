package org.gaugebench.core.readout;

import org.gaugebench.core.estimate.RateModel;
import org.gaugebench.core.fixed.FixedMath;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.port.SmartBatteryWord;

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
    public static final int NOT_APPLICABLE_WORD = 65_535;

    private static final int LONGEST_WORD = 65_534;
    private static final int LARGEST_WORD = 65_535;
    private static final int LARGEST_CURRENT_WORD = 32_767;
    private static final int SMALLEST_CURRENT_WORD = -32_768;
    private static final int LARGEST_SCALE_CODE = 3;
    private static final int SCALE_SHIFT = 12;
    private static final int VERSION_WORD = 0x0021;
    private static final long NANOCOULOMBS_PER_MILLIAMP_HOUR = 3_600_000_000L;
    private static final int MICROAMPS_PER_MILLIAMP = 1_000;
    private static final int MICROVOLTS_PER_MILLIVOLT = 1_000;
    private static final long MILLIS_PER_MINUTE = 60_000;
    private static final int AT_RATE_OK_MILLIS = 10_000;
    private static final int PERCENT = 100;
    private static final int NO_LONGER_EMPTY_PERCENT = 20;
    private static final int ZERO_CELSIUS_MILLIKELVIN = 273_150;
    private static final int TENTH_MILLIKELVIN = 100;
    private static final int ALARM_MINUTES = 10;
    private static final int ALARM_DIVISOR = 10;

    // Parameters.
    private final int scaleCode;
    private final long unitNanocoulombs;
    private final long unitMicroamps;
    private final int designCapacityWord;
    private final long designNanocoulombs;
    private final int designMillivolts;
    private final RateModel rateModel;

    // State: what the host wrote.
    private int atRateWord;
    private int capacityAlarmWord;
    private int timeAlarmMinutes = ALARM_MINUTES;

    // State: the last input, in words.
    private final SmartBatteryInput in = new SmartBatteryInput();
    private int remainingWord;
    private int fullChargeWord;
    private int percent;
    private int maxErrorPercent = PERCENT;
    private boolean emptyLatch;
    private int errorCode;

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
        while (chosen < LARGEST_SCALE_CODE
                && (designMilliampHours / unit > LARGEST_WORD
                        || ratedMilliamps / unit > LARGEST_CURRENT_WORD)) {
            chosen++;
            unit *= 10;
        }
        scaleCode = chosen;
        unitNanocoulombs = unit * NANOCOULOMBS_PER_MILLIAMP_HOUR;
        unitMicroamps = unit * MICROAMPS_PER_MILLIAMP;
        designNanocoulombs = designMilliampHours * NANOCOULOMBS_PER_MILLIAMP_HOUR;
        designCapacityWord = (int) FixedMath.clamp(designMilliampHours / unit, 0, LARGEST_WORD);
        this.designMillivolts = (int) FixedMath.clamp(designMillivolts, 0, LARGEST_WORD);
        this.rateModel = rateModel;
        capacityAlarmWord = designCapacityWord / ALARM_DIVISOR;
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
        fullChargeWord = word(in.fullChargeNanocoulombs / unitNanocoulombs);
        if (!in.known) {
            remainingWord = 0;
            percent = 0;
            maxErrorPercent = PERCENT;
            return;
        }
        long low = Math.max(0, in.lowNanocoulombs);
        remainingWord = word(low / unitNanocoulombs);
        long hundredth = Math.max(1, in.fullChargeNanocoulombs / PERCENT);
        percent = (int) FixedMath.clamp(low / hundredth, 0, PERCENT);
        long highPercent = (Math.max(low, in.highNanocoulombs) + hundredth - 1) / hundredth;
        maxErrorPercent = (int) FixedMath.clamp(highPercent - percent, 0, PERCENT - percent);
        if (remainingWord == 0) {
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
        if (code != SmartBatteryWord.BATTERY_STATUS_CODE) {
            errorCode = 0;
        }
        return switch (code) {
            case SmartBatteryWord.REMAINING_CAPACITY_ALARM_CODE -> capacityAlarmWord;
            case SmartBatteryWord.REMAINING_TIME_ALARM_CODE -> timeAlarmMinutes;
            case SmartBatteryWord.BATTERY_MODE_CODE -> 0;
            case SmartBatteryWord.AT_RATE_CODE -> atRateWord & LARGEST_WORD;
            case SmartBatteryWord.AT_RATE_TIME_TO_FULL_CODE -> atRateTimeToFull();
            case SmartBatteryWord.AT_RATE_TIME_TO_EMPTY_CODE -> timeToEmpty(atRateMicroamps());
            case SmartBatteryWord.AT_RATE_OK_CODE -> atRateOk() ? 1 : 0;
            case SmartBatteryWord.TEMPERATURE_CODE -> temperature();
            case SmartBatteryWord.VOLTAGE_CODE ->
                    word(in.voltageMicrovolts / MICROVOLTS_PER_MILLIVOLT);
            case SmartBatteryWord.CURRENT_CODE -> current(in.currentMicroamps) & LARGEST_WORD;
            case SmartBatteryWord.AVERAGE_CURRENT_CODE ->
                    current(in.oneMinuteMicroamps) & LARGEST_WORD;
            case SmartBatteryWord.MAX_ERROR_CODE -> maxErrorPercent;
            case SmartBatteryWord.RELATIVE_STATE_OF_CHARGE_CODE -> percent;
            case SmartBatteryWord.ABSOLUTE_STATE_OF_CHARGE_CODE -> absolutePercent();
            case SmartBatteryWord.REMAINING_CAPACITY_CODE -> remainingWord;
            case SmartBatteryWord.FULL_CHARGE_CAPACITY_CODE -> fullChargeWord;
            case SmartBatteryWord.RUN_TIME_TO_EMPTY_CODE -> timeToEmpty(in.currentMicroamps);
            case SmartBatteryWord.AVERAGE_TIME_TO_EMPTY_CODE -> timeToEmpty(in.oneMinuteMicroamps);
            case SmartBatteryWord.AVERAGE_TIME_TO_FULL_CODE -> averageTimeToFull();
            case SmartBatteryWord.BATTERY_STATUS_CODE -> status();
            case SmartBatteryWord.CYCLE_COUNT_CODE -> word(in.cycleCount);
            case SmartBatteryWord.DESIGN_CAPACITY_CODE -> designCapacityWord;
            case SmartBatteryWord.DESIGN_VOLTAGE_CODE -> designMillivolts;
            case SmartBatteryWord.SPECIFICATION_INFO_CODE ->
                    VERSION_WORD | (scaleCode << SCALE_SHIFT);
            default -> fail(SmartBatteryWord.UNSUPPORTED_COMMAND_CODE);
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
        errorCode = 0;
        switch (code) {
            case SmartBatteryWord.AT_RATE_CODE -> atRateWord = (short) value;
            case SmartBatteryWord.REMAINING_CAPACITY_ALARM_CODE ->
                    capacityAlarmWord = value & LARGEST_WORD;
            case SmartBatteryWord.REMAINING_TIME_ALARM_CODE ->
                    timeAlarmMinutes = value & LARGEST_WORD;
            default -> {
                fail(SmartBatteryWord.ACCESS_DENIED_CODE);
                return false;
            }
        }
        return true;
    }

    private int fail(int code) {
        errorCode = code;
        return 0;
    }

    private static int word(long value) {
        return (int) FixedMath.clamp(value, 0, LARGEST_WORD);
    }

    /** Toward zero, so that no current is reported that is not there. */
    private int current(int microamps) {
        return (int)
                FixedMath.clamp(
                        microamps / unitMicroamps, SMALLEST_CURRENT_WORD, LARGEST_CURRENT_WORD);
    }

    private long atRateMicroamps() {
        return atRateWord * unitMicroamps;
    }

    /**
     * Minutes at a discharge current, from the charge that the host reads.
     *
     * <p><b>Range:</b> remainingWord word times unit at most 65,535 x 1000 x 3.6e9 below 2^58; nC /
     * uA = ms. Rounded down, held to 65,534, because 65,535 says "not discharged". A current beyond
     * 32 bits of microamps is held there for the rate model only.
     */
    private int timeToEmpty(long microamps) {
        if (microamps >= 0 || !in.known) {
            return NOT_APPLICABLE_WORD;
        }
        long usable =
                rateModel.usableNanocoulombs(
                        remainingWord * unitNanocoulombs,
                        FixedMath.clampToInt(microamps),
                        in.temperatureMillicelsius);
        return (int) Math.min(usable / -microamps / MILLIS_PER_MINUTE, LONGEST_WORD);
    }

    private int atRateTimeToFull() {
        if (atRateWord <= 0 || !in.known) {
            return NOT_APPLICABLE_WORD;
        }
        long missing = Math.max(0, fullChargeWord - remainingWord) * unitNanocoulombs;
        return (int) Math.min(missing / atRateMicroamps() / MILLIS_PER_MINUTE, LONGEST_WORD);
    }

    private int averageTimeToFull() {
        if (in.oneMinuteMicroamps <= 0 || in.timeToFullMinutes < 0) {
            return NOT_APPLICABLE_WORD;
        }
        return Math.min(in.timeToFullMinutes, LONGEST_WORD);
    }

    /** Ten seconds of the rate on top of what flows now. */
    private boolean atRateOk() {
        if (atRateWord >= 0) {
            return true;
        }
        long outMicroamps = -atRateMicroamps() - Math.min(0, in.currentMicroamps);
        return in.known && remainingWord * unitNanocoulombs >= outMicroamps * AT_RATE_OK_MILLIS;
    }

    /** 0 where there is no sensor: no battery is at absolute zero. */
    private int temperature() {
        if (in.temperatureMillicelsius == Sample.TEMPERATURE_ABSENT) {
            return 0;
        }
        long millikelvin = (long) in.temperatureMillicelsius + ZERO_CELSIUS_MILLIKELVIN;
        return word((millikelvin + TENTH_MILLIKELVIN / 2) / TENTH_MILLIKELVIN);
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
        int bits = errorCode;
        bits |= charging ? 0 : SmartBatteryWord.DISCHARGING_MASK;
        if (!in.known) {
            return bits;
        }
        bits |= SmartBatteryWord.INITIALIZED_MASK;
        bits |= in.fullProven ? SmartBatteryWord.FULLY_CHARGED_MASK : 0;
        bits |= emptyLatch ? SmartBatteryWord.FULLY_DISCHARGED_MASK : 0;
        bits |= remainingWord < capacityAlarmWord ? SmartBatteryWord.REMAINING_CAPACITY_MASK : 0;
        bits |=
                timeToEmpty(in.oneMinuteMicroamps) < timeAlarmMinutes
                        ? SmartBatteryWord.REMAINING_TIME_MASK
                        : 0;
        boolean nothingLeft = discharging && timeToEmpty(in.currentMicroamps) == 0;
        return bits | (nothingLeft ? SmartBatteryWord.TERMINATE_DISCHARGE_MASK : 0);
    }
}
