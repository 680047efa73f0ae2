package org.gaugebench.sim.explain;

import java.math.BigInteger;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/** From counts to milliseconds, microamps and microvolts (arithmetic.md 1 to 3). */
final class SenseSteps {
    private static final BigInteger LARGEST = BigInteger.valueOf(Long.MAX_VALUE);
    private static final long LARGEST_MICROAMPS = (1L << 31) - 3;
    private static final int MOST_SHIFT = 62;

    private final Sheet sheet;
    private final Tick tick;
    private final GaugeSettings settings;

    SenseSteps(Sheet sheet, Tick tick) {
        this.sheet = sheet;
        this.tick = tick;
        settings = tick.settings();
    }

    private Expression of(Setting setting) {
        return Expression.of(settings.get(setting));
    }

    void write() {
        clock();
        boolean plausible = isPlausible();
        current(plausible);
        voltage(plausible);
        if (tick.millicelsius() == Sample.TEMPERATURE_ABSENT) {
            sheet.words("temperature", "absent; where one is needed, 25 °C or 20 °C stands in");
        } else if (plausible) {
            sheet.step(
                    "temperature",
                    Expression.of(tick.millicelsius()),
                    Register.TEMPERATURE_MILLICELSIUS);
        }
    }

    private void clock() {
        sheet.section("Clock", "arithmetic 1; G1, G6");
        long now = tick.clockMillis() & 0xFFFFFFFFL;
        sheet.step("raw clock", Expression.of(now), Register.CLOCK_MILLIS);
        if (tick.first()) {
            sheet.words(
                    "elapsed",
                    "0 ms: the first sample since power-up sets the clock; nobody knows what"
                            + " interval it stands for");
            return;
        }
        long before = tick.before(Register.CLOCK_MILLIS);
        Expression difference = Expression.of(now).minus(before);
        if (now < before && tick.elapsedMillis() >= 0) {
            difference = difference.plus(Expression.twoTo(32));
        }
        Expression elapsed = sheet.step("elapsed", difference, "ms");
        if (tick.isRepeated()) {
            sheet.words("note", "the same moment again: the sample is repeated and adds nothing");
        } else if (tick.isMissed()) {
            sheet.words(
                    "note",
                    (tick.elapsedMillis() < 0 ? "the clock ran backwards" : "samples are missing")
                            + ": not counted, the minute under way ends here and the band widens");
        }
        if (tick.elapsedMillis() >= 0) {
            sheet.step(
                    "uptime",
                    Expression.of(tick.before(Register.UPTIME_MILLIS)).plus(elapsed),
                    Register.UPTIME_MILLIS);
        }
    }

    /** Rule G7: garbage in one channel discards the whole sample. */
    private boolean isPlausible() {
        long rail = 1L << (settings.get(Setting.SHUNT_CONVERTER_BITS) - 1);
        long codes = 1L << settings.get(Setting.VOLTAGE_CONVERTER_BITS);
        return tick.shuntCounts() >= -rail
                && tick.shuntCounts() < rail
                && tick.voltageCounts() >= 0
                && tick.voltageCounts() < codes;
    }

    private void current(boolean plausible) {
        sheet.section("Current", "arithmetic 2; G7, G8");
        int bits = (int) settings.get(Setting.SHUNT_CONVERTER_BITS);
        if (!plausible) {
            sheet.words(
                    "counts",
                    "%d on the shunt and %d volts: no converter of %d and %d bits sends these;"
                                    .formatted(
                                            tick.shuntCounts(),
                                            tick.voltageCounts(),
                                            bits,
                                            settings.get(Setting.VOLTAGE_CONVERTER_BITS))
                            + " the last plausible sample stands in");
            sheet.step(
                    "current, as before",
                    Expression.of(tick.before(Register.CURRENT_MICROAMPS)),
                    Register.CURRENT_MICROAMPS);
            return;
        }
        Expression counts =
                sheet.step("raw counts", Expression.of(tick.shuntCounts()), Register.SHUNT_COUNTS);
        Expression offset =
                sheet.step(
                        "offset and zero adjustment",
                        of(Setting.SHUNT_OFFSET)
                                .plus(tick.after(Register.ZERO_ADJUSTMENT_COUNTS_Q8)),
                        "counts/256");
        Expression input = sheet.step("less offset", counts.times(256).minus(offset), "counts/256");
        long span = tick.after(Register.SPAN_ADJUSTMENT_PARTS_PER_MILLION);
        Expression numerator =
                sheet.step(
                        "n of the scale",
                        of(Setting.SHUNT_FULL_SCALE)
                                .times(of(Setting.SHUNT_RATED_CURRENT))
                                .times(Expression.of(1_000_000).plus(span)),
                        "uV mA ppm");
        Expression denominator =
                sheet.step(
                        "d of the scale",
                        of(Setting.SHUNT_RATED_DROP).times(Expression.twoTo(bits + 7)).times(1_000),
                        "uV counts/256");
        Expression limit =
                sheet.step(
                        "largest input L",
                        Expression.twoTo(bits + 7)
                                .plus(offset.abs())
                                .min(denominator.times(LARGEST_MICROAMPS).over(numerator)),
                        "counts/256");
        scaled(
                "current",
                input,
                new Scale(numerator, denominator, limit),
                Register.CURRENT_MICROAMPS);
        long rail = 1L << (bits - 1);
        boolean low = sheet.holds("at the lower rail", tick.shuntCounts(), "<=", -rail);
        boolean high = sheet.holds("at the upper rail", tick.shuntCounts(), ">=", rail - 1);
        boolean out = sheet.holds("as large as L", input.abs(), ">=", limit);
        if (low || high || out) {
            sheet.words("note", "clipped: counted as it is, and a fault is raised");
        }
    }

