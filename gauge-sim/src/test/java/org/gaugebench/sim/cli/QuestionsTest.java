package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.gaugebench.sim.scenario.Chemistry;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a person meets who is asked at a terminal. */
class QuestionsTest {
    private static final String SYSTEM =
            """
            12 V
            lifepo4
            40 Ah

            logger: 200 mA, 24 h

            5 A
            """;
    private static final String UNKNOWN_GAUGE = "\n\n\nnot known\nnot-known\n\nNot known\n\n";

    @TempDir private Path folder;

    @Test
    void whatIsBeyondALimitIsToldAtItsQuestion() {
        FakeTerminal terminal =
                FakeTerminal.answering(
                        """
                        12 V
                        LiFePO4
                        0 Ah
                        40 Ah

                        logger: 200 mA, 24 h
                        logger: 1 A, 1 h
                        kettle: 900 W, 5 min, inverter

                        -5 A
                        5 A
                        """);
        assertEquals(ExitCodes.OK, terminal.run("size"), terminal.err());
        String err = terminal.err();
        assertTrue(err.contains("  expected 0.1 Ah to 10000 Ah, but found '0 Ah'\n"), err);
        assertTrue(err.contains("  'logger' is there twice; expected another name"), err);
        assertTrue(err.contains("  the inverter is missing: what runs 'kettle'"), err);
        assertTrue(
                err.contains("  expected 0 A to 10000 A, such as \"20 A\", but found '-5 A'\n"),
                err);
        assertTrue(terminal.out().contains("logger 4.80 Ah"), terminal.out());
    }

    @Test
    void aGaugeIsJudgedAtItsQuestionsAndMayBeUnknown() {
        FakeTerminal terminal =
                FakeTerminal.answering(SYSTEM + "\n\n\n\n\n0 h\n99 h\n2 A\nnot known\n5 mA\n");
        assertEquals(ExitCodes.OK, terminal.run("ahead"), terminal.err());
        assertTrue(terminal.err().contains("  expected 1 h to 10000 h"), terminal.err());
        assertTrue(terminal.err().contains("  expected 0 A to 1 A, such as"), terminal.err());
        FakeTerminal unknown = FakeTerminal.answering(SYSTEM + UNKNOWN_GAUGE);
        assertEquals(ExitCodes.OK, unknown.run("ahead"), unknown.err());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "handover FOLDER/none/h.html",
                "handover FOLDER/h.html --source sun",
                "handover FOLDER/h.html --own-current 3",
                "verdict FOLDER/none.csv",
                "symptom --seen nothing",
                "symptom --notes FOLDER/none.csv",
                "size --usable 3",
                "ahead --load lamp",
            })
    void whatIsWrongBeforeTheFirstQuestionIsToldBeforeIt(String words) {
        FakeTerminal terminal = FakeTerminal.answering(SYSTEM + UNKNOWN_GAUGE);
        String[] all = words.replace("FOLDER", folder.toString()).split(" ", -1);
        assertEquals(ExitCodes.WRONG_INPUT, terminal.run(all));
        assertFalse(terminal.err().contains("Volts of the battery"), terminal.err());
        assertTrue(terminal.err().contains("expected"), terminal.err());
        assertFalse(Files.exists(folder.resolve("h.html")));
    }

    @Test
    void aSheetIsAskedForItsGaugeToo() throws Exception {
        Path sheet = folder.resolve("h.html");
        FakeTerminal terminal = FakeTerminal.answering(SYSTEM + "by-hand\n\n\n\n\n\n12 mA\n\n");
        assertEquals(ExitCodes.OK, terminal.run("handover", sheet.toString()), terminal.err());
        assertTrue(Files.readString(sheet).contains("12.0 mA"));
    }

    @Test
    void whoNamesNoSightIsAskedForIt() {
        FakeTerminal terminal =
                FakeTerminal.answering("it is dark\ndark-at-30-percent\n" + SYSTEM + UNKNOWN_GAUGE);
        assertEquals(ExitCodes.OK, terminal.run("symptom"), terminal.err());
        assertTrue(terminal.err().startsWith("What looks wrong: below-100-when-charged, "));
        assertTrue(terminal.out().startsWith("Look first at this"), terminal.out());
    }

    @Test
    void anEndOfTheAnswersStandsOnALineOfItsOwn() {
        FakeTerminal terminal = FakeTerminal.answering("12 V\n");
        assertEquals(ExitCodes.WRONG_INPUT, terminal.run("size"));
        assertTrue(
                terminal.err().contains("\nthe answers ended before the last question; expected"));
        assertEquals("", terminal.out());
    }

    @ParameterizedTest
    @EnumSource
    void everyKindOfBatteryIsNamedWhereOneIsAskedFor(Chemistry kind) {
        FakeTerminal help = new FakeTerminal();
        assertEquals(ExitCodes.OK, help.run("size", "--help"));
        assertTrue(help.out().contains(kind.key()), help.out());
        FakeTerminal asked = FakeTerminal.answering("12 V\n");
        asked.run("size");
        assertTrue(asked.err().contains(kind.key()), asked.err());
    }

    @Test
    void anOptionWithoutItsValueIsToldWithWhatBelongsThere() {
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(ExitCodes.WRONG_INPUT, terminal.run("size", "--usable"));
        assertEquals(
                "gauge-sim size: --usable needs a value behind it, PERCENT: part of it that you"
                        + " let be drawn, such as \"50 %\"\n"
                        + "'gauge-sim size --help' shows what there is.\n",
                terminal.err());
    }
}
