package org.gaugebench.sim.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.gaugebench.sim.random.SplitMix64;
import org.gaugebench.sim.report.Samples;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.ScenarioException;
import org.junit.jupiter.api.Test;

/** A run that somebody works with, and the file that tells what happened. */
class BenchTest {
    private static final List<String> SWITCHES =
            List.of("lamp", "radio", "heater", "panel", "shore", "gauge.power", "plain.power");

    private static int below(SplitMix64 random, int limit) {
        return (int) (random.nextDouble() * limit);
    }

    private static void actAtRandom(Bench bench, SplitMix64 random) throws ScenarioException {
        Map<String, String> set = new LinkedHashMap<>();
        switch (below(random, 9)) {
            case 0, 1, 2 ->
                    set.put(
                            SWITCHES.get(below(random, SWITCHES.size())),
                            random.nextDouble() < 0.5 ? "on" : "off");
            case 3 -> set.put("lamp.current", (1 + below(random, 50)) * 100 + " mA");
            case 4 -> set.put("sensor.offset", below(random, 40) - 20 + " uV");
            case 5 -> set.put("gauge.capacity", 10 + below(random, 20) + " Ah");
            case 6 -> set.put("battery.temperature", below(random, 40) + " °C");
            case 7 -> set.put("gauge.declare", below(random, 100) + " %");
            default -> {
                bench.command(Map.of("command", "zero-adjustment"));
                return;
            }
        }
        bench.set(set);
    }

    /** Many runs of random length with acts at random moments, some of them at one moment. */
    private static void play(Bench bench, SplitMix64 random) throws ScenarioException {
        for (int i = 0; i < 25; i++) {
            bench.advanceTo(bench.rig().timeMillis() + 1_000L * below(random, 9_000));
            int acts = below(random, 4);
            for (int k = 0; k < acts; k++) {
                actAtRandom(bench, random);
            }
        }
        bench.advanceTo(bench.rig().timeMillis() + 61_000);
    }

    private static long digestOfFile(Bench bench) {
        Scenario saved = Samples.scenario("saved.yaml", bench.scenarioText());
        Rig again = new Rig(saved, saved.seed(), Observer.NONE);
        again.run();
        return again.digest();
    }

    @Test
    void theFileOfWhatHappenedRunsToTheSameBits() throws Exception {
        for (int seed = 1; seed <= 20; seed++) {
            Bench bench = BenchSamples.bench();
            play(bench, new SplitMix64(seed));
            assertEquals(bench.rig().digestIfEndedNow(), digestOfFile(bench), "seed " + seed);
            assertTrue(bench.acts() > 10);
        }
    }

    @Test
    void afterAResetTheNextClassHasAFreshRun() throws Exception {
        Bench bench = BenchSamples.bench();
        play(bench, new SplitMix64(3));
        long first = bench.rig().digestIfEndedNow();
        bench.reset();
        assertEquals(0, bench.rig().timeMillis());
        assertEquals(0, bench.acts());
        assertTrue(bench.book(0).ledger().entries().isEmpty());
        Bench other = BenchSamples.bench();
        play(bench, new SplitMix64(4));
        play(other, new SplitMix64(4));
        assertEquals(other.rig().digestIfEndedNow(), bench.rig().digestIfEndedNow());
        assertEquals(bench.rig().digestIfEndedNow(), digestOfFile(bench));
        assertNotEquals(first, bench.rig().digestIfEndedNow());
    }

    @Test
    void anActBeforeTheFirstTickIsPartOfTheStart() throws Exception {
        Bench bench = BenchSamples.bench();
        bench.set(Map.of("lamp", "off"));
        bench.set(Map.of("gauge.declare", "25 %"));
        assertEquals(
                0.25, bench.rig().lanes().get(0).read().stateOfChargePartsPerMillion / 1e6, 1e-4);
        bench.advanceTo(3_600_000);
        assertEquals(bench.rig().digestIfEndedNow(), digestOfFile(bench));
    }

