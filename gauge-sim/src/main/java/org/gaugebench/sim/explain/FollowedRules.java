package org.gaugebench.sim.explain;

import java.util.Set;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.RuleReason;
import org.gaugebench.core.port.RuleState;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * What the rules remember and no register shows, followed beside the core minute by minute and
 * written from rules.md: flow and steps (F7, F8), plateau (F10), float (F11), quiet time (F14),
 * light minutes and arming of the empty rule (E3, E6), time without charge (R3).
 */
final class FollowedRules {
    static final int AFTER_CHARGE_MINUTES = 720;
    private static final int FORGET_MINUTES = 15;
    private static final int PAUSE_MINUTES = 2;
    private static final int LIGHT_MINUTES = 5;

    private final GaugeSettings settings;
    private final RuleLimits limits;

    // Flow.
    boolean flowSeen;
    boolean stopped;
    int idleMinutes;
    private long meanBefore;
    private long meanBeforeThat;

    // Holds.
    int floatHeld;
    private int floatOutside;
    int plateauMinutes;
    private long plateauLowest;
    private long plateauHighest;
    int quietMinutes;

    // Empty and rest.
    boolean emptyArmed = true;
    long chargedNanocoulombs;
    int lightMinutes;
    int unchargedMinutes;

    FollowedRules(GaugeSettings settings) {
        this.settings = settings;
        limits = new RuleLimits(settings);
        beginQuietTime();
    }

    /** The rules under other settings: flow and the empty rule's arming carry over (F16). */
    FollowedRules under(GaugeSettings other) {
        FollowedRules next = new FollowedRules(other);
        next.flowSeen = flowSeen;
        next.stopped = stopped;
        next.idleMinutes = idleMinutes;
        next.meanBefore = meanBefore;
        next.meanBeforeThat = meanBeforeThat;
        next.emptyArmed = emptyArmed;
        return next;
    }

    void beginQuietTime() {
        quietMinutes = (int) settings.get(Setting.QUIET_TIME);
    }

    void samplesMissing() {
        forgetFlow();
        lightMinutes = 0;
        unchargedMinutes = 0;
        floatHeld = 0;
        floatOutside = 0;
        plateauMinutes = 0;
    }

    void newBattery() {
        forgetFlow();
        stopped = false;
        emptyArmed = true;
        beginQuietTime();
    }

    private void forgetFlow() {
        flowSeen = false;
        meanBefore = 0;
        meanBeforeThat = 0;
    }

    /** A whole minute, and what the core's registers and events say of it afterwards. */
    void minute(Minute minute, Seen after, Set<Event> events) {
        long compensation = limits.compensation(minute.millicelsius()).whole();
        long mean = minute.mean().whole();
        boolean quiet = quietMinutes > 0;
        quietMinutes = Math.max(0, quietMinutes - 1);
        if (!limits.fullIsOff()) {
            flow(minute, mean, compensation);
            RuleState state = RuleState.values()[(int) after.get(Register.RULE_STATE)];
            RuleReason reason = RuleReason.values()[(int) after.get(Register.RULE_REASON)];
            if (quiet || letGo(state, reason)) {
                floatHeld = 0;
                floatOutside = 0;
                plateauMinutes = 0;
            } else {
                floating(minute, mean, compensation);
                plateau(mean, after, reason);
            }
        }
        empty(minute, mean, events);
        unchargedMinutes =
                mean > limits.restCurrent().whole()
                        ? 0
                        : Math.min(unchargedMinutes + 1, AFTER_CHARGE_MINUTES);
    }

    private static boolean letGo(RuleState state, RuleReason reason) {
        return state == RuleState.NOT_ARMED || reason == RuleReason.ARMED_BY_DISCHARGE;
    }

    private void flow(Minute minute, long mean, long compensation) {
        if (minute.doubtful()) {
            idle();
            return;
        }
        long some = limits.someFlow().whole();
        long strong = 2 * limits.taper().whole();
        if (mean > some) {
            flowSeen = true;
            stopped = false;
        } else if (mean < limits.noFlow().whole()
                && Math.max(meanBefore, meanBeforeThat) > strong) {
            flowSeen = false;
            stopped = true;
        }
        meanBeforeThat = meanBefore;
        meanBefore = mean;
        if (mean > some || minute.lowestMicrovolts() >= limits.charging(compensation).whole()) {
            idleMinutes = 0;
        } else {
            idle();
        }
    }

    private void idle() {
        idleMinutes = Math.min(idleMinutes + 1, FORGET_MINUTES);
        if (idleMinutes == FORGET_MINUTES) {
            stopped = false;
            forgetFlow();
        }
    }

    private void floating(Minute minute, long mean, long compensation) {
        if (isFloating(minute, mean, compensation)) {
            floatHeld++;
            floatOutside = 0;
            return;
        }
        floatOutside++;
        if (floatOutside >= FORGET_MINUTES) {
            floatHeld = 0;
        } else if (floatOutside > PAUSE_MINUTES) {
            floatHeld = Math.max(0, floatHeld - 1);
        }
    }

    private boolean isFloating(Minute minute, long mean, long compensation) {
        return !limits.floatIsOff()
                && !minute.doubtful()
                && flowSeen
                && mean <= limits.floatCurrent().whole()
                && mean >= -limits.noFlow().whole()
                && minute.lowestMicrovolts() >= limits.floatThreshold(compensation).whole();
    }

    /** Minutes in which the current stood still within a twentieth; the voltage has its own. */
    private void plateau(long mean, Seen after, RuleReason reason) {
        boolean atLimit =
                after.get(Register.SETTLED_NANOCOULOMBS) >= limits.capacity().whole() / 100 * 99;
        boolean above =
                reason == RuleReason.CURRENT_ABOVE_TAPER || reason == RuleReason.PLATEAU_RUNNING;
        if (settings.get(Setting.PLATEAU_HOLD) == 0
                || !atLimit
                || !above
                || mean >= 4 * limits.taper().whole()) {
            plateauMinutes = 0;
            return;
        }
        long lowest = Math.min(plateauLowest, mean);
        long highest = Math.max(plateauHighest, mean);
        if (plateauMinutes == 0 || highest - lowest > mean * 5 / 100) {
            plateauMinutes = 1;
            plateauLowest = mean;
            plateauHighest = mean;
        } else {
            plateauMinutes++;
            plateauLowest = lowest;
            plateauHighest = highest;
        }
    }

    private void empty(Minute minute, long mean, Set<Event> events) {
        if (settings.get(Setting.EMPTY_VOLTAGE) == 0) {
            return;
        }
        boolean heavy = -mean > limits.heavyCurrent().whole();
        lightMinutes = heavy ? 0 : Math.min(lightMinutes + 1, LIGHT_MINUTES);
        if (events.contains(Event.SET_TO_EMPTY) || events.contains(Event.EARLY_EMPTY)) {
            emptyArmed = false;
            chargedNanocoulombs = 0;
        } else if (!emptyArmed) {
            long rearm = limits.rearm().whole();
            long charged = chargedNanocoulombs + minute.nanocoulombs();
            chargedNanocoulombs = Math.min(Math.max(charged, 0), rearm);
            emptyArmed = chargedNanocoulombs >= rearm;
        }
    }
}
