package org.gaugebench.core.estimate;

import org.gaugebench.core.fixed.FixedMath;

/**
 * The current on which the hours rest, aware of loads that recur.
 *
 * <p>Three looks at one current: a fast pole of 15 s, a slow mean of whole minutes (30 by default),
 * and the envelope of the last hour. While the fast pole stays inside the envelope the slow mean
 * answers, so a pump or a refrigerator is averaged. If it stays outside, a new load has come: after
 * 45 s of a heavier one or 180 s of a lighter one the slow mean starts again from the fast pole and
 * the old mean is remembered. If the fast pole comes back inside the old envelope for 45 s within
 * an hour, the load was a one-off and the old mean is restored. Heavier means more current out of
 * the battery, charging included: the answer turns pessimistic quickly and optimistic slowly.
 *
 * <p>Nothing here touches the count. Everything is allocated in the constructor.
 */
public final class LoadFilter {
    /** How often the fast pole is evaluated; a twelfth of a minute. */
    public static final int SLOT_MILLIS = 5_000;

    /** The default averaging time of the slow mean. */
    public static final int DEFAULT_AVERAGING_MINUTES = 30;

    /** The longest averaging time. */
    public static final int LONGEST_AVERAGING_MINUTES = 240;

    private static final int FRACTION_BITS = 8;

    /** 9/32 of the difference every 5 s is a time constant of 15.1 s. */
    private static final int FAST_PART_Q5 = 9;

    private static final int FAST_SHIFT = 5;

    /** 45 s; long enough for a starting motor to settle, short enough to show within a minute. */
    private static final int HEAVIER_SLOTS = 9;

    /** 180 s; the pause of a cycling load is not yet its end. */
    private static final int LIGHTER_SLOTS = 36;

    /** 45 s inside the old envelope. */
    private static final int RETURN_SLOTS = 9;

    /** One hour in slots: how long the old mean can be restored. */
    private static final int REMEMBERED_SLOTS = 720;

    /** Margin of the envelope beside its quarter: capacity over 500 h, 0.2 A at 100 Ah. */
    private static final long MARGIN_DIVISOR_MILLIS = 500 * 3_600_000L;

    private static final long DEFAULT_CAPACITY_NANOCOULOMBS = 100 * 3_600_000_000_000L;

    // Parts.
    private final LoadEnvelope envelope;
    private final RollingMinute rollingMinute = new RollingMinute();
    private final UsualUse usualUse = new UsualUse();

    // State: the slot under way.
    private long slotNanocoulombs;
    private int slotMillis;

    // State: the fast pole.
    private boolean fastSeeded;
    private long fastMicroampsQ8;

    // State: the slow mean, a ring of minute means since it last started.
    private final int[] minuteMicroamps;
    private int minutes;
    private int nextIndex;
    private long minutesSumMicroamps;
    private boolean seeded;
    private boolean minuteIsMixed;

    // State: timing a fast pole outside the envelope, and the mean before it left.
    private int heavierSlots;
    private int lighterSlots;
    private int meanBeforeMicroamps;
    private int beforeMinutes;

    // State: the one-off under way.
    private int rememberedSlots;
    private int returnSlots;
    private int rememberedMicroamps;
    private int rememberedMinutes;
    private long rememberedLowMicroamps;
    private long rememberedHighMicroamps;

    /** Creates a filter for 100 Ah with the default averaging time. */
    public LoadFilter() {
        this(DEFAULT_CAPACITY_NANOCOULOMBS, DEFAULT_AVERAGING_MINUTES);
    }

    /**
     * Creates a filter that has seen nothing.
     *
     * @param capacityNanocoulombs full-charge capacity; scales the envelope's margin
     * @param averagingMinutes length of the slow mean, 1 to 240; held to that range
     */
    public LoadFilter(long capacityNanocoulombs, int averagingMinutes) {
        envelope = new LoadEnvelope(Math.max(1, capacityNanocoulombs / MARGIN_DIVISOR_MILLIS));
        minuteMicroamps =
                new int[(int) FixedMath.clamp(averagingMinutes, 1, LONGEST_AVERAGING_MINUTES)];
    }