    @Test
    void anActWaitsForTheNextTickAndTheSwitchShowsItAtOnce() throws Exception {
        Bench bench = BenchSamples.bench();
        bench.advanceTo(60_000);
        double before = bench.rig().truth().meanCurrentAmps();
        bench.set(Map.of("heater", "on"));
        assertTrue(bench.isWaiting());
        assertEquals(before, bench.rig().truth().meanCurrentAmps());
        Control heater = control(bench, "heater");
        assertEquals(1, bench.board().value(heater));
        bench.advanceTo(61_000);
        assertFalse(bench.isWaiting());
        assertEquals(before - 12.3 / 8, bench.rig().truth().meanCurrentAmps(), 0.1);
    }

    private static Control control(Bench bench, String key) {
        return bench.board().controls().stream()
                .filter(control -> control.key().equals(key))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aDrawnSliderIsOneActUntilTimeGoesOn() throws Exception {
        Bench bench = BenchSamples.bench();
        bench.advanceTo(60_000);
        for (int tenths = 1; tenths <= 30; tenths++) {
            bench.set(Map.of("lamp.current", tenths * 100 + " mA"));
        }
        assertEquals(1, bench.acts());
        bench.set(Map.of("gauge.power", "off"));
        bench.set(Map.of("gauge.power", "on"));
        assertEquals(3, bench.acts(), "off and on at one moment is a restart");
        bench.advanceTo(120_000);
        assertEquals(bench.rig().digestIfEndedNow(), digestOfFile(bench));
    }

    @Test
    void whatCannotBeDoneIsRefusedWithAReasonAndNothingIsDone() throws Exception {
        Bench bench = BenchSamples.bench();
        bench.advanceTo(60_000);
        ScenarioException unknown =
                assertThrows(ScenarioException.class, () -> bench.set(Map.of("lamb", "on")));
        assertTrue(unknown.render().contains("did you mean 'lamp'"), unknown.render());
        assertThrows(ScenarioException.class, () -> bench.set(Map.of("lamp.current", "-1 A")));
        assertThrows(
                ScenarioException.class,
                () -> bench.set(Map.of("lamp", "on}}, {at: 5 d, set: {lamp: off")));
        ScenarioException contradiction =
                assertThrows(
                        ScenarioException.class,
                        () -> bench.set(Map.of("gauge.empty-voltage", "14.9 V")));
        assertTrue(contradiction.render().contains("contradict"), contradiction.render());
        assertEquals(0, bench.acts());
    }

    @Test
    void theFileClaimsNothing() {
        Bench bench = BenchSamples.bench();
        bench.advanceTo(120_000);
        String text = bench.scenarioText();
        assertFalse(text.contains("expect:"), text);
        assertFalse(text.contains("covers:"), text);
        assertTrue(text.contains("Recorded live from bench.yaml with 0 acts"), text);
        assertTrue(text.contains("duration: 2 min"), text);
    }

    @Test
    void everyControlTakesBothEndsAndReadsBackWhatItWasGiven() throws Exception {
        Bench bench = BenchSamples.bench();
        bench.advanceTo(60_000);
        for (Control control : bench.board().controls()) {
            if (control.isSwitch()) {
                String[] words = control.range().unit().split("\\|", -1);
                for (int one = 1; one >= 0; one--) {
                    bench.set(Map.of(control.key(), words[1 - one]));
                    assertEquals(one, bench.board().value(control), control.key());
                }
                continue;
            }
            Control.Range range = control.range();
            for (long value : new long[] {range.minimum(), range.maximum()}) {
                bench.set(Map.of(control.key(), ControlText.of(control, value)));
                assertEquals(value, bench.board().value(control), control.key());
            }
            bench.set(Map.of(control.key(), ControlText.of(control, control.first())));
        }
    }
}
