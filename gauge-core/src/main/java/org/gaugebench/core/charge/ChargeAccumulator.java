package org.gaugebench.core.charge;

import org.gaugebench.core.fixed.FixedMath;

/**
 * The count. Microamps times milliseconds are nanocoulombs, exactly; each whole minute of uptime is
 * settled into the count through the efficiency and the clamps.
 *
 * <p>The clamps act on the minute's net too: a ripple at full would otherwise lose its upper half
 * to the clamp and run the count down. Reading in mid-minute is a preview with the same result.
 *
 * <p>Until full is proven the count stops at 99 %; what comes in above a limit is counted apart as
 * surplus, what goes out below zero as deficit. A clamp sets the count to the limit itself, so
 * clamping twice is clamping once.
 */
public final class ChargeAccumulator {
    // Parameters.
    private final long capacityNanocoulombs;
    private final long unprovenLimitNanocoulombs;
    private final CoulombicEfficiency efficiency;
    private final long ownSupplyMicroamps;

    // State.
    private long settledNanocoulombs;
    private long minuteNanocoulombs;
    private long inNanocoulombs;
    private long outNanocoulombs;
    private long surplusNanocoulombs;
    private long deficitNanocoulombs;
    private boolean fullProven;

    /**
     * Creates an empty count of a gauge that draws nothing past the shunt.
     *
     * @param capacityNanocoulombs full-charge capacity, 3.6e11 (0.1 Ah) to 3.6e16 (10,000 Ah)
     * @param efficiencyPartsPerMillion 500,000 to 1,000,000
     */
    public ChargeAccumulator(long capacityNanocoulombs, long efficiencyPartsPerMillion) {
        this(capacityNanocoulombs, efficiencyPartsPerMillion, 0);
    }

    /**
     * Creates an empty count.
     *
     * @param capacityNanocoulombs full-charge capacity, 3.6e11 (0.1 Ah) to 3.6e16 (10,000 Ah)
     * @param efficiencyPartsPerMillion 500,000 to 1,000,000
     * @param ownSupplyMicroamps what the gauge draws past the shunt, 0 to 1,000,000
     */
    public ChargeAccumulator(
            long capacityNanocoulombs, long efficiencyPartsPerMillion, long ownSupplyMicroamps) {
        this.ownSupplyMicroamps = ownSupplyMicroamps;
        this.capacityNanocoulombs = capacityNanocoulombs;
        this.unprovenLimitNanocoulombs = capacityNanocoulombs / 100 * 99;
        this.efficiency = new CoulombicEfficiency(efficiencyPartsPerMillion);
    }

    /**
     * Adds a stretch of constant current to the minute under way.
     *
     * <p><b>Range:</b> microamps x milliseconds = nanocoulombs, exact. Worst case 2^31 x 60,000 =
     * 2^47 in a minute. The sums in and out reach 2^63 after 70 years of 100 Ah a day and saturate.
     *
     * @param currentMicroamps positive into the battery
     * @param millis length of the stretch, at most what is left of the minute
     */
    public void add(int currentMicroamps, int millis) {
        long nanocoulombs = (long) currentMicroamps * millis;
        minuteNanocoulombs += nanocoulombs - ownSupplyMicroamps * millis;
        if (nanocoulombs > 0) {
            inNanocoulombs = saturatingAdd(inNanocoulombs, nanocoulombs);
        } else {
            outNanocoulombs = saturatingAdd(outNanocoulombs, -nanocoulombs);
        }
    }

    private static long saturatingAdd(long sum, long addend) {
        long result = sum + addend;
        return result < 0 ? Long.MAX_VALUE : result;
    }

    /** Settles the minute under way into the count. */
    public void settleMinute() {
        settleMinute(0);
    }

    /**
     * Settles the minute under way into the count.
     *
     * @param lostNanocoulombs what was lost inside the battery, 0 or more; taken off unless it
     *     would turn into a deficit: a battery cannot lose what it does not hold
     */
    public void settleMinute(long lostNanocoulombs) {
        long target = settledNanocoulombs + efficiency.settle(minuteNanocoulombs);
        target -= Math.min(lostNanocoulombs, Math.max(target, 0));
        minuteNanocoulombs = 0;
        settledNanocoulombs = FixedMath.clamp(target, 0, upperLimitNanocoulombs());
        long cutOff = target - settledNanocoulombs;
        if (cutOff > 0) {
            surplusNanocoulombs = saturatingAdd(surplusNanocoulombs, cutOff);
        } else {
            deficitNanocoulombs = saturatingAdd(deficitNanocoulombs, -cutOff);
        }
    }

