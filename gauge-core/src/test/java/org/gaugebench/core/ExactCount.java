package org.gaugebench.core;

import java.math.BigInteger;

/**
 * The counting rules once more, in integers without a width and in another form: the stored charge
 * is the floor of the efficiency times <em>all</em> minutes that brought charge, so no remainder is
 * carried anywhere. The full-charge rule is off.
 */
final class ExactCount {
    private static final BigInteger ONE_Q16 = BigInteger.valueOf(65_536);
    private static final long MINUTE_MILLIS = 60_000;
    private static final long LONGEST_TICK_MILLIS = 65_535;

    private final BigInteger capacity;
    private final BigInteger unprovenLimit;
    private final BigInteger efficiencyQ16;

    private BigInteger broughtByMinutes = BigInteger.ZERO;
    private BigInteger minute = BigInteger.ZERO;
    private long minuteMillis;
    private boolean proven;

    BigInteger settled = BigInteger.ZERO;
    BigInteger surplus = BigInteger.ZERO;
    BigInteger deficit = BigInteger.ZERO;
    BigInteger in = BigInteger.ZERO;
    BigInteger out = BigInteger.ZERO;

    ExactCount(long capacityMilliampHours, long efficiencyPartsPerMillion) {
        capacity = BigInteger.valueOf(capacityMilliampHours).multiply(big(3_600_000_000L));
        unprovenLimit = capacity.multiply(big(99)).divide(big(100));
        // nearest Q16, halves up: floor((2 x ppm x 65536 + 10^6) / (2 x 10^6))
        efficiencyQ16 =
                big(efficiencyPartsPerMillion)
                        .multiply(big(131_072))
                        .add(big(1_000_000))
                        .divide(big(2_000_000));
    }

    private static BigInteger big(long value) {
        return BigInteger.valueOf(value);
    }

    void tick(long microamps, long millis) {
        if (millis > LONGEST_TICK_MILLIS || millis < 0) {
            settle();
            minuteMillis = 0;
            return;
        }
        long left = millis;
        while (left > 0) {
            long part = Math.min(left, MINUTE_MILLIS - minuteMillis);
            BigInteger brought = big(microamps).multiply(big(part));
            minute = minute.add(brought);
            if (brought.signum() > 0) {
                in = in.add(brought);
            } else {
                out = out.subtract(brought);
            }
            minuteMillis += part;
            left -= part;
            if (minuteMillis == MINUTE_MILLIS) {
                settle();
                minuteMillis = 0;
            }
        }
    }

    void declare(long partsPerMillion) {
        settle();
        settled = capacity.multiply(big(partsPerMillion)).divide(big(1_000_000));
        proven = partsPerMillion == 1_000_000;
        surplus = BigInteger.ZERO;
        deficit = BigInteger.ZERO;
    }

    private void settle() {
        BigInteger target = settled.add(stored());
        broughtByMinutes = broughtByMinutes.add(minute.max(BigInteger.ZERO));
        minute = BigInteger.ZERO;
        BigInteger limit = limit();
        surplus = surplus.add(target.subtract(limit).max(BigInteger.ZERO));
        deficit = deficit.add(target.negate().max(BigInteger.ZERO));
        settled = target.min(limit).max(BigInteger.ZERO);
    }

    private BigInteger stored() {
        if (minute.signum() <= 0) {
            return minute;
        }
        return floorOf(broughtByMinutes.add(minute)).subtract(floorOf(broughtByMinutes));
    }

    private BigInteger floorOf(BigInteger brought) {
        return brought.multiply(efficiencyQ16).divide(ONE_Q16);
    }

    private BigInteger limit() {
        return proven ? capacity : unprovenLimit.max(settled);
    }

    BigInteger reading() {
        return settled.add(stored()).min(limit()).max(BigInteger.ZERO);
    }

    BigInteger minute() {
        return minute;
    }
}
