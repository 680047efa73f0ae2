package org.gaugebench.sim.explain;

import org.gaugebench.core.port.Register;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/** The error band from its sums (arithmetic.md 14 and "Band"). */
final class BandSteps {
    private static final long WHOLE = 1_000_000;
    private static final String PPM = "ppm";

    private final Sheet sheet;
    private final GaugeSettings settings;
    private final long part;
    private final long millis;

    BandSteps(Sheet sheet, GaugeSettings settings) {
        this.sheet = sheet;
        this.settings = settings;
        part = settings.get(Setting.CAPACITY) * 3_600;
        millis = sheet.register(Register.BAND_MILLIS);
    }

    private Expression parts(Expression nanocoulombs) {
        return nanocoulombs.up(part);
    }

    private Expression flow(Expression microamps) {
        return parts(microamps.times(millis)).min(WHOLE);
    }

    private static Expression ratio(long value, long partsPerMillion) {
        return Expression.of(value).times(partsPerMillion).up(WHOLE).min(WHOLE);
    }

    /** The sums as they stand, what was moved, each term, the root, the edges. */
    void write() {
        sheet.section("Error band", "arithmetic 14 and Band; B1 to B5");
        long residual = sheet.register(Register.BAND_RESIDUAL_PARTS_PER_MILLION);
        if (residual >= WHOLE) {
            sheet.words("residual", "nothing is known: everything from 0 to 100 % is possible");
            return;
        }
        sheet.step(
                "one ppm of the capacity",
                Expression.of(settings.get(Setting.CAPACITY)).times(3_600),
                "nC");
        sheet.step("time since the anchor", Expression.of(millis), Register.BAND_MILLIS);
        long in = sum("in since then", Register.BAND_IN_NANOCOULOMBS);
        long gross = sum("moved either way", Register.BAND_GROSS_NANOCOULOMBS);
        long change = change(in);
        Expression missing =
                sheet.step(
                        "missing to full",
                        Expression.of(WHOLE)
                                .minus(
                                        Expression.of(sheet.register(Register.CHARGE_NANOCOULOMBS))
                                                .over(part)),
                        PPM);
        Expression moved =
                sheet.step(
                        "how far from the anchor",
                        Expression.of(change).max(missing.min(gross)),
                        PPM);
        Expression squares = squares(residual, change, gross, in, moved.whole());
        Expression sum = sheet.step("sum of the squares", squares, "ppm^2");
        edges(sum);
    }

    private long sum(String label, Register register) {
        return sheet.step(label, parts(Expression.of(sheet.register(register))), PPM).whole();
    }

    private long change(long in) {
        Expression net = Expression.of(sheet.register(Register.BAND_NET_NANOCOULOMBS)).over(part);
        Expression loss =
                Expression.of(in)
                        .times(WHOLE - settings.get(Setting.COULOMBIC_EFFICIENCY))
                        .up(WHOLE);
        return sheet.step("how far the count moved", net.minus(loss).abs().plus(2), PPM).whole();
    }

    private Expression squares(long residual, long change, long gross, long in, long moved) {
        Expression offset = Expression.of(settings.get(Setting.OFFSET_BOUND));
        Expression warmMillis =
                Expression.of(sheet.register(Register.BAND_WARM_MILLIS_Q8)).right(8);
        Expression months = sheet.step("months, in millionths", warmMillis.up(2_592), "1e-6");
        Expression loss = ratio(months.whole(), settings.get(Setting.SELF_DISCHARGE_BOUND));
        Expression[] terms = {
            sheet.step("anchor", Expression.of(residual), PPM),
            sheet.step("offset", flow(offset), PPM),
            sheet.step("half a converter step", flow(Expression.of(halfStep())), PPM),
            sheet.step("gain", ratio(change, settings.get(Setting.GAIN_BOUND)), PPM),
            sheet.step("asymmetry", ratio(gross, settings.get(Setting.ASYMMETRY_BOUND)), PPM),
            sheet.step("efficiency", ratio(in, settings.get(Setting.EFFICIENCY_BOUND)), PPM),
            sheet.step("self-discharge", loss, PPM),
            sheet.step("capacity", ratio(moved, settings.get(Setting.CAPACITY_BOUND)), PPM)
        };
        Expression sum = terms[0].times(terms[0]);
        for (int i = 1; i < terms.length; i++) {
            sum = sum.plus(terms[i].times(terms[i]));
        }
        return sum;
    }

    /** Half of the current of one code, up; the offset of the settings is in both readings. */
    private long halfStep() {
        long step = SenseSteps.microamps(settings, 1) - SenseSteps.microamps(settings, 0);
        return sheet.step("half of one count", Expression.of(step).plus(1).over(2), "uA").whole();
    }

    private void edges(Expression sum) {
        Expression gap = Expression.of(sheet.register(Register.BAND_GAP_NANOCOULOMBS));
        Expression root =
                sheet.step("coverage 2 of rectangles", sum.root().times(1_155), "ppm/1000");
        Expression both =
                sheet.step(
                        "both sides, up", root.up(1_000).plus(1).plus(parts(gap).min(WHOLE)), PPM);
        Expression low =
                sheet.step(
                        "low side, past the shunt too",
                        both.plus(flow(Expression.of(settings.get(Setting.UNMEASURED_BOUND))))
                                .min(WHOLE),
                        PPM);
        long charge = sheet.register(Register.CHARGE_NANOCOULOMBS);
        Expression shown = sheet.step("the count", Expression.of(charge).over(part), PPM);
        edge("lower edge", shown.minus(low).max(0), Register.LOWER_EDGE_PARTS_PER_MILLION);
        edge(
                "upper edge",
                shown.plus(both.min(WHOLE)).min(WHOLE),
                Register.UPPER_EDGE_PARTS_PER_MILLION);
    }

    /** A fact of the rest rule may leave less; its own sums stand in no register. */
    private void edge(String label, Expression edge, Register register) {
        long held = sheet.register(register);
        boolean lower = register == Register.LOWER_EDGE_PARTS_PER_MILLION;
        boolean clipped = lower ? held > edge.value().longValue() : held < edge.value().longValue();
        if (clipped) {
            sheet.step(label + " of the sums", edge, PPM);
            sheet.words(
                    label,
                    held
                            + " ppm: a rested voltage leaves less (R6, B5); that fact has sums of"
                            + " its own, which no register shows");
        } else {
            sheet.step(label, edge, register);
        }
    }
}