    /**
     * Sets the count; the minute under way is settled first, so nothing is counted twice. Surplus
     * and deficit start again.
     *
     * @param nanocoulombs the new count, clamped to 0 to capacity
     * @param proven whether full is proven, which lifts the limit from 99 to 100 %
     * @return by how much the count moved
     */
    public long setTo(long nanocoulombs, boolean proven) {
        settleMinute();
        long before = settledNanocoulombs;
        settledNanocoulombs = FixedMath.clamp(nanocoulombs, 0, capacityNanocoulombs);
        fullProven = proven;
        surplusNanocoulombs = 0;
        deficitNanocoulombs = 0;
        return settledNanocoulombs - before;
    }

    /**
     * Takes over a count that was saved, or that a change of settings carried over.
     *
     * @param nanocoulombs the count, clamped to 0 to capacity
     * @param proven whether full is proven
     * @param surplus surplus so far, nanocoulombs
     * @param deficit deficit so far, nanocoulombs
     */
    public void resume(long nanocoulombs, boolean proven, long surplus, long deficit) {
        setTo(nanocoulombs, proven);
        surplusNanocoulombs = Math.max(surplus, 0);
        deficitNanocoulombs = Math.max(deficit, 0);
    }

    /**
     * Takes over the sums through the shunt.
     *
     * @param in nanocoulombs in
     * @param out nanocoulombs out
     * @param remainderQ16 what the efficiency's floor had cut off
     */
    public void resumeSums(long in, long out, int remainderQ16) {
        efficiency.resume(remainderQ16);
        inNanocoulombs = Math.max(in, 0);
        outNanocoulombs = Math.max(out, 0);
    }

    /**
     * Whether full is proven.
     *
     * @return true from a proof until the rule is armed again
     */
    public boolean isFullProven() {
        return fullProven;
    }

    /** Takes the proof of full away: the limit is 99 % again. */
    public void withdrawProof() {
        fullProven = false;
    }

    /**
     * The count, the minute under way included.
     *
     * @return 0 to the upper limit
     */
    public long chargeNanocoulombs() {
        return FixedMath.clamp(
                settledNanocoulombs + efficiency.preview(minuteNanocoulombs),
                0,
                upperLimitNanocoulombs());
    }

    /**
     * 99 % until full is proven; a count that is already above it is not pulled down.
     *
     * @return nanocoulombs
     */
    public long upperLimitNanocoulombs() {
        return fullProven
                ? capacityNanocoulombs
                : Math.max(unprovenLimitNanocoulombs, settledNanocoulombs);
    }

    /**
     * Whether the count stands at its upper limit.
     *
     * @return true at 100 % when full is proven, at 99 % when it is not
     */
    public boolean isAtUpperLimit() {
        return settledNanocoulombs >= upperLimitNanocoulombs();
    }

    /**
     * The count at the last whole minute.
     *
     * @return nanocoulombs
     */
    public long settledNanocoulombs() {
        return settledNanocoulombs;
    }

    /**
     * Net charge of the minute under way.
     *
     * @return nanocoulombs, positive into the battery
     */
    public long minuteNanocoulombs() {
        return minuteNanocoulombs;
    }

    /**
     * All charge that went in through the shunt since power-up, before efficiency and clamps.
     *
     * @return nanocoulombs
     */
    public long inNanocoulombs() {
        return inNanocoulombs;
    }

    /**
     * All charge that went out through the shunt since power-up.
     *
     * @return nanocoulombs, a positive figure
     */
    public long outNanocoulombs() {
        return outNanocoulombs;
    }

    /**
     * What came in above the upper limit since the count was last set.
     *
     * @return nanocoulombs
     */
    public long surplusNanocoulombs() {
        return surplusNanocoulombs;
    }

    /**
     * What went out below zero since the count was last set.
     *
     * @return nanocoulombs, a positive figure
     */
    public long deficitNanocoulombs() {
        return deficitNanocoulombs;
    }

    /**
     * Full-charge capacity.
     *
     * @return nanocoulombs
     */
    public long capacityNanocoulombs() {
        return capacityNanocoulombs;
    }

    /**
     * What the efficiency's floor has cut off so far.
     *
     * @return 0 to 65535, in nC/65536
     */
    public int efficiencyRemainderQ16() {
        return efficiency.remainderQ16();
    }
}
