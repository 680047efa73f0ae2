package org.gaugebench.sim.device.exhibits;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import org.gaugebench.core.port.EventSink;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.StateStore;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.scenario.Mistake;
import org.gaugebench.sim.scenario.MistakeCheck;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class MistakeTest {
    /** 700 Ah, so that 32 bits of milliampere-seconds do not hold it. */
    private static final GaugeSettings BANK =
            Bench.settings().set(Setting.CAPACITY, 700_000).set(Setting.HOLD, 2).build();

    @Test
    void everyMistakeHasAKeyASentenceAConsequenceAndACase() {
        Set<String> keys = new HashSet<>();
        Set<String> sentences = new HashSet<>();
        for (Mistake mistake : Mistake.values()) {
            assertTrue(mistake.key().matches("[a-z0-9]+(-[a-z0-9]+)*"), mistake.key());
            assertEquals(mistake.name(), mistake.key().toUpperCase(Locale.ROOT).replace('-', '_'));
            assertTrue(keys.add(mistake.key()));
            assertTrue(sentences.add(mistake.sentence()));
            for (String text : List.of(mistake.sentence(), mistake.consequence())) {
                assertFalse(text.isBlank() || text.endsWith("."), mistake.key());
            }
            assertFalse(mistake.cases().isEmpty());
            for (String number : mistake.cases()) {
                assertTrue(number.matches("[A-Z]{3}[0-9]{2}"), number);
            }
            assertEquals(mistake, Mistake.ofKey(mistake.key()));
        }
        assertNull(Mistake.ofKey("no-such-mistake"));
    }

    /** What a mistake that does nothing alone is judged beside. */
    private static Set<Mistake> company(Mistake mistake) {
        return switch (mistake.family()) {
            case AFTER_FULL -> EnumSet.of(Mistake.FULL_BY_VOLTAGE_ONLY);
            case HOURS_SEED -> EnumSet.of(Mistake.HOURS_SINGLE_POLE_3_MIN);
            case SHOWN_HOURS -> EnumSet.of(Mistake.HOURS_INSTANT);
            default -> EnumSet.noneOf(Mistake.class);
        };
    }

    @ParameterizedTest
    @EnumSource
    void everyMistakeChangesSomething(Mistake mistake) {
        Set<Mistake> without = company(mistake);
        Set<Mistake> with = EnumSet.copyOf(without);
        with.add(mistake);
        assertNotEquals(digest(BANK, without), digest(BANK, with));
        assertEquals(digest(BANK, with), digest(BANK, with));
    }

    /** One day of everything: both signs, gaps, all voltages, a wrap, an edit and a restart. */
    private static long digest(GaugeSettings settings, Set<Mistake> mistakes) {
        Bench bench = new Bench(settings, 1_000, -3_600_000, -50, mistakes.toArray(new Mistake[0]));
        Registers registers = new Registers();
        bench.exhibit.inspect(registers);
        long digest = registers.fold(Registers.DIGEST_START);
        bench.declare(70);
        Random random = new Random(7);
        for (int i = 0; i < 20_000; i++) {
            step(bench, random, i);
            bench.exhibit.inspect(registers);
            digest = registers.fold(digest);
        }
        return digest;
    }

    private static void step(Bench bench, Random random, int i) {
        if (i == 9_500) {
            bench.change(Setting.CAPACITY, 900_000);
        }
        if (i == 12_345) {
            bench.powerUp(12_400);
        }
        int hour = i / 2_000 % 5;
        switch (hour) {
            case 0 -> bench.volts(12_700 - i % 2_000 * 5 / 4).amps(-100, 1_000);
            case 1 -> bench.volts(14_300).amps(5, 900 + random.nextInt(200));
            case 2 -> bench.volts(13_000).amps(300, i % 100 == 0 ? 60_000 : 3_000);
            case 3 -> bench.volts(12_600).amps(-0.001 * random.nextInt(40), 1_000);
            default -> bench.volts(12_400).amps(random.nextGaussian(), 1_000);
        }
    }

    @Test
    void withoutAMistakeAnExhibitIsThePlainCounter() {
        Bench bench = new Bench(BANK, 1_000, -3_600_000);
        Readout exhibit = new Readout();
        Readout plain = new Readout();
        Random random = new Random(7);
        for (int i = 0; i < 20_000; i++) {
            if (i == 10) {
                bench.declare(70);
            }
            step(bench, random, i);
            bench.exhibit.read(exhibit);
            bench.plain.read(plain);
            assertEquals(figures(plain), figures(exhibit));
        }
    }

    private static List<Object> figures(Readout readout) {
        return List.of(
                readout.stateOfChargePartsPerMillion,
                readout.remainingNanocoulombs,
                readout.fullChargeNanocoulombs,
                readout.currentMicroamps,
                readout.averageCurrentMicroamps,
                readout.voltageMicrovolts,
                readout.temperatureMillicelsius,
                readout.timeToEmptyState,
                readout.timeToEmptyMinutes,
                readout.trust);
    }

    @Test
    void contradictionsAreRefusedWithAMessage() {
        assertEquals(
                List.of(
                        "'floor-not-round' and 'truncate-not-round' contradict each other; keep one"
                                + " of them",
                        "'no-clamp' and 'display-only-clamp' contradict each other; keep one of"
                                + " them"),
                MistakeCheck.problems(
                        EnumSet.of(
                                Mistake.DISPLAY_ONLY_CLAMP,
                                Mistake.NO_CLAMP,
                                Mistake.TRUNCATE_NOT_ROUND,
                                Mistake.FLOOR_NOT_ROUND)));
        assertEquals(
                List.of(
                        "'efficiency-per-sample' and 'efficiency-on-totals' contradict each other;"
                                + " keep one of them"),
                MistakeCheck.problems(
                        EnumSet.of(Mistake.EFFICIENCY_ON_TOTALS, Mistake.EFFICIENCY_PER_SAMPLE)));
        assertEquals(
                List.of(
                        "'assumed-tick' and 'gap-not-counted' contradict each other; keep one of"
                                + " them"),
                MistakeCheck.problems(EnumSet.of(Mistake.ASSUMED_TICK, Mistake.GAP_NOT_COUNTED)));
    }

    @Test
    void aMistakeThatDoesNothingAloneSaysWhatItNeeds() {
        assertEquals(
                List.of(
                        "'no-rearm' does nothing alone; add one of 'loose-full-rule',"
                                + " 'strict-full-rule', 'full-by-voltage-only'"),
                MistakeCheck.problems(EnumSet.of(Mistake.NO_REARM)));
        assertEquals(1, MistakeCheck.problems(EnumSet.of(Mistake.FILTER_SEEDED_WITH_ZERO)).size());
        assertEquals(1, MistakeCheck.problems(EnumSet.of(Mistake.MINUTES_16_BIT)).size());
        assertEquals(
                List.of(
                        "'filter-seeded-with-zero' needs a filter with a memory, which"
                                + " 'hours-instant' is not; use 'hours-single-pole-3-min' instead"),
                MistakeCheck.problems(
                        EnumSet.of(Mistake.FILTER_SEEDED_WITH_ZERO, Mistake.HOURS_INSTANT)));
    }

    @Test
    void aGaugeOfContradictionsIsNotBuilt() {
        Set<Mistake> both = EnumSet.of(Mistake.NO_CLAMP, Mistake.DISPLAY_ONLY_CLAMP);
        IllegalArgumentException refusal =
                assertThrows(
                        IllegalArgumentException.class,
                        () -> new ExhibitGauge(BANK, both, 1_000, StateStore.NONE, EventSink.NONE));
        assertTrue(String.valueOf(refusal.getMessage()).contains("'no-clamp'"));
    }

    @Test
    void mistakesOfDifferentStagesGoTogether() {
        Set<Mistake> many =
                EnumSet.of(
                        Mistake.MILLISECOND_WRAP,
                        Mistake.GAP_NOT_COUNTED,
                        Mistake.FLOOR_NOT_ROUND,
                        Mistake.DEAD_BAND,
                        Mistake.RATE_COUNTED_CHARGE,
                        Mistake.FLOAT_ACCUMULATOR,
                        Mistake.NO_CLAMP,
                        Mistake.LOOSE_FULL_RULE,
                        Mistake.NO_REARM,
                        Mistake.EMPTY_BY_VOLTS_ALONE,
                        Mistake.CAPACITY_FROM_ANY_TWO_VOLTAGES,
                        Mistake.START_AT_FULL,
                        Mistake.HOURS_WINDOW_30_MIN,
                        Mistake.FILTER_SEEDED_WITH_ZERO,
                        Mistake.MINUTES_16_BIT);
        assertEquals(List.of(), MistakeCheck.problems(many));
        assertEquals(digest(BANK, many), digest(BANK, many));
    }
}
