package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.gaugebench.sim.report.SvgLabels;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The lessons' page: each of its commands runs and draws the picture that is kept beside it, so
 * that a teacher sees on the page what the class sees on the screen. {@code -Dgolden.update=true}
 * draws the pictures anew.
 */
class LessonsTest {
    private static final Path LESSONS = FakeTerminal.scenarios().resolve("teaching");
    private static final int LARGEST_BYTES = 60_000;

    @TempDir Path folder;

    private static String page() throws IOException {
        return Files.readString(LESSONS.resolve("README.md"));
    }

    private static List<String> lessons() throws IOException {
        try (Stream<Path> files = Files.list(LESSONS)) {
            return files.map(it -> it.getFileName().toString())
                    .filter(it -> it.matches("\\d\\d-.*\\.yaml"))
                    .sorted()
                    .toList();
        }
    }

    /** The commands of the page as a shell would hand them over, without the program's name. */
    private static List<List<String>> commands() throws IOException {
        Matcher blocks =
                Pattern.compile(
                                "```\njava -jar gauge-sim/target/gauge-sim\\.jar (.*?)\n```",
                                Pattern.DOTALL)
                        .matcher(page());
        List<List<String>> commands = new ArrayList<>();
        while (blocks.find()) {
            commands.add(Arrays.asList(blocks.group(1).replace("\\\n", " ").split("\\s+", -1)));
        }
        return commands;
    }

    @Test
    void everyCommandOfThePageDrawsThePictureBesideIt() throws IOException {
        List<String> drawn = new ArrayList<>();
        for (List<String> command : commands()) {
            String name = Path.of(command.get(command.size() - 1)).getFileName().toString();
            drawn.add(name);
            Path picture = folder.resolve("lesson.svg");
            String[] args =
                    command.stream()
                            .map(it -> it.equals("lesson.svg") ? picture.toString() : it)
                            .map(it -> it.endsWith(name) ? LESSONS.resolve(name).toString() : it)
                            .toArray(String[]::new);
            FakeTerminal terminal = new FakeTerminal();
            assertEquals(0, terminal.run(args), name + terminal.out() + terminal.err());
            String svg =
                    Files.readString(picture)
                            .replace("gauge-sim " + Version.text() + "<", "gauge-sim 0.1.0<");
            Path kept = LESSONS.resolve("pictures").resolve(name.replace(".yaml", ".svg"));
            if (Boolean.getBoolean("golden.update")) {
                Files.writeString(kept, svg);
            }
            assertEquals(Files.readString(kept), svg, "-Dgolden.update=true rewrites " + kept);
            assertTrue(Files.size(kept) < LARGEST_BYTES, kept + " is too large for a page");
            assertEquals(List.of(), SvgLabels.troubles(svg), name);
        }
        assertEquals(lessons(), drawn);
    }

    @Test
    void thePageHasEveryLessonInOrderWithAllItsParts() throws IOException {
        String page = page();
        assertTrue(page.contains("Simulation only; no pupil opens a real battery system."));
        String[] sections = page.split("\n## ", -1);
        List<String> lessons = lessons();
        assertTrue(lessons.size() >= 12, lessons.toString());
        for (int i = 0; i < lessons.size(); i++) {
            String lesson = lessons.get(i);
            String section = sections[i + 1];
            assertTrue(section.startsWith(i + 1 + ". "), section);
            for (String part : List.of("\n*", "**Look at**", "**Answer.**", "/" + lesson)) {
                assertTrue(section.contains(part), lesson + " lacks " + part);
            }
            assertTrue(section.contains("(pictures/" + lesson.replace(".yaml", ".svg") + ")"));
            assertTrue(
                    page.matches(
                            "(?s).*\\| " + (i + 1) + " \\| \\[[^]]*\\]\\([^)]*\\) \\| \\d+ \\|.*"));
            String file = Files.readString(LESSONS.resolve(lesson));
            assertTrue(file.contains("# Question to the class: "), lesson);
        }
    }

    @Test
    void noPictureIsLeftOver() throws IOException {
        try (Stream<Path> files = Files.list(LESSONS.resolve("pictures"))) {
            assertEquals(
                    lessons().stream().map(it -> it.replace(".yaml", ".svg")).toList(),
                    files.map(it -> it.getFileName().toString()).sorted().toList());
        }
    }
}
