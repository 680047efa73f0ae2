package org.gaugebench.sim.explain;

import java.util.Iterator;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/** From microamps to the count and the state of charge (arithmetic.md 4 to 9 and 16). */
final class ChargeSteps {
    private static final String NC = "nC";

    private final Sheet sheet;
    private final Tick tick;
    private final GaugeSettings settings;
    private final Expression capacity;

    // The count as it goes through the tick.
    private long settled;
    private long minute;
    private long remainder;
    private long surplus;
    private long deficit;
    private boolean proven;

    ChargeSteps(Sheet sheet, Tick tick) {
        this.sheet = sheet;
        this.tick = tick;
        settings = tick.settings();
        capacity = Expression.of(settings.get(Setting.CAPACITY) * 3_600_000_000L);
        settled = tick.before(Register.SETTLED_NANOCOULOMBS);
        minute = tick.before(Register.MINUTE_NANOCOULOMBS);
        remainder = tick.before(Register.EFFICIENCY_REMAINDER_Q16);
        surplus = tick.before(Register.SURPLUS_NANOCOULOMBS);
        deficit = tick.before(Register.DEFICIT_NANOCOULOMBS);
        proven = tick.provenBefore();
    }

    /** Energy of a stretch: millivolts, cut off, times microamps times milliseconds. */
    static Expression picojoules(long microvolts, long microamps, long millis) {
        return Expression.of(microvolts / 1_000).times(microamps).times(millis);
    }

    void write() {
        if (tick.isCounted()) {
            count();
            energy();
        } else if (tick.isMissed()) {
            sheet.section("The minute ends early", "arithmetic 5, 6; G6");
            settle(0);
            tell();
        }
    }

    private void count() {
        long microamps = tick.after(Register.CURRENT_MICROAMPS);
        long under = tick.before(Register.MINUTE_MILLIS);
        long left = tick.elapsedMillis();
        Iterator<Minute> whole = tick.minutes().iterator();
        sheet.section("Charge", "arithmetic 4, 5; G1, G2");
        if (under + left >= Minute.MILLIS) {
            sheet.step("to the end of the minute", Expression.of(Minute.MILLIS).minus(under), "ms");
        }
        sums(microamps, left);
        while (left > 0) {
            long part = Math.min(left, Minute.MILLIS - under);
            stretch(microamps, part);
            under += part;
            left -= part;
            if (under == Minute.MILLIS && whole.hasNext()) {
                Minute ended = whole.next();
                sheet.section("A minute ends", "arithmetic 5, 6, 9, 16; G3 to G5, G23");
                means(ended, !whole.hasNext());
                settle(LossSteps.write(sheet, settings, ended));
                if (!whole.hasNext()) {
                    correct();
                    tell();
                }
                under = 0;
                if (left > 0) {
                    sheet.section("Charge of the next minute", "arithmetic 4, 5; G2");
                }
            }
        }
        sheet.step("minute under way", Expression.of(minute), Register.MINUTE_NANOCOULOMBS);
        sheet.step("its length", Expression.of(under), Register.MINUTE_MILLIS);
    }

    private void sums(long microamps, long millis) {
        Expression charge = Expression.of(microamps).times(millis);
        if (microamps > 0) {
            Expression before = Expression.of(tick.before(Register.IN_NANOCOULOMBS));
            sheet.step("in since power-up", before.plus(charge), Register.IN_NANOCOULOMBS);
        } else {
            Expression before = Expression.of(tick.before(Register.OUT_NANOCOULOMBS));
            sheet.step("out since power-up", before.minus(charge), Register.OUT_NANOCOULOMBS);
        }
    }

    private void stretch(long microamps, long millis) {
        Expression charge =
                sheet.step("uA times ms are nC", Expression.of(microamps).times(millis), NC);
        Expression sum = Expression.of(minute).plus(charge);
        long own = settings.get(Setting.OWN_SUPPLY);
        if (own > 0) {
            sum = sum.minus(Expression.of(own).times(millis));
        }
        String label = own > 0 ? "minute, less own supply" : "minute so far";
        minute = sheet.step(label, sum, NC).whole();
    }

    private void means(Minute ended, boolean last) {
        Expression mean = ended.mean();
        if (last) {
            sheet.step("mean current", mean, Register.MINUTE_MEAN_MICROAMPS);
            sheet.step(
                    "lowest voltage",
                    Expression.of(ended.lowestMicrovolts()),
                    Register.MINUTE_LOWEST_MICROVOLTS);
        } else {
            sheet.step("mean current", mean, "uA");
        }
        sheet.step("mean voltage", ended.meanMicrovolts(), "uV");
        if (ended.doubtful()) {
            sheet.words("note", "a sample was clipped or implausible: no rule takes the minute");
        }
    }