    private void voltage(boolean plausible) {
        sheet.section("Voltage", "arithmetic 3; G7, G8");
        if (!plausible) {
            sheet.step(
                    "voltage, as before",
                    Expression.of(tick.before(Register.VOLTAGE_MICROVOLTS)),
                    Register.VOLTAGE_MICROVOLTS);
            return;
        }
        int bits = (int) settings.get(Setting.VOLTAGE_CONVERTER_BITS);
        Expression counts =
                sheet.step(
                        "raw counts", Expression.of(tick.voltageCounts()), Register.VOLTAGE_COUNTS);
        Expression numerator =
                sheet.step("n of the scale", of(Setting.VOLTAGE_FULL_SCALE).times(1_000), "uV");
        Expression codes = sheet.step("d of the scale", Expression.twoTo(bits), "counts");
        Expression limit = sheet.step("largest input L", codes.minus(1), "counts");
        scaled("voltage", counts, new Scale(numerator, codes, limit), Register.VOLTAGE_MICROVOLTS);
    }

    /** The current of a reading without any adjustment, as the core would give it. */
    static long microamps(GaugeSettings settings, long counts) {
        int bits = (int) settings.get(Setting.SHUNT_CONVERTER_BITS);
        Expression offset = Expression.of(settings.get(Setting.SHUNT_OFFSET));
        Expression n =
                Expression.of(settings.get(Setting.SHUNT_FULL_SCALE))
                        .times(settings.get(Setting.SHUNT_RATED_CURRENT))
                        .times(1_000_000);
        Expression d =
                Expression.of(settings.get(Setting.SHUNT_RATED_DROP))
                        .times(Expression.twoTo(bits + 7))
                        .times(1_000);
        Expression limit =
                Expression.twoTo(bits + 7)
                        .plus(offset.abs())
                        .min(d.times(LARGEST_MICROAMPS).over(n));
        return new Scale(n, d, limit).apply(Expression.of(counts).times(256).minus(offset)).whole();
    }

    private record Scale(Expression n, Expression d, Expression limit) {
        /** Whether a shift leaves room for the largest product and its rounding. */
        boolean fits(int shift) {
            return room(shift).value().compareTo(LARGEST) <= 0;
        }

        Expression room(int shift) {
            Expression product = n.times(Expression.twoTo(shift)).over(d).plus(1).times(limit);
            return shift == 0 ? product : product.plus(Expression.twoTo(shift - 1));
        }

        Expression multiplier() {
            return n.times(Expression.twoTo(shift())).half(d);
        }

        Expression apply(Expression input) {
            return apply(input, Expression.of(multiplier().value()));
        }

        Expression apply(Expression input, Expression multiplier) {
            int shift = shift();
            Expression product = input.abs().min(limit).times(multiplier);
            Expression rounded =
                    (shift == 0 ? product : product.plus(Expression.twoTo(shift - 1))).right(shift);
            return input.value().signum() < 0 ? rounded.negative() : rounded;
        }

        int shift() {
            int shift = 0;
            while (shift < MOST_SHIFT && fits(shift + 1)) {
                shift++;
            }
            return shift;
        }
    }

    /** The factor n/d: the multiplier with the largest shift that fits, then the product. */
    private void scaled(String label, Expression input, Scale scale, Register register) {
        int shift = scale.shift();
        Expression most = Expression.of(LARGEST);
        sheet.holds("shift " + shift + " fits", scale.room(shift), "<=", most);
        if (shift < MOST_SHIFT) {
            sheet.holds("one more fits", scale.room(shift + 1), "<=", most);
        }
        Expression multiplier = sheet.step("multiplier m", scale.multiplier(), "");
        sheet.step(label, scale.apply(input, multiplier), register);
    }
}
