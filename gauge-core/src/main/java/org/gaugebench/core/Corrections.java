package org.gaugebench.core;

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

    private static final int SENSOR_BITS =
            Fault.POLARITY_REVERSED.bit()
                    | Fault.CURRENT_NOT_SEEN.bit()
                    | Fault.IN_OUT_RATIO_OFF.bit()
                    | Fault.ADJUSTMENT_LOST.bit();

    // The outside.
    private final EventSink events;

    // State.
    private Trust trust = Trust.UNKNOWN;
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
    }

    /** Acts on a rule's word; returns whether the count was set. */
    boolean apply(RuleOutcome outcome, Stages s, long uptimeMillis) {
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
        trust = Trust.PROVEN;
        events.onEvent(Event.SET_TO_FULL, uptimeMillis, step);
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

    private boolean setToEmpty(Stages s, long uptimeMillis) {
        long target =
                StateOfCharge.nanocoulombs(
                        s.settings.get(Setting.EMPTY_STATE), s.charge.capacityNanocoulombs());
        long step = s.charge.setTo(target, false);
        s.band.anchor(s.settings.get(Setting.EMPTY_RESIDUAL));
        trust = Trust.PROVEN;
        events.onEvent(Event.SET_TO_EMPTY, uptimeMillis, step);
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
        trust = Trust.PROVEN;
        events.onEvent(Event.CORRECTED_BY_REST, uptimeMillis, step);
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
        s.capacity.full(false);
        s.efficiency.spoil();
        trust = Trust.DECLARED;
        // What was held before the declaration is not held after it: the next time is news.
        heldAtLimit = false;
        heldAtEmpty = false;
        events.onEvent(Event.DECLARED, uptimeMillis, partsPerMillion);
    }

    /** Another battery: nothing is known of it, and what was measured belongs to the old one. */
    void newBattery(Stages s, long uptimeMillis) {
        long step = s.charge.setTo(0, false);
        s.fullRule.declareNotFull();
        s.emptyRule.resume(true, -1);
        s.capacity.forget();
        s.efficiency.forget();
        s.diagnosis.newBattery();
        s.band.forget();
        trust = Trust.UNKNOWN;
        events.onEvent(Event.NEW_BATTERY, uptimeMillis, step);
    }

    /** Announces that a limit holds the count, once each time. */
    void announceLimits(Stages s, long uptimeMillis) {
        boolean atLimit = s.charge.surplusNanocoulombs() > 0 && s.charge.isAtUpperLimit();
        if (atLimit && !heldAtLimit && isKnown()) {
            events.onEvent(Event.HELD_AT_LIMIT, uptimeMillis, s.charge.settledNanocoulombs());
        }
        heldAtLimit = atLimit;
        boolean atEmpty = s.charge.deficitNanocoulombs() > 0 && s.charge.settledNanocoulombs() == 0;
        if (atEmpty && !heldAtEmpty && isKnown()) {
            events.onEvent(Event.HELD_AT_EMPTY, uptimeMillis, s.charge.deficitNanocoulombs());
        }
        heldAtEmpty = atEmpty;
    }
}