    /**
     * Adds a stretch of current. A stretch never crosses the end of a minute.
     *
     * <p><b>Range:</b> 2^31 uA x 5,000 ms below 2^44. A stretch below the slot's rest costs one
     * multiplication and two additions.
     *
     * @param currentMicroamps positive into the battery
     * @param millis length of the stretch, 0 to 60,000
     * @return whether a slot was completed, so that the answer may have changed
     */
    public boolean addStretch(int currentMicroamps, int millis) {
        int rest = SLOT_MILLIS - slotMillis;
        if (millis < rest) {
            slotNanocoulombs += (long) currentMicroamps * millis;
            slotMillis += millis;
            return false;
        }
        addToTheEnd(currentMicroamps, millis);
        return true;
    }

    private void addToTheEnd(int currentMicroamps, int millis) {
        int left = millis;
        while (left >= SLOT_MILLIS - slotMillis) {
            int part = SLOT_MILLIS - slotMillis;
            slotNanocoulombs += (long) currentMicroamps * part;
            left -= part;
            int mean = FixedMath.clampToInt(slotNanocoulombs / SLOT_MILLIS);
            slotNanocoulombs = 0;
            slotMillis = 0;
            closeSlot(mean);
        }
        slotNanocoulombs += (long) currentMicroamps * left;
        slotMillis += left;
    }

    /**
     * <b>Range:</b> differences below 2^41, times 9 below 2^45. The shift rounds down: the fast
     * pole stops at most 4/256 uA from a constant input.
     */
    private void closeSlot(int meanMicroamps) {
        rollingMinute.addSlot(meanMicroamps);
        long inputQ8 = (long) meanMicroamps << FRACTION_BITS;
        if (!fastSeeded) {
            fastSeeded = true;
            fastMicroampsQ8 = inputQ8;
        }
        fastMicroampsQ8 += ((inputQ8 - fastMicroampsQ8) * FAST_PART_Q5) >> FAST_SHIFT;
        if (seeded && !cameBack()) {
            watchForNewLoad();
        }
    }

    /** Counts the time inside the old envelope; restores the old mean when it was long enough. */
    private boolean cameBack() {
        if (rememberedSlots == 0) {
            return false;
        }
        rememberedSlots--;
        int fast = fastMicroamps();
        boolean inside = fast >= rememberedLowMicroamps && fast <= rememberedHighMicroamps;
        returnSlots = inside ? returnSlots + 1 : 0;
        if (returnSlots == RETURN_SLOTS) {
            restart();
            for (int i = 0; i < rememberedMinutes; i++) {
                push(rememberedMicroamps);
            }
            endOneOff();
            return true;
        }
        if (rememberedSlots == 0) {
            endOneOff();
        }
        // Inside, the watch for a new load pauses: a larger step passes through on its way.
        return inside;
    }

    private void endOneOff() {
        rememberedSlots = 0;
        returnSlots = 0;
        heavierSlots = 0;
        lighterSlots = 0;
        envelope.lookAtTheWholeHour();
    }

    private void watchForNewLoad() {
        int fast = fastMicroamps();
        boolean heavier = fast < envelope.lowMicroamps();
        boolean lighter = fast > envelope.highMicroamps();
        if ((heavier || lighter) && heavierSlots + lighterSlots == 0) {
            meanBeforeMicroamps = microamps();
            beforeMinutes = Math.max(1, minutes);
        }
        heavierSlots = heavier ? heavierSlots + 1 : 0;
        lighterSlots = lighter ? lighterSlots + 1 : 0;
        if (heavierSlots == HEAVIER_SLOTS || lighterSlots == LIGHTER_SLOTS) {
            takeOver(fast);
        }
    }

    private void takeOver(int fast) {
        if (rememberedSlots == 0) {
            // A second new load within the hour leaves what the first one interrupted.
            rememberedSlots = REMEMBERED_SLOTS;
            rememberedMicroamps = meanBeforeMicroamps;
            rememberedMinutes = beforeMinutes;
            rememberedLowMicroamps = envelope.lowMicroamps();
            rememberedHighMicroamps = envelope.highMicroamps();
            envelope.startFrom(fast);
        } else {
            envelope.add(fast);
        }
        heavierSlots = 0;
        lighterSlots = 0;
        returnSlots = 0;
        restart();
    }

    /** The minute under way holds some of the old load and is left out. */
    private void restart() {
        minutes = 0;
        nextIndex = 0;
        minutesSumMicroamps = 0;
        minuteIsMixed = true;
    }

