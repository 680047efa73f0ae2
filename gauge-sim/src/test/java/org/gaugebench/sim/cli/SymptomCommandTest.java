package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.gaugebench.sim.advice.Seen;
import org.gaugebench.sim.advice.TroubleCause;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class SymptomCommandTest {
    @TempDir private Path folder;

    private static int run(FakeTerminal terminal, String... more) {
        List<String> all =
                new ArrayList<>(List.of("symptom", "--voltage", "12 V", "--chemistry", "lifepo4"));
        all.addAll(List.of("--capacity", "40 Ah", "--load", "logger: 200 mA, 24 h"));
        all.addAll(List.of(more));
        return terminal.run(all.toArray(new String[0]));
    }

    @ParameterizedTest
    @EnumSource
    void eachSightHasAnAnswer(Seen seen) {
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(ExitCodes.OK, run(terminal, "--seen", seen.key()), terminal.err());
        assertTrue(terminal.out().startsWith("Look first at this, 1 of "), terminal.out());
    }

    /** By hand: 12 mA over 24 h are 0.288 Ah, of 40 Ah 0.72 %. */
    @Test
    void whatIsToldStandsBeforeExamples() {
        FakeTerminal terminal = new FakeTerminal();
        run(terminal, "--seen", "dark-at-30-percent", "--own-current", "12 mA");
        String out = terminal.out();
        int told = out.indexOf("not counted: 0.72 points a day");
        int example = out.indexOf("6.00 points a day");
        assertTrue(told > 0 && told < example, out);
    }

    @ParameterizedTest
    @EnumSource
    void eachCauseHasItsScenarioOnTheShelf(TroubleCause cause) throws IOException {
        try (Stream<Path> files = Files.walk(Path.of("..", "scenarios"))) {
            assertTrue(files.anyMatch(it -> it.endsWith(cause.scenario() + ".yaml")));
        }
    }

    @Test
    void wrongNotesAreAllTold() throws IOException {
        Path file =
                Files.writeString(
                        folder.resolve("n.csv"),
                        "time,shown,word\n0,90,\n12,much,\n12,80,flat\nnoon,70,\n");
        FakeTerminal terminal = new FakeTerminal();
        int code = run(terminal, "--notes", file.toString(), "--own-current", "3");
        assertEquals(ExitCodes.WRONG_INPUT, code);
        String err = terminal.err();
        assertTrue(err.contains("n.csv:3:4: 'much' is not a number"), err);
        assertTrue(err.contains("n.csv:4:7: 'flat' is no word known here; expected one of"), err);
        assertTrue(err.contains("n.csv:5:1: "), err);
        assertTrue(err.contains("--own-current"), err);
    }

    @Test
    void aHeaderAndTooFewNotesAreTold() throws IOException {
        Path file = Files.writeString(folder.resolve("n.csv"), "when,shown\n0,90\n");
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(ExitCodes.WRONG_INPUT, run(terminal, "--notes", file.toString()));
        assertTrue(terminal.err().contains("n.csv:1:1: no such column 'when'"), terminal.err());
        Files.writeString(file, "time,shown\n0,90\n");
        FakeTerminal few = new FakeTerminal();
        assertEquals(ExitCodes.WRONG_INPUT, run(few, "--notes", file.toString()));
        assertTrue(few.err().contains("1 note says too little; expected four"), few.err());
    }

    @Test
    void oneOfTheTwoIsNeeded() {
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(ExitCodes.WRONG_INPUT, run(terminal));
        assertTrue(terminal.err().contains("expected either --seen or --notes"), terminal.err());
    }
}
