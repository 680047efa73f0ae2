package org.gaugebench.core;

import org.gaugebench.core.charge.EnergyCounter;
import org.gaugebench.core.charge.StateOfCharge;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.EventSink;
import org.gaugebench.core.port.Fault;
import org.gaugebench.core.port.RuleReason;
import org.gaugebench.core.port.Trust;
import org.gaugebench.core.port.TrustReason;
import org.gaugebench.core.rules.RuleOutcome;
import org.gaugebench.core.settings.Setting;

/**
 * The one place in which the count is corrected: acts on a rule's word, or on a command, and
 * announces it. A reading that jumps without an event is a bug.
 */
final class Corrections {
    private static final int FULL_PARTS_PER_MILLION = 1_000_000;

    /** The count has left a limit when it is a two-hundredth of the capacity away. */
    private static final int LEAVE_DIVISOR = 200;

    private static final int SENSOR_BITS =
            Fault.POLARITY_REVERSED.bit()
                    | Fault.CURRENT_NOT_SEEN.bit()
                    | Fault.IN_OUT_RATIO_OFF.bit()
                    | Fault.ADJUSTMENT_LOST.bit();

    // The outside.
    private final EventSink events;

    // State.
    private Trust trust = Trust.UNKNOWN;
    private boolean restsOnRecord;
    private boolean heldAtLimit;
    private boolean heldAtEmpty;

    Corrections(EventSink events) {
        this.events = events;
    }

    Trust trust() {
        return trust;
    }

    /** The strongest reason to believe the figure or not. */
    TrustReason trustReason(Stages s, int faultBits) {
        if (trust == Trust.UNKNOWN) {
            return TrustReason.NOTHING_KNOWN;
        }
        if ((faultBits & SENSOR_BITS) != 0) {
            return TrustReason.SENSOR_SUSPECT;
        }
        if (s.band.isUnknown()) {
            return TrustReason.BAND_UNKNOWN;
        }
        if ((faultBits & Fault.SCALE_SUSPECT.bit()) != 0) {
            return TrustReason.SCALE_SUSPECT;
        }
        if ((faultBits & Fault.FULL_OVERDUE.bit()) != 0) {
            return TrustReason.FULL_OVERDUE;
        }
        return trust == Trust.DECLARED ? TrustReason.DECLARED_ONLY : TrustReason.NO_OBJECTION;
    }

    boolean isKnown() {
        return trust != Trust.UNKNOWN;
    }

    void resume(Trust saved) {
        trust = saved;
        restsOnRecord = true;
    }

    /**
     * Whether this is the first save since a record was restored, with nothing proven or declared
     * between. A memory that does not write now may not have written before power went either: the
     * record may be older than a save step (M6).
     */
    boolean firstSaveOnRecord() {
        boolean first = restsOnRecord;
        restsOnRecord = false;
        return first;
    }

    /** At most one rule sets the count in one minute: full, else empty, else rest. */
    boolean decide(Stages s, int temperatureMillicelsius, long uptimeMillis) {
        int shown = s.stateOfChargePartsPerMillion();
        RuleOutcome full =
                s.fullRule.judge(
                        s.minute,
                        temperatureMillicelsius,
                        s.band.upperEdgePartsPerMillion(),
                        s.charge.isAtUpperLimit());
        boolean set = apply(full, s, uptimeMillis);
        RuleOutcome empty =
                s.emptyRule.judge(
                        s.minute,
                        temperatureMillicelsius,
                        shown,
                        s.band.lowerEdgePartsPerMillion());
        set = set || apply(empty, s, uptimeMillis);
        RuleOutcome rest =
                s.restRule.judge(
                        s.minute,
                        temperatureMillicelsius,
                        shown,
                        s.band.halfWidthPartsPerMillion());
        return set || apply(rest, s, uptimeMillis);
    }

    /** Acts on a rule's word and brings the band after it; returns whether the count was set. */
    private boolean apply(RuleOutcome outcome, Stages s, long uptimeMillis) {
        if (outcome == RuleOutcome.NONE) {
            return false;
        }
        boolean set = act(outcome, s, uptimeMillis);
        s.updateBand();
        return set;
    }

    private boolean act(RuleOutcome outcome, Stages s, long uptimeMillis) {
        return switch (outcome) {
            case NONE -> false;
            case SET_TO_FULL -> setToFull(s, uptimeMillis);
            case ARMED -> {
                s.charge.withdrawProof();
                events.onEvent(
                        Event.FULL_RULE_ARMED, uptimeMillis, s.fullRule.dischargedNanocoulombs());
                yield false;
            }
            case SET_TO_EMPTY -> setToEmpty(s, uptimeMillis);
            case EARLY_EMPTY -> {
                events.onEvent(Event.EARLY_EMPTY, uptimeMillis, s.stateOfChargePartsPerMillion());
                s.diagnosis.earlyEmpty();
                offerCapacity(s, uptimeMillis);
                yield false;
            }
            case CORRECTED_BY_REST -> correctByRest(s, uptimeMillis);
            case BAND_CLIPPED -> {
                s.band.clip(
                        s.stateOfChargePartsPerMillion(),
                        s.restRule.lowestPartsPerMillion(),
                        s.restRule.highestPartsPerMillion());
                yield false;
            }
        };
    }

