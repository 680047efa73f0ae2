package org.gaugebench.sim.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.sim.random.SplitMix64;
import org.gaugebench.sim.report.ExplanationText;
import org.gaugebench.sim.report.Samples;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.Scenario;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Every printed line is worked out again from its printed integers alone, and what stands beside a
 * register's name is what the core holds in a run that nobody explained.
 */
class ExplainerTest {
    private static final int MOMENTS = 6;
    private static final long MINUTE_MILLIS = 60_000;

    /** Registers that any ordinary minute's end must recompute, not merely repeat. */
    private static final Set<Register> RECOMPUTED =
            EnumSet.of(
                    Register.UPTIME_MILLIS,
                    Register.CURRENT_MICROAMPS,
                    Register.VOLTAGE_MICROVOLTS,
                    Register.MINUTE_MEAN_MICROAMPS,
                    Register.CHARGE_NANOCOULOMBS,
                    Register.STATE_OF_CHARGE_PARTS_PER_MILLION,
                    Register.LOWER_EDGE_PARTS_PER_MILLION,
                    Register.UPPER_EDGE_PARTS_PER_MILLION,
                    Register.FILTERED_MICROAMPS_Q8,
                    Register.RULE_THRESHOLD_MICROVOLTS,
                    Register.SHOWN_MILLIAMPS);

