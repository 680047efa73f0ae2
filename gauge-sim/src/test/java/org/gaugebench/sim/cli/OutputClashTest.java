package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.gaugebench.sim.live.lessons.Words;
import org.gaugebench.sim.report.Samples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;

/** No command writes over what it reads, or two files into one place. */
class OutputClashTest {
    /** Options and parameters that name a file which is read; "" is a parameter of any name. */
    private static final Set<String> READ =
            Set.of("", "--log", "--notes", "--requirements", "--words");

    @TempDir private Path folder;
    private CommandFolder bench;

    @BeforeEach
    void write() {
        bench = new StudyBench(folder);
        bench.write("hut.yaml", Samples.hut());
        bench.write("deep/er/hut.yaml", Samples.hut());
        bench.write("log.csv", "time_s,current_A,voltage_V\n0,1,12\n1,1,12\n");
        bench.write("own.csv", "number,text\nA1,It holds.\n");
        bench.write("part.rows", "no rows yet\n");
        bench.write("my-gauge", "#!/bin/sh\n");
    }

    private List<String> before() {
        List<String> all = new ArrayList<>();
        for (String file : bench.files()) {
            all.add(file + ": " + bench.read(file));
        }
        return all;
    }

    private void assertRefused(String message, String... words) {
        List<String> before = before();
        assertEquals(ExitCodes.WRONG_INPUT, bench.run(words), bench.err());
        assertTrue(bench.err().contains(message), bench.err());
        assertEquals("", bench.out());
        assertEquals(before, before());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "run @hut.yaml --trace @hut.yaml",
                "run @hut.yaml --junit @hut.yaml",
                "run @hut.yaml --picture @hut.yaml",
                "run @hut.yaml --report @hut.yaml",
                "run @hut.yaml --dump @hut.yaml",
                "run @hut.yaml --device @my-gauge --trace @my-gauge",
                "run @hut.yaml @deep --junit @deep/er/hut.yaml",
                "run @deep/**/*.yaml --junit @deep/er/hut.yaml",
                "run @hut.yaml --trace @deep/../hut.yaml",
                "run @deep/../hut.yaml --trace @hut.yaml",
                "run @hut.yaml --trace @not-there/../hut.yaml",
                "covers @hut.yaml --csv @hut.yaml",
                "covers @hut.yaml --requirements @own.csv --csv @own.csv",
                "covers @hut.yaml --requirements @own.csv --html @own.csv",
                "tune @hut.yaml --out @hut.yaml",
                "tune @hut.yaml --picture @hut.yaml",
                "study @hours.study --csv @hours.study",
                "study @hours.study --devices-csv @hours.study",
                "study @hours.study --picture @hours.study",
                "study @hours.study --report @hours.study",
                "study @hours.study --shard 1/2 --rows @hours.study",
                "study merge @hours.study @part.rows --csv @part.rows",
                "study merge @hours.study @part.rows --report @hours.study",
                "replay @log.csv --trace @log.csv --time time_s --current current_A"
                        + " --voltage voltage_V --positive charge --capacity 2Ah --adc 20bit,100mV"
                        + " --shunt 20A/60mV",
            })
    void whatIsReadIsNotWrittenOver(String command) {
        String[] words = command.split(" ", -1);
        assertRefused(" is read by this command too, and what is in it would be lost;", words);
        assertTrue(bench.err().matches("(?s)--[a-z-]+: /.*; expected another name, such as .*"));
    }

    @Test
    void everyWayToTheSameFileCounts() throws IOException {
        Files.createSymbolicLink(folder.resolve("link.yaml"), folder.resolve("hut.yaml"));
        Files.createLink(folder.resolve("hard.yaml"), folder.resolve("hut.yaml"));
        Files.createSymbolicLink(folder.resolve("beside"), folder.resolve("deep"));
        for (String way : List.of("@link.yaml", "@hard.yaml", "@./hut.yaml")) {
            assertRefused("--trace: ", "run", "@hut.yaml", "--trace", way);
            assertRefused("--trace: ", "run", way, "--trace", "@hut.yaml");
        }
        assertRefused("--junit: ", "run", "@deep", "--junit", "@beside/er/hut.yaml");
    }

    @Test
    void theMessageSaysWhichFileWhyAndWhatElse() {
        assertRefused(
                ("--trace: %s is read by this command too, and what is in it would be lost;"
                                + " expected another name, such as week.csv\n")
                        .formatted(folder.resolve("hut.yaml")),
                "run",
                "@hut.yaml",
                "--trace",
                "@hut.yaml");
        bench.write("week.csv", "a log\n");
        assertRefused(
                "expected another name, such as new-week.csv\n",
                "replay",
                "@week.csv",
                "--trace",
                "@week.csv",
                "--shunt=20 A/60 mV",
                "--adc=20 bit, 100 mV",
                "--capacity=2 Ah",
                "--time=time_s",
                "--current=current_A",
                "--positive=charge");
    }

    @Test
    void twoFilesDoNotGoIntoOnePlace() throws IOException {
        assertRefused(
                ("--report: %s is what --picture writes too, and one of the two would be lost;"
                                + " expected another name, such as week.html\n")
                        .formatted(folder.resolve("a.html")),
                "run",
                "@hut.yaml",
                "--picture",
                "@a.html",
                "--report",
                "@a.html");
        Files.createSymbolicLink(folder.resolve("beside"), folder.resolve("deep"));
        for (String way : List.of("@deep/er/../a.x", "@deep/./a.x", "@beside/a.x")) {
            String[] words = {"run", "@hut.yaml", "--junit", way, "--trace", "@deep/a.x"};
            assertRefused(" writes too, and one of the two would be lost", words);
        }
        for (String command :
                List.of("study @hours.study", "study merge @hours.study @part.rows")) {
            String both = command + " --csv @a.csv --devices-csv @a.csv";
            assertRefused("--devices-csv: ", both.split(" ", -1));
        }
    }

    @Test
    void aTranslationInTheFolderOfTheSheetsStays() {
        String words = Words.english().fileText();
        bench.write("class/english.words", words.replaceFirst("(?m)^(\\S+ +).*", "$1Le texte"));
        assertRefused("--words: ", "sheets", "@class", "--words", "@class/english.words");
        assertTrue(
                bench.err()
                        .endsWith(
                                " is written anew by this command, and what is in it would be lost;"
                                        + " expected a file of another name, such as"
                                        + " our-language.words\n"),
                bench.err());
    }

    @Test
    void whatIsDoneForTheFirstOrSecondTimeIsNoClash() {
        String[] words = {"run", "@hut.yaml", "--trace", "@hut.csv", "--junit", "@hut.xml"};
        for (int time = 1; time <= 2; time++) {
            assertEquals(ExitCodes.OK, bench.run(words), bench.err());
        }
        assertEquals(ExitCodes.OK, bench.run("run", "--help", "@hut.yaml", "--trace", "@hut.yaml"));
        assertTrue(bench.out().startsWith("Run scenarios"), bench.out());
    }

    /** A new option that names a file has to be put on one side. */
    @Test
    void everyFileOfEveryCommandIsKnownAsReadOrWritten() {
        Set<String> unknown = new TreeSet<>();
        Set<String> written = new TreeSet<>();
        Set<String> read = new TreeSet<>();
        List<CommandLine> commands = new ArrayList<>(Main.commands().getSubcommands().values());
        for (int i = 0; i < commands.size(); i++) {
            commands.addAll(commands.get(i).getSubcommands().values());
            for (ArgSpec each : commands.get(i).getCommandSpec().args()) {
                boolean isFile = List.of(each.auxiliaryTypes()).contains(Path.class);
                if (isFile && !OutputClash.FOLDERS.contains(each.paramLabel())) {
                    String name = each instanceof OptionSpec option ? option.longestName() : "";
                    boolean isWritten = OutputClash.WRITTEN.containsKey(name);
                    (isWritten ? written : READ.contains(name) ? read : unknown).add(name);
                }
            }
        }
        assertEquals(Set.of(), unknown);
        assertEquals(OutputClash.WRITTEN.keySet(), written);
        assertEquals(READ, read);
    }
}
