package org.gaugebench.sim.scenario;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * One mistake that a counting gauge can make, each with a name, a sentence, the cases that show it
 * and what follows from it. The case numbers are those of this project's catalogue of edge cases.
 */
public enum Mistake {
    /** The clock's difference is not looked at. */
    ASSUMED_TICK(
            "assumed-tick",
            MistakeFamily.CLOCK,
            "counts the nominal interval for every sample, however long it was",
            "a loop of 10 ms that takes 10.3 ms counts 2.9 % too little",
            "TIM03",
            "TIM04",
            "TIM10"),
    /** The clock's difference is taken as if it never wrapped. */
    MILLISECOND_WRAP(
            "millisecond-wrap",
            MistakeFamily.CLOCK,
            "subtracts two readings of the 32-bit millisecond counter as if it never wrapped",
            "after 49.71 days a load of 5 A adds 5965 Ah in one tick",
            "TIM05"),
    /** The last reading stands for the whole gap. */
    HOLD_LAST_ON_GAP(
            "hold-last-on-gap",
            MistakeFamily.GAP,
            "counts the last reading before a gap for the whole gap, however long",
            "a load of 40 A that ends as a gap of 90 s begins costs 1.0 Ah that never flowed",
            "ADC08"),
    /** A gap is no time at all. */
    GAP_NOT_COUNTED(
            "gap-not-counted",
            MistakeFamily.GAP,
            "counts nothing for a gap between samples",
            "90 s without samples at 40 A are 1.0 Ah missed",
            "ADC08",
            "TIM04"),
    /** An arithmetic shift rounds towards minus infinity. */
    FLOOR_NOT_ROUND(
            "floor-not-round",
            MistakeFamily.ROUNDING,
            "drops the low bits of a reading by a right shift, which rounds down on both signs",
            "a bias of half a step out of the battery: 9 Ah in 30 days at a step of 25 mA",
            "ADC02"),
    /** A division rounds towards zero. */
    TRUNCATE_NOT_ROUND(
            "truncate-not-round",
            MistakeFamily.ROUNDING,
            "drops the low bits of a reading by a division, which rounds towards zero",
            "a load below one step is not there: 20 mA under a step of 25 mA are 14.4 Ah in 30"
                    + " days",
            "ADC01",
            "ADC04"),
    /** A narrow signed code is taken for an unsigned one. */
    SIGN_EXTENSION(
            "sign-extension",
            MistakeFamily.READING,
            "reads a negative code of the converter as an unsigned one",
            "-1 count of a 16-bit converter at 25 mA a count reads as +1638 A",
            "ADC03"),
    /** The display's dead-band acts on the count. */
    DEAD_BAND(
            "dead-band",
            MistakeFamily.READING,
            "drops currents from the count that the display shows as zero",
            "60 mA of standby under a dead-band of 70 mA are 43.2 Ah in 30 days",
            "SEN13"),
    /** Efficiency on samples instead of minutes. */
    EFFICIENCY_PER_SAMPLE(
            "efficiency-per-sample",
            MistakeFamily.WEIGHT,
            "takes the coulombic efficiency off every sample instead of every minute's net",
            "a ripple of +-10 A about zero at 90 % efficiency costs 12 Ah a day",
            "EFF04"),
    /** Peukert's law in the count. */
    RATE_COUNTED_CHARGE(
            "rate-counted-charge",
            MistakeFamily.WEIGHT,
            "counts a discharge above the rated current as more than what flows",
            "100 A out of 100 Ah at an exponent of 1.2: empty after 54.9 Ah, 45.1 Ah still there",
            "EFF07",
            "EMP08"),
    /** Peukert's law below the rated current. */
    RATE_BELOW_RATED(
            "rate-below-rated",
            MistakeFamily.WEIGHT,
            "counts a discharge below the rated current as less than what flows",
            "1 A out of 100 Ah at an exponent of 1.2: a battery of 138 Ah",
            "EFF08"),
    /** Peukert's law on the way in. */
    RATE_ON_CHARGE(
            "rate-on-charge",
            MistakeFamily.WEIGHT,
            "weighs the charging current by the law of the discharge",
            "40 A into 100 Ah at an exponent of 1.2 count as 60.6 A",
            "EFF09"),
    /** 24 bits of significand. */
    FLOAT_ACCUMULATOR(
            "float-accumulator",
            MistakeFamily.ACCUMULATOR,
            "holds ampere-seconds in a 32-bit floating-point number",
            "at 360 000 As and 100 Hz a load of 1.5 A counts as nothing",
            "ACC01"),
    /** 2^31 mA.s are 596.5 Ah. */
    OVERFLOW_32_BIT(
            "overflow-32-bit",
            MistakeFamily.ACCUMULATOR,
            "holds milliampere-seconds in a 32-bit integer",
            "the count wraps to below zero at 596.5 Ah",
            "ACC02"),
    /** The remainder of a division is thrown away each tick. */
    TRUNCATE_EACH_TICK(
            "truncate-each-tick",
            MistakeFamily.ACCUMULATOR,
            "turns each tick into whole milliampere-hours and drops the rest",
            "at 1 Hz 3 A count as nothing, 5 A as 72 % and 7 A as 51 % of themselves",
            "ACC03"),
    /** A magnitude where a signed figure was meant. */
    LOST_SIGN(
            "lost-sign",
            MistakeFamily.ACCUMULATOR,
            "takes the magnitude of the net charge since the last set when charging begins",
            "9000 As out of 100 Ah become 9000 As in: a jump of 5 %",
            "ACC07"),
    /** Lifetime totals with one factor between them. */
    EFFICIENCY_ON_TOTALS(
            "efficiency-on-totals",
            MistakeFamily.ACCUMULATOR,
            "applies the efficiency to all charge ever put in, each time it is read",
            "after 10 000 Ah an edit from 99 to 98 % moves the count by 100 Ah",
            "ACC09"),
    /** Nothing stops the count. */
    NO_CLAMP(
            "no-clamp",
            MistakeFamily.CLAMP,
            "neither stops the count at full and empty nor hides that it ran on",
            "a battery that is kept charged is shown far above 100 %",
            "ACC04",
            "ACC06"),
    /** The count runs on behind a figure that stands. */
    DISPLAY_ONLY_CLAMP(
            "display-only-clamp",
            MistakeFamily.CLAMP,
            "stops the figure at 0 and 100 % but not the count behind it",
            "15 Ah of overcharge must be burned before the figure moves",
            "ACC05",
            "ACC06"),
    /** Believes nearly everything. */
    LOOSE_FULL_RULE(
            "loose-full-rule",
            MistakeFamily.FULL,
            "sets to full after 3 minutes above a threshold under float with up to 4 % of the"
                    + " capacity flowing in",
            "weak winter sun sets it to full at 71 %",
            "FUL01",
            "FUL02",
            "FUL08",
            "FUL09"),
    /** Believes nothing that moves. */
    STRICT_FULL_RULE(
            "strict-full-rule",
            MistakeFamily.FULL,
            "sets to full only when voltage and taper hold in every sample of the hold, at a"
                    + " threshold without temperature",
            "a pump that starts every ten minutes, or a hot battery, and full is never seen",
            "FUL04",
            "FUL07",
            "FUL10"),
    /** Does not look at the current. */
    FULL_BY_VOLTAGE_ONLY(
            "full-by-voltage-only",
            MistakeFamily.FULL,
            "sets to full at the first sample above the threshold, whatever flows",
            "a strong charger or a spike of two seconds sets it to full at any state of charge",
            "FUL14",
            "FUL18",
            "FUL19"),
    /** A rule that fires again and again. */
    NO_REARM(
            "no-rearm",
            MistakeFamily.AFTER_FULL,
            "looks for full again without waiting for a discharge",
            "one evening of absorption counts as hundreds of full charges",
            "FUL03",
            "FUL08"),
    /** Sag is taken for empty. */
    EMPTY_BY_VOLTS_ALONE(
            "empty-by-volts-alone",
            MistakeFamily.EMPTY,
            "sets to empty at the first sample at the empty voltage, whatever flows",
            "100 A through 20 mOhm set it to empty at 60 %",
            "EMP01",
            "EMP02",
            "EMP05",
            "EMP08"),
    /** Learns from voltages that mean nothing. */
    CAPACITY_FROM_ANY_TWO_VOLTAGES(
            "capacity-from-any-two-voltages",
            MistakeFamily.CAPACITY,
            "works out the capacity from the charge between any two voltages, rested or not",
            "voltages that rise or sag with the current give a capacity of any size",
            "AGE02",
            "EMP06"),
    /** Counts what is gone. */
    EDIT_KEEPS_CHARGE_USED(
            "edit-keeps-charge-used",
            MistakeFamily.CAPACITY_EDIT,
            "keeps the charge drawn since full when another capacity is entered",
            "60 Ah out of 100 Ah become 60 Ah out of 200 Ah: 40 % jumps to 70 %",
            "ACC08"),
    /** Counts what is there. */
    EDIT_KEEPS_CHARGE_LEFT(
            "edit-keeps-charge-left",
            MistakeFamily.CAPACITY_EDIT,
            "keeps the charge that is left when another capacity is entered",
            "40 Ah of 100 Ah become 40 Ah of 200 Ah: 40 % falls to 20 %",
            "ACC08"),
    /** A hopeful default. */
    START_AT_FULL(
            "start-at-full",
            MistakeFamily.START,
            "shows 100 % at every power-up",
            "a battery at 50 % is shown 50 % too high",
            "FUL21",
            "PWR02"),
    /** A guess without rest. */
    VOLTAGE_GUESS_AT_START(
            "voltage-guess-at-start",
            MistakeFamily.START,
            "takes the state of charge from the first voltage at power-up, rested or not",
            "10 A of charge through 10 mOhm are 100 mV: 12 points of a lead-acid table, most of a"
                    + " LiFePO4 plateau",
            "PWR10"),
    /** No filter. */
    HOURS_INSTANT(
            "hours-instant",
            MistakeFamily.HOURS,
            "divides by the current of this moment",
            "a refrigerator shows 12 h and nothing by turns, where 36 h are true",
            "TTE02"),
    /** A short filter. */
    HOURS_SINGLE_POLE_3_MIN(
            "hours-single-pole-3-min",
            MistakeFamily.HOURS,
            "divides by a current that follows with a time constant of 3 minutes",
            "a refrigerator swings between 12 h and thousands of hours",
            "TTE01",
            "TTE02",
            "TTE03"),
    /** A long filter. */
    HOURS_SINGLE_POLE_30_MIN(
            "hours-single-pole-30-min",
            MistakeFamily.HOURS,
            "divides by a current that follows with a time constant of 30 minutes",
            "a new load shows whole only after more than an hour",
            "TTE01",
            "TTE02",
            "TTE03",
            "TTE04"),
    /** A window. */
    HOURS_WINDOW_30_MIN(
            "hours-window-30-min",
            MistakeFamily.HOURS,
            "divides by the mean current of the last 30 minutes",
            "a new load shows whole only after half an hour",
            "TTE01",
            "TTE03",
            "TTE04"),
    /** The filter begins at no current. */
    FILTER_SEEDED_WITH_ZERO(
            "filter-seeded-with-zero",
            MistakeFamily.HOURS_SEED,
            "begins its filter at no current instead of at the first one",
            "100 Ah at 10 A show 185 h after 10 s",
            "TTE09"),
    /** The narrowing comes before the limit. */
    MINUTES_16_BIT(
            "minutes-16-bit",
            MistakeFamily.SHOWN_HOURS,
            "narrows the minutes to 16 bits before it limits them",
            "66 000 min show as 7:44",
            "TTE06"),
    /** A limit that looks like a measurement. */
    HOURS_CLAMPED_AS_MEASURED(
            "hours-clamped-as-measured",
            MistakeFamily.SHOWN_HOURS,
            "shows 99:59 for any longer time as if it were measured",
            "100 Ah at any current below 1 A show the same time",
            "TTE05"),
    /** The old record goes before the new one is there. */
    SAVE_BY_OVERWRITE(
            "save-by-overwrite",
            MistakeFamily.SAVE,
            "saves its count into one slot of its memory, which it erases before it writes",
            "power that goes between the two leaves no count at all",
            "PWR03");