    /** What the efficiency lets through, the loss, the limits. */
    private void settle(long lost) {
        Expression stored = Expression.of(minute);
        if (minute > 0) {
            Expression f = sheet.step("efficiency f", efficiency(settings), "1/65536");
            Expression product = Expression.of(minute).times(f).plus(remainder);
            stored = sheet.step("stored of the minute", product.right(16), NC);
            remainder = sheet.step("remainder kept", product.mod(65_536), "nC/65536").whole();
        } else {
            sheet.step("a net discharge counts whole", stored, NC);
        }
        Expression target = sheet.step("count", Expression.of(settled).plus(stored), NC);
        if (lost > 0) {
            target =
                    sheet.step(
                            "less what was lost",
                            target.minus(Expression.of(lost).min(target.max(0))),
                            NC);
        }
        Expression limit = sheet.step("upper limit", limit(capacity, settled, proven), NC);
        // The count itself is a limit where it stands above 99 % without a proof.
        settled = sheet.step("held to 0 and limit", target.min(limit).max(0), NC).whole();
        Expression cut = target.minus(settled);
        if (cut.value().signum() > 0) {
            surplus = sheet.step("cut off above", Expression.of(surplus).plus(cut), NC).whole();
        } else if (cut.value().signum() < 0) {
            deficit = sheet.step("cut off below", Expression.of(deficit).minus(cut), NC).whole();
        }
        minute = 0;
    }

    static Expression efficiency(GaugeSettings settings) {
        return Expression.of(settings.get(Setting.COULOMBIC_EFFICIENCY))
                .times(65_536)
                .half(1_000_000);
    }

    static Expression limit(Expression capacity, long settled, boolean proven) {
        return proven ? capacity : capacity.over(100).times(99).max(settled);
    }

    /** At most one rule sets the count; where it goes is worked out with the rule. */
    private void correct() {
        if (tick.events().contains(Event.SET_TO_FULL)) {
            settled = sheet.step("set to full: the capacity", capacity, NC).whole();
        } else if (tick.events().contains(Event.SET_TO_EMPTY)) {
            settled =
                    sheet.step(
                                    "set to the empty state",
                                    capacity.over(1_000_000)
                                            .times(settings.get(Setting.EMPTY_STATE)),
                                    NC)
                            .whole();
        } else if (tick.events().contains(Event.CORRECTED_BY_REST)) {
            settled = tick.after(Register.SETTLED_NANOCOULOMBS);
            sheet.words("corrected by rest", "the target stands with the rest rule below");
        } else {
            return;
        }
        surplus = 0;
        deficit = 0;
    }

    private void tell() {
        sheet.step("settled count", Expression.of(settled), Register.SETTLED_NANOCOULOMBS);
        sheet.step(
                "efficiency's remainder",
                Expression.of(remainder),
                Register.EFFICIENCY_REMAINDER_Q16);
        sheet.step("surplus", Expression.of(surplus), Register.SURPLUS_NANOCOULOMBS);
        sheet.step("deficit", Expression.of(deficit), Register.DEFICIT_NANOCOULOMBS);
    }

    private void energy() {
        sheet.section("Energy", "arithmetic 8; G19");
        long microamps = tick.after(Register.CURRENT_MICROAMPS);
        Expression volts =
                sheet.step(
                        "millivolts, cut off",
                        Expression.of(tick.after(Register.VOLTAGE_MICROVOLTS)).over(1_000),
                        "mV");
        Expression energy =
                sheet.step(
                        "mV uA ms are pJ",
                        volts.times(microamps).times(tick.elapsedMillis()),
                        "pJ");
        boolean in = energy.value().signum() > 0;
        long carry = in ? tick.inCarryPicojoules() : tick.outCarryPicojoules();
        Expression grown = (in ? energy : energy.negative()).plus(carry).over(1_000_000);
        Register register = in ? Register.IN_MICROJOULES : Register.OUT_MICROJOULES;
        sheet.step(
                in ? "in since power-up" : "out since power-up",
                Expression.of(tick.before(register)).plus(grown),
                register);
    }

    /** The count of this instant and its part of the capacity (arithmetic.md 7, rule G5). */
    static void stateOfCharge(Sheet sheet, GaugeSettings settings, boolean proven) {
        sheet.section("State of charge", "arithmetic 5, 7; G4, G5");
        Expression capacity =
                sheet.step(
                        "capacity: 1 mAh is 3.6e9 nC",
                        new RuleLimits(settings).capacity(),
                        Register.CAPACITY_NANOCOULOMBS);
        long settled = sheet.register(Register.SETTLED_NANOCOULOMBS);
        long minute = sheet.register(Register.MINUTE_NANOCOULOMBS);
        Expression stored = Expression.of(minute);
        if (minute > 0) {
            Expression f = sheet.step("efficiency f", efficiency(settings), "1/65536");
            stored =
                    sheet.step(
                            "minute under way, stored",
                            Expression.of(minute)
                                    .times(f)
                                    .plus(sheet.register(Register.EFFICIENCY_REMAINDER_Q16))
                                    .right(16),
                            NC);
        }
        Expression limit =
                sheet.step(
                        proven ? "upper limit, full proven" : "upper limit, full not proven",
                        limit(capacity, settled, proven),
                        NC);
        Expression charge =
                sheet.step(
                        "count of this instant",
                        Expression.of(settled).plus(stored).min(limit).max(0),
                        Register.CHARGE_NANOCOULOMBS);
        if (sheet.register(Register.STATE_OF_CHARGE_PARTS_PER_MILLION) < 0) {
            sheet.words("state of charge", "not known: nothing was declared or proven yet (G14)");
            return;
        }
        sheet.step(
                "state of charge",
                charge.over(capacity.over(1_000_000)),
                Register.STATE_OF_CHARGE_PARTS_PER_MILLION);
    }
}