    private boolean setToFull(Stages s, long uptimeMillis) {
        boolean evidence = s.fullRule.isEvidence();
        long step = s.charge.setTo(s.charge.capacityNanocoulombs(), true);
        s.band.anchor(s.fullRule.residualPartsPerMillion());
        restsOnRecord = false;
        prove(Event.SET_TO_FULL, step, uptimeMillis);
        s.diagnosis.full(s.fullRule.reason() == RuleReason.PROVEN_LATE);
        s.capacity.full(evidence);
        if (s.efficiency.full(evidence)) {
            events.onEvent(
                    Event.EFFICIENCY_MEASURED,
                    uptimeMillis,
                    s.efficiency.measuredPartsPerMillion());
        }
        return true;
    }

    /** A count that nobody was shown has no step: the event's figure is then 0. */
    private void prove(Event event, long step, long uptimeMillis) {
        long shownStep = isKnown() ? step : 0;
        trust = Trust.PROVEN;
        events.onEvent(event, uptimeMillis, shownStep);
    }

    private boolean setToEmpty(Stages s, long uptimeMillis) {
        long target =
                StateOfCharge.nanocoulombs(
                        s.settings.get(Setting.EMPTY_STATE), s.charge.capacityNanocoulombs());
        long step = s.charge.setTo(target, false);
        s.band.anchor(s.settings.get(Setting.EMPTY_RESIDUAL));
        restsOnRecord = false;
        prove(Event.SET_TO_EMPTY, step, uptimeMillis);
        offerCapacity(s, uptimeMillis);
        return true;
    }

    private void offerCapacity(Stages s, long uptimeMillis) {
        if (s.capacity.empty()) {
            events.onEvent(
                    Event.CAPACITY_MEASURED, uptimeMillis, s.capacity.measuredMilliampHours());
        }
    }

    private boolean correctByRest(Stages s, long uptimeMillis) {
        long target =
                StateOfCharge.nanocoulombs(
                        s.restRule.targetPartsPerMillion(), s.charge.capacityNanocoulombs());
        long step = s.charge.setTo(target, s.charge.isFullProven());
        s.band.anchor(s.restRule.residualPartsPerMillion());
        prove(Event.CORRECTED_BY_REST, step, uptimeMillis);
        s.capacity.spoil();
        s.efficiency.spoil();
        return true;
    }

    /** Somebody declares a state of charge, 0 to 1,000,000 ppm. */
    void declare(long partsPerMillion, Stages s, long uptimeMillis) {
        boolean full = partsPerMillion == FULL_PARTS_PER_MILLION;
        s.charge.setTo(
                StateOfCharge.nanocoulombs(partsPerMillion, s.charge.capacityNanocoulombs()), full);
        if (full) {
            s.fullRule.declareFull();
            s.diagnosis.full(false);
        } else {
            s.fullRule.declareNotFull();
        }
        s.band.anchor(s.settings.get(Setting.DECLARED_RESIDUAL));
        restsOnRecord = false;
        s.capacity.full(false);
        s.efficiency.spoil();
        trust = Trust.DECLARED;
        // What was held before the declaration is not held after it: the next time is news.
        heldAtLimit = false;
        heldAtEmpty = false;
        events.onEvent(Event.DECLARED, uptimeMillis, partsPerMillion);
    }

    /** Another battery: nothing is known of it, and what was measured belongs to the old one. */
    void newBattery(Stages s, EnergyCounter energy, long uptimeMillis) {
        long step = s.charge.setTo(0, false);
        s.charge.resumeSums(0, 0, 0);
        s.markAccounted();
        energy.resume(0, 0);
        s.fullRule.newBattery();
        s.emptyRule.resume(true, -1);
        s.capacity.forget();
        s.efficiency.forget();
        s.diagnosis.newBattery();
        s.band.forget();
        restsOnRecord = false;
        long shownStep = isKnown() ? step : 0;
        trust = Trust.UNKNOWN;
        heldAtLimit = false;
        heldAtEmpty = false;
        events.onEvent(Event.NEW_BATTERY, uptimeMillis, shownStep);
    }

    /**
     * Announces that a limit holds the count, once until the count has left it by half a percent: a
     * charger that holds a full battery crosses the limit many times an hour.
     */
    void announceLimits(Stages s, long uptimeMillis) {
        long settled = s.charge.settledNanocoulombs();
        long leaveNanocoulombs = s.charge.capacityNanocoulombs() / LEAVE_DIVISOR;
        if (s.charge.surplusNanocoulombs() > 0 && s.charge.isAtUpperLimit()) {
            if (!heldAtLimit && isKnown()) {
                events.onEvent(Event.HELD_AT_LIMIT, uptimeMillis, settled);
            }
            heldAtLimit = true;
        } else if (settled < s.charge.upperLimitNanocoulombs() - leaveNanocoulombs) {
            heldAtLimit = false;
        }
        if (s.charge.deficitNanocoulombs() > 0 && settled == 0) {
            if (!heldAtEmpty && isKnown()) {
                events.onEvent(Event.HELD_AT_EMPTY, uptimeMillis, s.charge.deficitNanocoulombs());
            }
            heldAtEmpty = true;
        } else if (settled > leaveNanocoulombs) {
            heldAtEmpty = false;
        }
    }
}
