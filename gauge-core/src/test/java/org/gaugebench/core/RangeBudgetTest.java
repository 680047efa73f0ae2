package org.gaugebench.core;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import org.gaugebench.core.charge.EnergyCounter;
import org.gaugebench.core.charge.MinuteMean;
import org.gaugebench.core.fixed.ScaleFactor;
import org.gaugebench.core.sense.CurrentSense;
import org.gaugebench.core.sense.ElapsedTime;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/**
 * Walks the corners of the settings table and proves that no intermediate of docs/arithmetic.md
 * overflows: each product is formed with {@code Math.multiplyExact}, which throws where the code
 * would wrap, so a wider row in {@link Setting} fails here first.
 */
class RangeBudgetTest {
    /** Largest current that any settings can give: the clamp of 32 bits. */
    private static final long CURRENT = Integer.MAX_VALUE;

    private static final long NANOCOULOMBS_PER_MILLIAMP_HOUR = 3_600_000_000L;

    private static long max(Setting setting) {
        return setting.maximum();
    }

    @Test
    void theFactorOfTheShuntFitsItsArguments() {
        long largest = 1L << 62;
        long numerator =
                Math.multiplyExact(
                        Math.multiplyExact(
                                max(Setting.SHUNT_FULL_SCALE), max(Setting.SHUNT_RATED_CURRENT)),
                        1_000L);
        long denominator =
                Math.multiplyExact(
                        max(Setting.SHUNT_RATED_DROP),
                        1L << (max(Setting.SHUNT_CONVERTER_BITS) + 7));
        assertTrue(numerator <= largest && denominator <= largest);
        // The cold long division doubles a remainder below the numerator and adds the denominator.
        assertTrue(Math.addExact(Math.multiplyExact(2L, numerator), denominator) > 0);
        // The rail with the offset against it, in counts/256, is within ScaleFactor's input limit.
        long rail = (1L << (max(Setting.SHUNT_CONVERTER_BITS) + 7)) + max(Setting.SHUNT_OFFSET);
        assertTrue(rail <= 1L << 40);
        // Any 32-bit pattern of counts, times 256, less the offset.
        Math.subtractExact(
                Math.multiplyExact((long) Integer.MIN_VALUE, 256L), max(Setting.SHUNT_OFFSET));
        assertTrue(max(Setting.SHUNT_RATED_CURRENT) * 1_000 <= (1L << 31) - 3);
    }

    /** All 2^5 corners of the five shunt settings that are accepted build and stay in 32 bits. */
    @Test
    void everyCornerOfTheShuntSettingsBuildsAndStaysWithinItsWidth() {
        Setting[] shunt = {
            Setting.SHUNT_RATED_CURRENT,
            Setting.SHUNT_RATED_DROP,
            Setting.SHUNT_CONVERTER_BITS,
            Setting.SHUNT_FULL_SCALE,
            Setting.SHUNT_OFFSET
        };
        int built = 0;
        for (int corner = 0; corner < 1 << shunt.length; corner++) {
            GaugeSettings.Builder builder = GaugeSettings.builder();
            for (int i = 0; i < shunt.length; i++) {
                boolean high = (corner >> i & 1) == 1;
                builder.set(shunt[i], high ? shunt[i].maximum() : shunt[i].minimum());
            }
            if (!builder.problems().isEmpty()) {
                continue;
            }
            built++;
            CurrentSense sense = new CurrentSense(builder.build());
            int[] patterns = {Integer.MIN_VALUE, -8_388_608, 0, 8_388_607, Integer.MAX_VALUE};
            int last = -Integer.MAX_VALUE;
            for (int counts : patterns) {
                int microamps = sense.microampsFromCounts(counts);
                assertTrue(microamps >= last, "not monotone at corner " + corner);
                last = microamps;
            }
        }
        assertEquals(24, built);
    }

    @Test
    void theFactorOfTheVoltageFitsItsArguments() {
        long numerator = Math.multiplyExact(max(Setting.VOLTAGE_FULL_SCALE), 1_000L);
        assertTrue(numerator <= Integer.MAX_VALUE, "microvolts within 32 bits");
        long limit = (1L << max(Setting.VOLTAGE_CONVERTER_BITS)) - 1;
        ScaleFactor factor =
                new ScaleFactor(numerator, 1L << Setting.VOLTAGE_CONVERTER_BITS.minimum(), limit);
        BigInteger product =
                BigInteger.valueOf(factor.multiplier())
                        .multiply(BigInteger.valueOf(limit))
                        .add(BigInteger.ONE.shiftLeft(Math.max(factor.shift() - 1, 0)));
        assertTrue(product.bitLength() <= 63);
    }

