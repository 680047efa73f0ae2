package org.gaugebench.sim.agree;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.RuleReason;
import org.gaugebench.core.port.SmartBatteryWord;
import org.gaugebench.core.saved.SavedStateCodec;
import org.gaugebench.core.saved.SlotHeader;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.house.TopLevelRule;
import org.gaugebench.sim.device.CoreDevice;
import org.gaugebench.sim.device.JavaProgram;
import org.gaugebench.sim.device.PipeCommand;
import org.gaugebench.sim.device.PipeCore;
import org.gaugebench.sim.device.PlantedCore;
import org.gaugebench.sim.memory.SimulatedStore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Drawn sequences: that they reach what they should, find what is wrong, and are the same again.
 */
class AgreementTest {
    private static final long SHRINK_MILLIS = 60_000;

    /** As many scripts as .ci/agree plays in a second; each is drawn from seed 1. */
    private static final int SCRIPTS = 60;

    private static final int FORGED_SCRIPTS = 12;
    private static final int FORGED_SLOTS = 3;

    private static PipeCommand planted(String what, String figure) {
        return JavaProgram.of(
                PlantedCore.class, what, figure, "form frames", "batch 1024", "restart message");
    }

    private static Agreement.Result agree(PipeCommand command, long scripts, int threads)
            throws InterruptedException {
        return Agreement.of(command, 1, 0, scripts, threads, SHRINK_MILLIS, (done, of) -> {});
    }

    @Test
    void drawnSequencesReachEveryEventAndEveryReasonOfTheFullRule() {
        Set<Event> events = EnumSet.noneOf(Event.class);
        Map<Event, Integer> times = new EnumMap<>(Event.class);
        long reasons = 0;
        for (int i = 0; i < SCRIPTS; i++) {
            Script script = ScriptMaker.draw(1, i, Agreement.SCRIPT_TICKS);
            Player player =
                    new Player(
                            script,
                            script.memory(),
                            (settings, store, sink) ->
                                    new CoreDevice(
                                            settings,
                                            store,
                                            (event, uptimeMillis, value) -> {
                                                events.add(event);
                                                times.merge(event, 1, Integer::sum);
                                                sink.onEvent(event, uptimeMillis, value);
                                            }));
            for (Step step : script.steps()) {
                if (step instanceof Step.Power) {
                    // What this life has seen is gone with it.
                    reasons |= player.registers().get(Register.RULE_REASONS_SEEN);
                }
                player.play(step);
                if (!(step instanceof Step.Tick) && player.hasPower()) {
                    // Two reasons stand there without having been judged.
                    reasons |= 1L << player.registers().get(Register.RULE_REASON);
                }
            }
            reasons |= player.registers().get(Register.RULE_REASONS_SEEN);
        }
        Set<RuleReason> missing = EnumSet.noneOf(RuleReason.class);
        for (RuleReason each : RuleReason.values()) {
            if ((reasons & each.bit()) == 0) {
                missing.add(each);
            }
        }
        Set<Event> silent = EnumSet.complementOf(EnumSet.copyOf(events));
        System.out.println("times that each event came: " + times);
        assertEquals(EnumSet.noneOf(Event.class), silent);
        assertEquals(EnumSet.noneOf(RuleReason.class), missing);
    }

    /** A process for each life takes its digest with it: the core begins anew as well. */
    @ParameterizedTest
    @ValueSource(strings = {"restart process", "restart message"})
    void aProgramThatIsTheCoreAgreesHoweverItIsRestarted(String restart) {
        PipeCommand command = JavaProgram.of(PipeCore.class, "form frames", "batch 1024", restart);
        Script drawn = forgedLives(2);
        assertEquals(null, Duel.first(drawn, command));
    }

    /** One wrong count in a life that ends before the next look: only its digest knows of it. */
    @Test
    void aLifeThatEndsBetweenTwoLooksIsLookedAt() {
        PipeCommand command =
                JavaProgram.of(PlantedCore.class, "tick", "3", "form frames", "batch 1024");
        List<Step> steps = new ArrayList<>();
        for (int life = 0; life < 2; life++) {
            steps.add(new Step.Power(OffTime.EXACT, 0));
            // The second has no third tick, and so nothing of its own that is wrong.
            for (int tick = 0; tick < (life == 0 ? 10 : 2); tick++) {
                steps.add(new Step.Tick(0, 20_000, 20_000, tick * 100));
            }
        }
        GaugeSettings settings = GaugeSettings.builder().build();
        Script script = new Script(settings, 0, 0, 1, List.of(), steps);
        Difference found = Duel.first(script, command);
        assertNotNull(found);
        assertEquals(3, found.tick());
    }

    /** Its registers are right: that it says so spares a search for a register that is not. */
    @Test
    void aDigestThatIsFoldedOtherwiseIsToldAsThat() {
        PipeCommand command =
                JavaProgram.of(PlantedCore.class, "digest", "40", "form frames", "batch 1024");
        Difference found = Duel.first(ScriptMaker.draw(1, 0, 100), command);
        assertNotNull(found);
        assertEquals(Duel.FOLDED_OTHERWISE, found.what());
        assertEquals(40, found.tick());
        assertTrue(found.registers().stream().noneMatch(Difference.Pair::differs));
    }

    @Test
    void aWrongWordOfTheBusViewIsNamed() {
        PipeCommand command =
                JavaProgram.of(
                        PlantedCore.class,
                        "word",
                        String.valueOf(SmartBatteryWord.MAX_ERROR_CODE),
                        "form frames",
                        "batch 1024",
                        "restart message");
        Difference found = Duel.first(ScriptMaker.draw(1, 0, 100), command);
        assertNotNull(found);
        assertEquals(
                List.of("bus-word-0x0c"),
                found.registers().stream()
                        .filter(Difference.Pair::differs)
                        .map(Difference.Pair::name)
                        .toList());
    }

