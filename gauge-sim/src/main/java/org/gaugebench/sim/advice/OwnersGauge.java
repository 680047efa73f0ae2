package org.gaugebench.sim.advice;

import org.jspecify.annotations.Nullable;

/**
 * A gauge by what it does, as its owner can find out without opening it. Null and {@code NOT_KNOWN}
 * stand for "not known": then it counts only and is set by hand, and the answer is wider.
 *
 * @param setsFull on what it sets itself to 100 %
 * @param pastFull what it does past 100 %
 * @param afterOff what it shows after its supply wire was off for a minute
 * @param smallestAmps smallest current that it shows; what is smaller it is taken not to count
 * @param smallestAmpHours smallest step of the amp-hours that it shows
 * @param longestHours longest time that it shows
 * @param ownAmps current that it draws itself, past the shunt
 * @param zeroAmps largest current that it may show or count when none flows, either way
 * @param pastShuntAmps mean current of what does not go through the shunt
 * @param efficiencySet part of the charge put in that it counts, above 0 to 1
 */
public record OwnersGauge(
        SetsFull setsFull,
        PastFull pastFull,
        AfterOff afterOff,
        @Nullable Double smallestAmps,
        @Nullable Double smallestAmpHours,
        @Nullable Double longestHours,
        @Nullable Double ownAmps,
        @Nullable Double zeroAmps,
        double pastShuntAmps,
        @Nullable Double efficiencySet) {

    /** A gauge whose smallest step of amp-hours is not known. */
    public OwnersGauge(
            SetsFull setsFull,
            PastFull pastFull,
            AfterOff afterOff,
            @Nullable Double smallestAmps,
            @Nullable Double longestHours,
            @Nullable Double ownAmps,
            @Nullable Double zeroAmps,
            double pastShuntAmps,
            @Nullable Double efficiencySet) {
        this(
                setsFull,
                pastFull,
                afterOff,
                smallestAmps,
                null,
                longestHours,
                ownAmps,
                zeroAmps,
                pastShuntAmps,
                efficiencySet);
    }

    /** On what a gauge sets itself to 100 %. */
    public enum SetsFull {
        /** It never does, and nobody does it by hand. */
        NEVER,
        /** It never does by itself; its owner does, when the charger has finished. */
        BY_HAND,
        /** On high volts alone. */
        VOLTS,
        /** On high volts and a current that has fallen. */
        VOLTS_AND_CURRENT,
        /** The owner does not know. */
        NOT_KNOWN
    }

    /** What a gauge does when more is counted in than fits. */
    public enum PastFull {
        /** It stops at 100 %, and counts down from there. */
        STOPS,
        /** It shows more than 100 %. */
        SHOWS_MORE,
        /** It shows 100 % and goes on counting behind it. */
        HIDES_MORE,
        /** The owner does not know. */
        NOT_KNOWN
    }

    /** What a gauge shows after its supply wire was off for a minute. */
    public enum AfterOff {
        /** What it showed before. */
        KEEPS,
        /** 100 %. */
        FULL,
        /** 0 %. */
        ZERO,
        /** A guess from the volts. */
        GUESSES,
        /** Nothing, until it is set. */
        NOTHING,
        /** The owner does not know. */
        NOT_KNOWN
    }

    /** The same gauge, with what a meter told of its own current and its zero error. */
    OwnersGauge measured(@Nullable Double own, @Nullable Double zero) {
        return but(setsFull, afterOff, own, zero);
    }

    /** The same gauge, with another answer to on what it sets itself. */
    OwnersGauge settingItself(SetsFull on) {
        return but(on, afterOff, ownAmps, zeroAmps);
    }

    /** The same gauge, with another answer to what it shows after its wire was off. */
    OwnersGauge after(AfterOff off) {
        return but(setsFull, off, ownAmps, zeroAmps);
    }

    private OwnersGauge but(
            SetsFull on, AfterOff off, @Nullable Double own, @Nullable Double zero) {
        return new OwnersGauge(
                on,
                pastFull,
                off,
                smallestAmps,
                smallestAmpHours,
                longestHours,
                own,
                zero,
                pastShuntAmps,
                efficiencySet);
    }

    /** Whether anything is known of what it does; its currents and settings alone tell nothing. */
    public boolean isTold() {
        return setsFull != SetsFull.NOT_KNOWN
                || pastFull != PastFull.NOT_KNOWN
                || afterOff != AfterOff.NOT_KNOWN
                || smallestAmps != null
                || longestHours != null;
    }

    /** Whether it sets itself, as far as is known. */
    public boolean setsItself() {
        return setsFull == SetsFull.VOLTS || setsFull == SetsFull.VOLTS_AND_CURRENT;
    }

    /** Whether its owner sets it: so he told, or it is not known to set itself. */
    public boolean isSetByHand() {
        return setsFull == SetsFull.BY_HAND || setsFull == SetsFull.NOT_KNOWN;
    }

    /** A gauge of which nothing is known. */
    public static final OwnersGauge UNKNOWN =
            new OwnersGauge(
                    SetsFull.NOT_KNOWN,
                    PastFull.NOT_KNOWN,
                    AfterOff.NOT_KNOWN,
                    null,
                    null,
                    null,
                    null,
                    0,
                    null);
}