    /** Ends a run that has been looked at. */
    private static final class Seen extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Seen() {
            super("seen", null, false, false);
        }
    }

    private static Scenario shelf(String file) throws IOException {
        return Samples.scenario(file, Files.readString(Path.of("../scenarios").resolve(file)));
    }

    private static String page(Scenario scenario, String gauge, long atMillis) {
        Explanation found = Explainer.of(scenario, scenario.seed(), gauge, atMillis);
        assertEquals(0, found.contradictions(), () -> gauge + " at " + atMillis);
        return ExplanationText.of(scenario, scenario.seed(), found);
    }

    /** The registers of that moment in a run of its own. */
    private static Map<Register, Long> registers(Scenario scenario, String gauge, long atMillis) {
        Map<Register, Long> held = new EnumMap<>(Register.class);
        Observer look =
                new Observer() {
                    @Override
                    public void onStart(Rig rig) {
                        onMoment(rig);
                    }

                    @Override
                    public void onMoment(Rig rig) {
                        if (rig.timeMillis() < atMillis) {
                            return;
                        }
                        for (Lane lane : rig.lanes()) {
                            if (lane.name().equals(gauge)) {
                                Registers seen = lane.inspect();
                                for (Register register : Register.values()) {
                                    held.put(register, seen.get(register));
                                }
                            }
                        }
                        throw new Seen();
                    }
                };
        Rig rig = new Rig(scenario, scenario.seed(), look);
        rig.stopAt(new long[] {atMillis});
        try {
            rig.run();
        } catch (Seen e) {
            // as meant: what comes after the moment is not asked for
        }
        return held;
    }

    /** Works every line out again; answers the registers that came out of a calculation. */
    private static Set<Register> check(Scenario scenario, String gauge, long atMillis) {
        String page = page(scenario, gauge, atMillis);
        Map<Register, Long> held = registers(scenario, gauge, atMillis);
        Set<Register> recomputed = EnumSet.noneOf(Register.class);
        for (PrintedPage.Line line : PrintedPage.of(page).lines()) {
            String where = line.label() + " at " + atMillis + " of " + scenario.name();
            if (!line.calculation().isEmpty()) {
                assertEquals(line.result(), ByHand.of(line.calculation()), where);
            }
            if (!line.register().isEmpty()) {
                Register register = Register.valueOf(line.register());
                assertEquals(held.get(register), Long.valueOf(line.result()), where);
                if (!line.calculation().isEmpty()) {
                    recomputed.add(register);
                }
            }
        }
        return recomputed;
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "first-steps/a-week-in-the-hut.yaml",
                "edge-cases/a-loop-that-stalls.yaml",
                "edge-cases/a-counter-that-wraps.yaml",
                "edge-cases/a-surge-beyond-the-range.yaml",
                "edge-cases/a-rest-that-sets-the-count-right.yaml",
                "edge-cases/what-a-change-of-settings-keeps.yaml",
                "edge-cases/two-days-without-power.yaml",
                "edge-cases/the-gauges-own-supply.yaml"
            })
    void everyLineCanBeWorkedOutAgain(String file) throws IOException {
        Scenario scenario = shelf(file);
        SplitMix64 random = new SplitMix64(20_261);
        for (int i = 0; i < MOMENTS; i++) {
            long at = Math.floorMod(random.nextLong(), scenario.durationMillis());
            for (String gauge : Explainer.gauges(scenario)) {
                check(scenario, gauge, i % 2 == 0 ? at : at / MINUTE_MILLIS * MINUTE_MILLIS);
            }
        }
    }

    /** Ticks of 7 s never meet a minute's end; a warm battery that loses charge inside. */
    private static Scenario oddTicks() {
        return Samples.read(
                """
                format: 1
                title: Odd ticks
                duration: 7 h
                tick: 7 s
                battery: {chemistry: lead-acid-agm, capacity: 40 Ah, start: 60 %,
                          temperature: 33 °C}
                sensor: {shunt: 100 A / 75 mV, converter: "20 bit, 100 mV"}
                gauge: {start: 60 %, self-discharge: 30 %/month, own-supply-current: 12 mA,
                  shunt-offset: 3 counts, kept-back-charge: 10 %}
                loads: {lamp: {current: 9 A}}
                chargers: {shore: {current-limit: 30 A, switched: off}}
                timeline:
                  - {at: 3 h, command: zero-adjustment}
                  - {from: 4 h, to: 5 h, set: {shore: on}}
                """);
    }

    @Test
    void aTickMayCrossTheMinute() {
        Scenario scenario = oddTicks();
        SplitMix64 random = new SplitMix64(7);
        for (int i = 0; i < 3 * MOMENTS; i++) {
            long at = Math.floorMod(random.nextLong(), scenario.durationMillis());
            check(scenario, "gauge", at / MINUTE_MILLIS * MINUTE_MILLIS + 1);
        }
    }

    @Test
    void aMinutesEndRecomputesWhatMatters() {
        Set<Register> recomputed = check(oddTicks(), "gauge", 2 * 3_600_000 + 21 * MINUTE_MILLIS);
        assertTrue(recomputed.containsAll(RECOMPUTED), recomputed.toString());
        assertTrue(recomputed.contains(Register.TIME_TO_EMPTY_MINUTES), recomputed.toString());
        assertTrue(recomputed.contains(Register.TIME_AT_THIS_LOAD_MINUTES));
    }

    @Test
    void thePlainSentenceComesFirst() throws IOException {
        Scenario scenario = shelf("first-steps/a-week-in-the-hut.yaml");
        String page = page(scenario, "gauge", 2 * 86_400_000L + 21 * 3_600_000 + 56 * 60_000);
        String first = page.lines().limit(2).reduce((a, b) -> a + " " + b).orElse("");
        assertEquals(
                "gauge shows 100.00 %, 98.14 % is true: 1.86 points too high. By its own word it"
                        + " is 96 to 100 % (19 times in 20), because: counted from a proven"
                        + " anchor.",
                first);
        assertTrue(page.contains("The gauge announced: set to full."), page);
        assertTrue(page.lines().allMatch(line -> line.length() <= 80), page);
    }

    @Test
    void withoutPowerThereIsNothingToWorkOut() throws IOException {
        Scenario scenario = shelf("edge-cases/two-days-without-power.yaml");
        long off =
                scenario.changes().stream()
                        .filter(change -> change.name().equals("gauge") && change.value() == 0)
                        .findFirst()
                        .orElseThrow()
                        .atMillis();
        Explanation found = Explainer.of(scenario, scenario.seed(), "gauge", off + MINUTE_MILLIS);
        assertTrue(found.sentence().contains("has no power and shows nothing"));
        assertTrue(found.sections().isEmpty());
    }

    @Test
    void theStartTellsOfTheFirstSampleAndOfWhatWasDeclared() {
        Scenario scenario = oddTicks();
        String page = page(scenario, "gauge", 0);
        assertTrue(page.contains("The first sample since power-up"), page);
        assertTrue(page.contains("declare-state-of-charge 600000: done"), page);
        assertTrue(page.contains("no whole minute since power-up"), page);
        check(scenario, "gauge", 0);
    }

    /** A command follows the sample of its moment, as in the run. */
    @Test
    void aCommandIsToldAfterTheSample() {
        String page = page(oddTicks(), "gauge", 3 * 3_600_000);
        int sample = page.indexOf("uA times ms are nC");
        int asked = page.indexOf("Asked in this moment: zero-adjustment");
        assertTrue(sample > 0 && asked > sample, page);
        assertFalse(page(oddTicks(), "gauge", 3 * 3_600_000 + 20_000).contains("Asked"));
    }

    @Test
    void onlyACoreOfTheScenarioIsExplained() {
        Scenario scenario = oddTicks();
        assertThrows(IllegalArgumentException.class, () -> Explainer.of(scenario, 1, "nobody", 0));
        assertThrows(
                IllegalArgumentException.class,
                () -> Explainer.of(scenario, 1, "gauge", scenario.durationMillis() + 1));
    }
}