    /** M7: what the sequences put into memories is both taken and refused, often enough. */
    @Test
    void forgedRecordsAreTakenAndRefused() {
        int taken = 0;
        int refused = 0;
        for (int i = 0; i < SCRIPTS; i++) {
            Script script = ScriptMaker.draw(1, i, Agreement.SCRIPT_TICKS);
            for (Step step : script.steps()) {
                if (step instanceof Step.Forge forge) {
                    SimulatedStore memory = new SimulatedStore(2, 256, 1);
                    Forger.put(forge, memory, script.settings());
                    byte[] record = Arrays.copyOf(memory.bytesOf(forge.slot() % 2), 224);
                    SlotHeader header = new SlotHeader();
                    SavedStateCodec.inspect(record, header);
                    assertTrue(header.isValid(), "its check word is right");
                    boolean isTaken = SavedStateCodec.isPlausible(record);
                    taken += isTaken ? 1 : 0;
                    refused += isTaken ? 0 : 1;
                }
            }
        }
        assertTrue(taken >= 10 && refused >= 5, taken + " taken, " + refused + " refused");
    }

    @Test
    void whatIsFoundDoesNotDependOnTheNumberOfThreads() throws InterruptedException {
        PipeCommand command = planted("over", "500000");
        Agreement.Result one = agree(command, 8, 1);
        Agreement.Result two = agree(command, 8, 2);
        // All eight differ, and a second thread may find the second one first.
        assertEquals(0, one.bad());
        assertEquals(one.bad(), two.bad());
        assertEquals(one.ticks(), two.ticks());
        assertEquals(one.drawnTicks(), two.drawnTicks());
        assertEquals(one.found(), two.found());
    }

    @Test
    void aPlantedDifferenceIsShrunkToAFewSteps() throws InterruptedException {
        Agreement.Result result = agree(planted("over", "1000"), 1, 1);
        Script shrunk = result.shrunk();
        assertNotNull(shrunk);
        assertTrue(result.drawnTicks() > 10, "there is something to shrink");
        // Power, and a tick with so many counts.
        assertTrue(shrunk.steps().size() <= 3, shrunk.steps()::toString);
    }

    private static int run(String... words) throws InterruptedException {
        try {
            Process process =
                    new ProcessBuilder(words)
                            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                            .redirectError(ProcessBuilder.Redirect.INHERIT)
                            .start();
            process.getOutputStream().close();
            assertTrue(process.waitFor(5, TimeUnit.MINUTES), words[0] + " hangs");
            return process.exitValue();
        } catch (IOException e) {
            return -1;
        }
    }

    /**
     * The C twin under the sanitizers of addresses and of undefined behaviour, which end it at the
     * first signed overflow: on sequences each life of which begins with a forged record (M7).
     */
    @Test
    void noRecordWhateverHarmsTheCoreInC() throws InterruptedException {
        assumeTrue(
                run("make", "--version") == 0 && run("gcc", "--version") == 0,
                "the C twin is not tested under sanitizers: make and gcc are needed");
        Path core = TopLevelRule.projectRoot().resolve("gauge-core");
        Path out = core.resolve("target/c-sanitized");
        int made =
                run(
                        "make",
                        "-s",
                        "-C",
                        core.resolve("c").toString(),
                        "CC=gcc",
                        "OUT=" + out,
                        "CFLAGS=-O1 -g -fsanitize=address,undefined -fno-sanitize-recover=all",
                        "LDFLAGS=-fsanitize=address,undefined");
        assumeTrue(made == 0, "the C twin is not tested under sanitizers: gcc has none here");
        List<String> words = List.of(out.resolve("gauge-twin").toString());
        PipeCommand command = new PipeCommand("twin", words, 20_000);
        for (int i = 0; i < FORGED_SCRIPTS; i++) {
            Difference found = Duel.first(forgedLives(i), command);
            assertEquals(null, found);
        }
    }

    /** Lives of some hundred ticks, each on a record that nobody's gauge wrote. */
    private static Script forgedLives(int number) {
        Script drawn = ScriptMaker.draw(7, number, 4_000);
        Dice dice = new Dice(number);
        List<Step> steps = new ArrayList<>();
        for (int i = 0; i < drawn.steps().size(); i++) {
            steps.add(drawn.steps().get(i));
            if (i % 300 == 299) {
                steps.add(Forger.draw(dice, drawn.settings(), FORGED_SLOTS));
                steps.add(new Step.Power(dice.of(OffTime.values()), dice.ofAnySize(1L << 61)));
            }
        }
        return new Script(drawn.settings(), FORGED_SLOTS, 256, 1, List.of(), steps);
    }

    @Test
    void theCoreInCAgreesOverTwoHundredThousandTicks() throws InterruptedException {
        String compiler = run("gcc", "--version") == 0 ? "gcc" : "cc";
        assumeTrue(
                run("make", "--version") == 0 && run(compiler, "--version") == 0,
                "the C twin is not tested: make and a C compiler are needed");
        Path core = TopLevelRule.projectRoot().resolve("gauge-core");
        Path out = core.resolve("target/c-agree");
        int made =
                run(
                        "make",
                        "-s",
                        "-C",
                        core.resolve("c").toString(),
                        "CC=" + compiler,
                        "OUT=" + out);
        assertEquals(0, made);
        List<String> words = List.of(out.resolve("gauge-twin").toString());
        Agreement.Result result = agree(new PipeCommand("twin", words, 20_000), 10, 2);
        assertEquals(-1, result.bad(), () -> String.valueOf(result.found()));
        assertTrue(result.ticks() >= 200_000, "ticks " + result.ticks());
    }
}