    private static final Set<Mistake> JUMP_UNTOLD =
            EnumSet.of(MILLISECOND_WRAP, SIGN_EXTENSION, OVERFLOW_32_BIT, LOST_SIGN);

    private final String key;
    private final MistakeFamily family;
    private final String sentence;
    private final String consequence;
    private final String cases;

    Mistake(
            String key,
            MistakeFamily family,
            String sentence,
            String consequence,
            String... cases) {
        this.key = key;
        this.family = family;
        this.sentence = sentence;
        this.consequence = consequence;
        this.cases = String.join(" ", cases);
    }

    /** The name in scenario files, in lower-case words. */
    public String key() {
        return key;
    }

    /** The stage in which it is made. */
    public MistakeFamily family() {
        return family;
    }

    /** What the gauge does, without a subject and a full stop. */
    public String sentence() {
        return sentence;
    }

    /** What follows from it, without a full stop. */
    public String consequence() {
        return consequence;
    }

    /**
     * Whether what is shown may move in one tick by more than what flows in it, and no event tells
     * of that. Of all other mistakes the count moves by what flows, about, or with an event.
     */
    public boolean jumpsUntold() {
        return JUMP_UNTOLD.contains(this);
    }

    /** Numbers of the catalogue's cases that show it. */
    public List<String> cases() {
        return List.of(cases.split(" ", -1));
    }

    /**
     * Finds a mistake by its name.
     *
     * @param key a name as in a scenario file
     * @return the mistake, or null where none has this name
     */
    public static @Nullable Mistake ofKey(String key) {
        for (Mistake mistake : values()) {
            if (mistake.key.equals(key)) {
                return mistake;
            }
        }
        return null;
    }
}
