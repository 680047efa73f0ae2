package org.gaugebench.sim.explain;

import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.RuleReason;
import org.gaugebench.core.port.RuleState;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.jspecify.annotations.Nullable;

/** What full, empty and rest rule say of the last whole minute (arithmetic.md 10, 15, 18). */
final class RuleSteps {
    private static final long WARM_MILLICELSIUS = 5_000;
    private static final long PLAUSIBLE_FULL = 950_000;
    private static final long PLAUSIBLE_EMPTY = 150_000;
    private static final int LIGHT_MINUTES = 5;
    private static final int HOLD_MINUTES_TO_FORGET = 15;

    private final Sheet sheet;
    private final GaugeSettings settings;
    private final FollowedRules rules;
    private final RuleLimits limits;
    private final Minute minute;

    /** The registers before the tick that ended the minute, where this is that tick. */
    private final @Nullable Seen before;

    RuleSteps(Sheet sheet, Followed followed, Minute minute, @Nullable Seen before) {
        this.sheet = sheet;
        this.settings = followed.settings();
        this.rules = followed.rules();
        this.minute = minute;
        this.before = before;
        limits = new RuleLimits(settings);
    }

    void write() {
        full();
        empty();
        rest();
    }

    private long setting(Setting setting) {
        return settings.get(setting);
    }

    private void full() {
        sheet.section("Full-charge rule", "arithmetic 10; F1 to F17");
        if (limits.fullIsOff()) {
            sheet.words("state", "switched off: absorption is 0 (F1)");
            return;
        }
        Expression warm =
                sheet.step(
                        "compensation for temperature",
                        limits.compensation(minute.millicelsius()),
                        "uV");
        long compensation = warm.whole();
        Expression threshold =
                sheet.step(
                        "threshold",
                        limits.threshold(compensation),
                        Register.RULE_THRESHOLD_MICROVOLTS);
        Expression taper = sheet.step("taper", limits.taper(), "uA");
        Expression mean = Expression.of(minute.mean().value());
        Expression lowest = Expression.of(minute.lowestMicrovolts());
        sheet.holds("lowest voltage reaches it", lowest, ">=", threshold);
        sheet.holds("mean current in the taper", mean, "<=", taper);
        sheet.holds("and not out of it", mean, ">=", taper.negative().over(4));
        flow(mean, compensation);
        holds(mean, lowest, compensation);
        RuleState state = RuleState.values()[(int) sheet.register(Register.RULE_STATE)];
        if (state == RuleState.NOT_ARMED) {
            rearm();
        } else {
            sheet.holds(
                    "the band allows full (F9)",
                    sheet.register(Register.UPPER_EDGE_PARTS_PER_MILLION),
                    ">=",
                    PLAUSIBLE_FULL);
        }
        RuleReason reason = RuleReason.values()[(int) sheet.register(Register.RULE_REASON)];
        sheet.words("state", words(state) + ", because: " + reason.sentence());
    }

    private static String words(RuleState state) {
        return switch (state) {
            case NOT_ARMED -> "not armed";
            case WAITING -> "waiting";
            case HOLDING -> "holding";
            case PAUSED -> "paused";
        };
    }

    private void flow(Expression mean, long compensation) {
        sheet.holds("flow in this minute (F8)", mean, ">", limits.someFlow());
        sheet.holds(
                "a charger's voltage (F8)",
                Expression.of(minute.lowestMicrovolts()),
                ">=",
                limits.charging(compensation));
        sheet.words(
                "flow watched",
                (rules.flowSeen ? "charge has flowed in" : "no flow seen")
                        + (rules.stopped ? ", then it stopped in a step (F7)" : "")
                        + "; idle for %d of %d min"
                                .formatted(rules.idleMinutes, HOLD_MINUTES_TO_FORGET));
    }

    private void holds(Expression mean, Expression lowest, long compensation) {
        Seen earlier = before;
        sheet.words(
                "taper held",
                (earlier == null
                                ? ""
                                : earlier.get(Register.RULE_HELD_MINUTES)
                                        + " min before this minute, now ")
                        + sheet.register(Register.RULE_HELD_MINUTES)
                        + " of %d min; four times that where the band contradicts"
                                .formatted(setting(Setting.HOLD)));
        sheet.words(
                "plateau held",
                setting(Setting.PLATEAU_HOLD) == 0
                        ? "never: its hold is 0 (F10)"
                        : "%d of %d min"
                                .formatted(rules.plateauMinutes, setting(Setting.PLATEAU_HOLD)));
        if (limits.floatIsOff()) {
            sheet.words("float held", "never: the float voltage is 0 (F11)");
        } else {
            sheet.holds(
                    "lowest voltage at float", lowest, ">=", limits.floatThreshold(compensation));
            sheet.holds("current small enough", mean, "<=", limits.floatCurrent());
            sheet.holds("and not out of it", mean, ">=", limits.noFlow().negative());
            sheet.words(
                    "float held",
                    "%d of %d min".formatted(rules.floatHeld, setting(Setting.FLOAT_HOLD)));
        }
        quiet();
    }

