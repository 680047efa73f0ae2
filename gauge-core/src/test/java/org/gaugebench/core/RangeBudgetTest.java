package org.gaugebench.core;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import org.gaugebench.core.band.ErrorBand;
import org.gaugebench.core.charge.EnergyCounter;
import org.gaugebench.core.charge.MinuteMean;
import org.gaugebench.core.charge.SelfDischarge;
import org.gaugebench.core.fixed.Log2Table;
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

    /** Time times current saturates at 2^62, and so does the sum of two such products. */
    @Test
    void theBandsSumsSaturateInsteadOfWrapping() {
        GaugeSettings widest =
                GaugeSettings.builder()
                        .set(Setting.CAPACITY, max(Setting.CAPACITY))
                        .set(Setting.OFF_CURRENT_BOUND, max(Setting.OFF_CURRENT_BOUND))
                        .set(Setting.SHUNT_RATED_CURRENT, max(Setting.SHUNT_RATED_CURRENT))
                        .set(Setting.SHUNT_RATED_DROP, Setting.SHUNT_RATED_DROP.minimum())
                        .set(Setting.SHUNT_FULL_SCALE, max(Setting.SHUNT_FULL_SCALE))
                        .set(Setting.SHUNT_CONVERTER_BITS, Setting.SHUNT_CONVERTER_BITS.minimum())
                        .build();
        Stages stages = new Stages(widest);
        long offMicroamps = stages.offMicroamps();
        assertTrue(offMicroamps > 1L << 31, "10,000 A do not fit 32 bits of microamps");
        ErrorBand band = stages.band.sums();
        for (long millis : new long[] {1, 1L << 31, 1L << 39, Long.MAX_VALUE}) {
            long expected =
                    BigInteger.valueOf(millis)
                            .multiply(BigInteger.valueOf(offMicroamps))
                            .min(BigInteger.ONE.shiftLeft(62))
                            .longValueExact();
            band.anchor(0);
            band.addGap(millis, offMicroamps);
            assertEquals(expected, band.gapNanocoulombs(), "gap of " + millis + " ms");
            band.addGap(millis, offMicroamps);
            assertEquals(Math.min(expected, 1L << 61) * 2, band.gapNanocoulombs());
        }
        band.addGap(Long.MAX_VALUE, offMicroamps);
        assertEquals(1L << 62, band.gapNanocoulombs());
    }

    /** Half a step of the coarsest converter, over the longest time that the band counts. */
    @Test
    void theBandsTermsAreLimitedBeforeTheyCanWrap() {
        long coarsestMicroamps = (1L << 31) / 2;
        BigInteger product = BigInteger.valueOf(coarsestMicroamps).shiftLeft(39);
        assertTrue(product.bitLength() > 63, "the limit is needed");
        for (long capacity : new long[] {Setting.CAPACITY.minimum(), max(Setting.CAPACITY)}) {
            GaugeSettings widest =
                    GaugeSettings.builder()
                            .set(Setting.CAPACITY, capacity)
                            .set(Setting.OFFSET_BOUND, max(Setting.OFFSET_BOUND))
                            .set(Setting.UNMEASURED_BOUND, max(Setting.UNMEASURED_BOUND))
                            .set(Setting.GAIN_BOUND, max(Setting.GAIN_BOUND))
                            .set(Setting.ASYMMETRY_BOUND, max(Setting.ASYMMETRY_BOUND))
                            .set(Setting.EFFICIENCY_BOUND, max(Setting.EFFICIENCY_BOUND))
                            .set(Setting.CAPACITY_BOUND, max(Setting.CAPACITY_BOUND))
                            .set(Setting.SELF_DISCHARGE_BOUND, max(Setting.SELF_DISCHARGE_BOUND))
                            .build();
            ErrorBand band = new ErrorBand(widest, 2 * coarsestMicroamps);
            band.anchor(0);
            int before = 0;
            for (int i = 0; i < 100; i++) {
                // 2^33 ms a step: the clamp of 2^39 ms is passed on the way.
                band.add(1L << 33, 1L << 60, 1L << 60, 16_384);
                band.update(0);
                assertTrue(band.lowSidePartsPerMillion() >= before, "narrower at step " + i);
                assertTrue(band.lowSidePartsPerMillion() <= 1_000_000);
                before = band.lowSidePartsPerMillion();
            }
            assertEquals(1_000_000, before);
        }
        // eight squares of a million each, and their root times 1,155
        long squares = Math.multiplyExact(8L, 1_000_000_000_000L);
        assertTrue(squares <= 1L << 62);
        Math.multiplyExact(2_828_428L, 1_155L);
        // a sum in ppm limited to 2^43, times a bound in ppm
        Math.addExact(Math.multiplyExact(1L << 43, max(Setting.SELF_DISCHARGE_BOUND)), 999_999L);
    }

    @Test
    void theLossesPastTheShuntFit() {
        long monthly = Math.multiplyExact(capacity() / 1_000_000, max(Setting.SELF_DISCHARGE));
        long divisor = 43_200L << 8;
        int hottestQ8 = SelfDischarge.warmthQ8(Integer.MAX_VALUE);
        assertEquals(16_384, hottestQ8);
        Math.addExact(Math.multiplyExact(monthly / divisor, (long) hottestQ8), divisor);
        Math.addExact(Math.multiplyExact(divisor - 1, (long) hottestQ8), divisor - 1);
        // The own supply's part of a minute on top of the largest current's.
        Math.addExact(
                Math.multiplyExact(CURRENT, 60_000L),
                Math.multiplyExact(max(Setting.OWN_SUPPLY), 60_000L));
        // Warmth of the longest time: 2^39 ms x 2^14.
        Math.multiplyExact(1L << 39, (long) hottestQ8);
        // The interpolation: 2^26 x 9,999 mK.
        Math.multiplyExact(1L << 26, 9_999L);
    }

    @Test
    void theRulesLimitsFit() {
        long capacity = max(Setting.CAPACITY);
        Math.multiplyExact(capacity, max(Setting.EMPTY_CURRENT));
        Math.multiplyExact(capacity, 250L);
        assertTrue(4 * (Math.multiplyExact(capacity, max(Setting.TAPER)) / 1_000) > 0);
        Math.multiplyExact(max(Setting.SHUNT_RATED_CURRENT), max(Setting.ZERO_LIMIT));
        // Span: the step of two currents times 1e6; a resistance: a step of volts times 1e6.
        Math.multiplyExact(Math.multiplyExact(4L, CURRENT), 1_000_000L);
        Math.multiplyExact(Math.multiplyExact(max(Setting.VOLTAGE_FULL_SCALE), 1_000L), 1_000_000L);
        // Cycles: three days, and a week, of the largest current.
        Math.multiplyExact(Math.multiplyExact(CURRENT, 60_000L), 7L * 24 * 60);
        // An anchor's weight: the square of the whole, times 2^16.
        Math.multiplyExact(1_000_000_000_000L, 65_536L);
    }

    @Test
    void theEstimatesFit() {
        // Efficiency's gross charge: capacity over at least 0.1, remainder times 1e6.
        Math.multiplyExact(capacity() / 100_000, 1_000_000L);
        // Taper: 2^31 uA for four days of minutes, and a logarithm in Q24 times ln 2 in Q24.
        Math.multiplyExact(Math.multiplyExact(1L << 31, 5_760L), 60_000L);
        Math.multiplyExact(31L << 24, (long) Log2Table.LN2_Q24);
        Math.multiplyExact((31L << 24), Math.multiplyExact(5_760L, 60_000L));
        // The filter's mean: 240 minutes of the largest current.
        Math.multiplyExact(240L, CURRENT);
        Math.multiplyExact(Math.multiplyExact(CURRENT, 2L), 256L * 9);
    }

    /** The smallest and the largest of every setting that the stages read: all build and tick. */
    @Test
    void everySettingAtItsEndsBuildsAGaugeThatCounts() {
        int built = 0;
        for (Setting setting : Setting.values()) {
            for (long value : new long[] {setting.minimum(), setting.maximum()}) {
                GaugeSettings.Builder builder = GaugeSettings.builder().set(setting, value);
                if (!builder.problems().isEmpty()) {
                    continue;
                }
                GaugeFixture fixture = new GaugeFixture(builder.build());
                fixture.sample.voltageCounts = 500;
                fixture.declare(500_000);
                for (int counts : new int[] {2_000, -2_000, 0, 2_047, -2_048}) {
                    fixture.minutes(90, counts);
                    fixture.read();
                    int shown = fixture.readout.stateOfChargePartsPerMillion;
                    assertTrue(shown >= 0 && shown <= 1_000_000, setting + " = " + value);
                    assertTrue(fixture.readout.lowerEdgePartsPerMillion <= shown, setting.name());
                    assertTrue(fixture.readout.upperEdgePartsPerMillion >= shown, setting.name());
                }
                built++;
            }
        }
        assertTrue(built > 100, "built " + built);
    }
}
