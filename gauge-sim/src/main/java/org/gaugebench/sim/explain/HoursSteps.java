package org.gaugebench.sim.explain;

import org.gaugebench.core.port.EstimateState;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/** The filter of the load and the hours that rest on it (arithmetic.md 11 and 12). */
final class HoursSteps {
    private final Sheet sheet;
    private final GaugeSettings settings;
    private final FollowedLoad load;

    HoursSteps(Sheet sheet, Followed followed) {
        this.sheet = sheet;
        this.settings = followed.settings();
        this.load = followed.load();
    }

    void write(HoursInput input) {
        filter();
        hours(input);
    }

    private void filter() {
        sheet.section("Filter of the load", "arithmetic 11; T1");
        if (!load.anySlot()) {
            sheet.words("note", "no slot of 5 s has passed yet");
            return;
        }
        Expression fast = sheet.step("fast pole, at 5 s", load.fastStep(), "uA/256");
        if (load.minutes() == 0) {
            sheet.step("filtered: the fast pole", load.meanQ8(), Register.FILTERED_MICROAMPS_Q8);
        } else {
            sheet.words("slow mean", "over the last %d whole minutes".formatted(load.minutes()));
            sheet.step("filtered", load.meanQ8(), Register.FILTERED_MICROAMPS_Q8);
        }
        sheet.step("filtered in whole uA", load.mean(), "uA");
        if (!load.isSeeded()) {
            sheet.words("envelope", "none before the first whole minute");
            return;
        }
        Expression low = sheet.step("envelope, heavy end", load.lowEdge(), "uA");
        Expression high = sheet.step("envelope, light end", load.highEdge(), "uA");
        sheet.holds("fast pole below it", fast.right(8), "<", low);
        sheet.holds("fast pole above it", fast.right(8), ">", high);
        int outside = load.outsideSlots();
        if (outside > 0) {
            sheet.words(
                    "outside",
                    "%d of %d slots, %s than before"
                            .formatted(
                                    outside,
                                    load.isHeavier() ? 9 : 36,
                                    load.isHeavier() ? "heavier" : "lighter"));
        }
        if (load.rememberedSlots() > 0) {
            sheet.words(
                    "mean remembered",
                    "for %d slots of 5 s more".formatted(load.rememberedSlots()));
        }
    }

    private void hours(HoursInput input) {
        sheet.section("Hours", "arithmetic 12; T2 to T5");
        if (!input.known()) {
            sheet.words("time to empty", "none: the state of charge is not known (T2)");
            return;
        }
        sheet.words(
                "worked out", "at the end of the last whole minute, or after a command since then");
        sheet.step("charge then", Expression.of(input.chargeNanocoulombs()), "nC");
        long bound = Math.max(1, settings.get(Setting.OFFSET_BOUND));
        if (input.seeded()) {
            filtered(input, bound);
        } else {
            sheet.words("time to empty", "none before the first whole minute (T2)");
        }
        long now = input.presentMicroamps();
        if (Math.abs(now) >= bound && now < 0) {
            Expression out = sheet.step("current then", Expression.of(now), "uA");
            long below = behind(out.whole(), input.millicelsius());
            time(
                    "at that current",
                    input.chargeNanocoulombs(),
                    below,
                    now,
                    Register.TIME_AT_THIS_LOAD_MINUTES);
        }
        sheet.words(
                "not taken apart here",
                "time at usual use, %d min, and time to full, %d min: they rest on hours gone by"
                        .formatted(
                                sheet.register(Register.TIME_AT_USUAL_USE_MINUTES),
                                sheet.register(Register.TIME_TO_FULL_MINUTES)));
    }

    private void filtered(HoursInput input, long bound) {
        long current = input.filteredMicroamps();
        Expression mean = sheet.step("filtered current then", Expression.of(current), "uA");
        boolean inside =
                sheet.holds("within the offset bound", mean.abs(), "<", Expression.of(bound));
        if (inside) {
            sheet.words("time to empty", "none: nothing to divide by (T2)");
            return;
        }
        if (current > 0) {
            sheet.words("time to empty", "none: the battery is being charged (T2)");
            return;
        }
        long below = behind(current, input.millicelsius());
        time(
                "time to empty",
                input.chargeNanocoulombs(),
                below,
                current,
                Register.TIME_TO_EMPTY_MINUTES);
        if (input.lowerEdge() >= 0) {
            long part = settings.get(Setting.CAPACITY) * 3_600;
            time(
                    "at the band's lower edge",
                    input.lowerEdge() * part,
                    below,
                    current,
                    Register.TIME_TO_EMPTY_LOW_MINUTES);
            time(
                    "at the band's upper edge",
                    input.upperEdge() * part,
                    below,
                    current,
                    Register.TIME_TO_EMPTY_HIGH_MINUTES);
        }
        EstimateState state =
                EstimateState.values()[(int) sheet.register(Register.TIME_TO_EMPTY_STATE)];
        if (state == EstimateState.MORE_THAN) {
            sheet.words("note", "a limit of the display: 'more than', not a measurement (T3)");
        }
    }

    /** What stays in the battery: the larger of what is kept back and what rate and cold leave. */
    private long behind(long current, long millicelsius) {
        Expression left = new RateSteps(sheet, settings).behind(current, millicelsius);
        Expression kept =
                Expression.of(settings.get(Setting.CAPACITY))
                        .times(3_600)
                        .times(settings.get(Setting.KEPT_BACK));
        return sheet.step("charge that cannot be had", kept.max(left), "nC").whole();
    }

    private void time(String label, long charge, long below, long current, Register register) {
        Expression usable = Expression.of(charge).minus(below).max(0);
        Expression minutes = usable.over(-current).over(Minute.MILLIS);
        sheet.step(label, minutes.min(settings.get(Setting.LONGEST_TIME) * 60), register);
    }
}