    @Test
    void aMinuteOfChargeFits() {
        long tick = Math.multiplyExact(CURRENT, (long) ElapsedTime.LONGEST_TICK_MILLIS);
        assertTrue(tick < 1L << 47);
        long minute = Math.multiplyExact(CURRENT, (long) MinuteMean.MINUTE_MILLIS);
        assertTrue(minute < 1L << 47);
        // CoulombicEfficiency: high part x factor, low part x factor + carry
        Math.multiplyExact(minute >> 16, 65_536L);
        Math.addExact(Math.multiplyExact(65_535L, 65_536L), 65_535L);
        Math.multiplyExact(max(Setting.COULOMBIC_EFFICIENCY), 65_536L);
        // settled + minute, and the doubled remainder of the mean
        Math.addExact(capacity(), minute);
        Math.multiplyExact(2L, (long) MinuteMean.MINUTE_MILLIS);
        Math.multiplyExact(
                Math.multiplyExact(max(Setting.VOLTAGE_FULL_SCALE), 1_000L),
                (long) MinuteMean.MINUTE_MILLIS);
    }

    private static long capacity() {
        return Math.multiplyExact(max(Setting.CAPACITY), NANOCOULOMBS_PER_MILLIAMP_HOUR);
    }

    @Test
    void theCapacityAndItsPartsFit() {
        assertTrue(capacity() < 1L << 55);
        Math.multiplyExact(capacity() / 100, 99L);
        Math.multiplyExact(capacity() / 1_000_000, 1_000_000L);
        // A millionth of the capacity and 99 % of it are exact, whatever the capacity.
        assertEquals(0, NANOCOULOMBS_PER_MILLIAMP_HOUR % 1_000_000);
        assertEquals(0, NANOCOULOMBS_PER_MILLIAMP_HOUR % 100);
        // taper in microamps; the re-arm discharge
        long taper = Math.multiplyExact(max(Setting.CAPACITY), max(Setting.TAPER)) / 1_000;
        assertEquals(2_000_000_000L, taper);
        Math.multiplyExact(capacity() / 1_000_000, max(Setting.REARM_DISCHARGE));
    }

    @Test
    void theCompensatedThresholdFits() {
        long steepest = Setting.TEMPERATURE_COEFFICIENT.minimum();
        for (long millicelsius : new long[] {Integer.MIN_VALUE + 1L, Integer.MAX_VALUE}) {
            long product = Math.multiplyExact(steepest, millicelsius - 25_000);
            assertTrue(Math.abs(product) < 1L << 62, "within divideHalfAwayFromZero");
            Math.addExact(product / 1_000, Math.multiplyExact(max(Setting.ABSORPTION), 1_000L));
        }
    }

    @Test
    void theStepsOfTheEnergyFitOnTopOfTheFoldLimit() {
        long foldAbove = 500_000_000_000_000_000L;
        long step =
                Math.multiplyExact(
                        Math.multiplyExact(max(Setting.VOLTAGE_FULL_SCALE), CURRENT), 30_000L);
        Math.addExact(foldAbove, step);
        // A whole minute in one product would not fit: that is why it is halved.
        BigInteger minute = BigInteger.valueOf(step).multiply(BigInteger.TWO);
        assertTrue(minute.bitLength() > 63);
        EnergyCounter energy = new EnergyCounter();
        energy.add((int) max(Setting.VOLTAGE_FULL_SCALE), (int) CURRENT, 60_000);
        assertEquals(
                minute.divide(BigInteger.valueOf(1_000_000)),
                BigInteger.valueOf(energy.inMicrojoules()));
    }

    @Test
    void theFilterAndTheHoursFit() {
        Math.multiplyExact(Math.multiplyExact(2L, CURRENT), 256L);
        long longestMinutes = capacity() / Setting.OFFSET_BOUND.minimum() / 60_000;
        assertTrue(longestMinutes > Integer.MAX_VALUE, "the comparison must come before narrowing");
        assertTrue(Math.multiplyExact(max(Setting.LONGEST_TIME), 60L) <= Integer.MAX_VALUE);
    }
}