    /** <b>Range:</b> the sum is at most 240 x 2^31, below 2^39. */
    private void push(int meanMicroamps) {
        if (minutes == minuteMicroamps.length) {
            minutesSumMicroamps -= minuteMicroamps[nextIndex];
        } else {
            minutes++;
        }
        minuteMicroamps[nextIndex] = meanMicroamps;
        minutesSumMicroamps += meanMicroamps;
        nextIndex = nextIndex + 1 == minuteMicroamps.length ? 0 : nextIndex + 1;
    }

    /**
     * Ends a minute whose stretches have been added.
     *
     * @param meanMicroamps the minute's mean current
     */
    public void closeMinute(int meanMicroamps) {
        usualUse.addMinute(meanMicroamps);
        boolean mixed = minuteIsMixed;
        minuteIsMixed = false;
        if (mixed) {
            return;
        }
        push(meanMicroamps);
        // Frozen while timing: a load that is being judged does not make room for itself.
        if (!seeded || heavierSlots + lighterSlots == 0) {
            envelope.add(meanMicroamps);
        }
        seeded = true;
    }

    /**
     * Takes one whole minute of which only the mean is known.
     *
     * @param meanMicroamps the minute's mean current
     */
    public void addMinute(int meanMicroamps) {
        addStretch(meanMicroamps, RollingMinute.SLOTS * SLOT_MILLIS);
        closeMinute(meanMicroamps);
    }

    /** Drops the slot under way, as the minute under way was dropped; what was learned stays. */
    public void abandonMinute() {
        slotNanocoulombs = 0;
        slotMillis = 0;
    }

    /**
     * Whether a first minute has been seen.
     *
     * @return false until then
     */
    public boolean isSeeded() {
        return seeded;
    }

    /**
     * The filtered current: the slow mean, or the fast pole until the slow mean has a whole minute.
     *
     * @return microamps, to the nearest, halves away from zero; positive into the battery
     */
    public int microamps() {
        return FixedMath.clampToInt(
                minutes == 0
                        ? FixedMath.divideHalfAwayFromZero(fastMicroampsQ8, 1 << FRACTION_BITS)
                        : FixedMath.divideHalfAwayFromZero(minutesSumMicroamps, minutes));
    }

    /**
     * The filtered current in the unit of the register.
     *
     * @return 1/256 microamps
     */
    public long microampsQ8() {
        return minutes == 0 ? fastMicroampsQ8 : (minutesSumMicroamps << FRACTION_BITS) / minutes;
    }

    /**
     * The fast pole.
     *
     * @return microamps, rounded down, positive into the battery
     */
    public int fastMicroamps() {
        return (int) (fastMicroampsQ8 >> FRACTION_BITS);
    }

    /**
     * Mean of the last sixty seconds.
     *
     * @return microamps, positive into the battery
     */
    public int oneMinuteMicroamps() {
        return rollingMinute.microamps();
    }

    /**
     * What is usually taken out, over the last 24 hours.
     *
     * @return microamps, at least 0; 0 before the first whole hour
     */
    public int usualMicroamps() {
        return usualUse.microamps();
    }

    /**
     * How many hours the usual use rests on.
     *
     * @return 0 to 24
     */
    public int usualHours() {
        return usualUse.wholeHours();
    }

    /**
     * Heavy end of the envelope.
     *
     * @return microamps; a fast pole below it is a new load
     */
    public long envelopeLowMicroamps() {
        return envelope.lowMicroamps();
    }

    /**
     * Light end of the envelope.
     *
     * @return microamps; a fast pole above it is a load taken away
     */
    public long envelopeHighMicroamps() {
        return envelope.highMicroamps();
    }

    /**
     * Whole minutes in the slow mean.
     *
     * @return 0 to the averaging time
     */
    public int minutesInMean() {
        return minutes;
    }

    /**
     * How long the fast pole has been outside the envelope.
     *
     * @return slots of 5 s; 0 inside
     */
    public int outsideSlots() {
        return heavierSlots + lighterSlots;
    }

    /**
     * How long the mean before the last new load can still be restored.
     *
     * @return slots of 5 s; 0 if there is none
     */
    public int rememberedSlotsLeft() {
        return rememberedSlots;
    }
}