    private void quiet() {
        sheet.words(
                "quiet time left",
                "%d of %d min".formatted(rules.quietMinutes, setting(Setting.QUIET_TIME)));
    }

    private void rearm() {
        Expression rearm = sheet.step("looks again after", limits.rearm(), "nC");
        Seen earlier = before;
        boolean stood =
                earlier != null
                        && earlier.get(Register.RULE_STATE) == RuleState.NOT_ARMED.ordinal()
                        && earlier.get(Register.FULL_COUNT) == sheet.register(Register.FULL_COUNT);
        Register out = Register.RULE_DISCHARGED_NANOCOULOMBS;
        Expression sum =
                stood && earlier != null
                        ? Expression.of(earlier.get(out))
                                .minus(minute.nanocoulombs())
                                .max(0)
                                .min(rearm)
                        : Expression.of(sheet.register(out));
        sheet.step("discharged since full", sum, out);
    }

    private void empty() {
        sheet.section("Empty rule", "arithmetic 18; E1 to E7");
        if (setting(Setting.EMPTY_VOLTAGE) == 0) {
            sheet.words("state", "switched off: the empty voltage is 0 (E1)");
            return;
        }
        Expression small = sheet.step("small current", limits.emptyCurrent(), "uA");
        Expression heavy = sheet.step("heavy current", limits.heavyCurrent(), "uA");
        Expression out = sheet.step("mean current out", minute.mean().negative(), "uA");
        sheet.holds(
                "highest voltage at empty",
                Expression.of(minute.highestMicrovolts()),
                "<=",
                Expression.of(setting(Setting.EMPTY_VOLTAGE)).times(1_000));
        sheet.holds("current flows out", out, ">", Expression.of(0));
        sheet.holds("and is small", out, "<=", small);
        sheet.holds("no heavy load", out, "<=", heavy);
        sheet.words("light minutes", "%d of %d (E3)".formatted(rules.lightMinutes, LIGHT_MINUTES));
        if (minute.millicelsius() != Sample.TEMPERATURE_ABSENT) {
            sheet.holds("warm enough", minute.millicelsius(), ">", WARM_MILLICELSIUS);
        }
        sheet.holds(
                "the band allows empty (E4)",
                sheet.register(Register.LOWER_EDGE_PARTS_PER_MILLION),
                "<=",
                PLAUSIBLE_EMPTY);
        if (!rules.emptyArmed) {
            Expression rearm = sheet.step("looks again after", limits.rearm(), "nC");
            sheet.holds(
                    "charged since the end", Expression.of(rules.chargedNanocoulombs), ">=", rearm);
        }
        quiet();
        sheet.words(
                "state",
                (rules.emptyArmed ? "armed" : "not armed")
                        + "; %d times empty since power-up"
                                .formatted(sheet.register(Register.EMPTY_COUNT)));
    }

    private void rest() {
        sheet.section("Rest rule", "arithmetic 15; R1 to R8");
        if (setting(Setting.REST_TIME) == 0) {
            sheet.words("state", "switched off: the rest time is 0 (R1)");
            return;
        }
        Expression most = sheet.step("rest is within", limits.restCurrent(), "uA");
        boolean below =
                sheet.holds(
                        "highest current", Expression.of(minute.highestMicroamps()), "<=", most);
        boolean above =
                sheet.holds(
                        "lowest current",
                        Expression.of(minute.lowestMicroamps()),
                        ">=",
                        most.negative());
        boolean still = below && above && !minute.doubtful() && minute.lowestMicrovolts() > 0;
        rested(still);
        sheet.words(
                "without charge",
                "%d of %d min (R3)"
                        .formatted(rules.unchargedMinutes, FollowedRules.AFTER_CHARGE_MINUTES));
        sheet.holds(
                "a rested battery's voltage",
                minute.meanMicrovolts(),
                "<=",
                Expression.of(setting(Setting.REST_VOLTAGE_100))
                        .plus(setting(Setting.REST_VOLTAGE_BOUND))
                        .times(1_000));
        if (minute.millicelsius() != Sample.TEMPERATURE_ABSENT) {
            sheet.holds("warm enough", minute.millicelsius(), ">=", WARM_MILLICELSIUS);
        }
        quiet();
    }

    private void rested(boolean still) {
        Register register = Register.RESTED_MINUTES;
        Seen earlier = before;
        Expression minutes = Expression.of(sheet.register(register));
        if (!still) {
            minutes = Expression.of(0);
        } else if (earlier != null) {
            minutes =
                    Expression.of(earlier.get(register))
                            .plus(1)
                            .min(Expression.of(setting(Setting.REST_TIME) * 60));
        }
        sheet.step("rested", minutes, register);
    }
}
