package org.gaugebench.sim.cli;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;

/** Runs the program in this process and keeps what it printed. */
final class FakeTerminal {
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();
    private final boolean isTerminal;
    private final Map<String, String> environment;
    private final InputStream in;
    private final boolean canAnswer;

    FakeTerminal() {
        this(false, Map.of());
    }

    FakeTerminal(boolean isTerminal, Map<String, String> environment) {
        this(isTerminal, environment, InputStream.nullInputStream(), false);
    }

    private FakeTerminal(
            boolean isTerminal,
            Map<String, String> environment,
            InputStream in,
            boolean canAnswer) {
        this.isTerminal = isTerminal;
        this.environment = environment;
        this.in = in;
        this.canAnswer = canAnswer;
    }

    /** A terminal at which a person types these lines, and wants no colour. */
    static FakeTerminal answering(String lines) {
        InputStream typed = new ByteArrayInputStream(lines.getBytes(StandardCharsets.UTF_8));
        return new FakeTerminal(true, Map.of("NO_COLOR", "1"), typed, true);
    }

    int run(String... args) {
        Terminal terminal =
                new Terminal(
                        new PrintStream(out, true, StandardCharsets.UTF_8),
                        new PrintStream(err, true, StandardCharsets.UTF_8),
                        isTerminal,
                        isTerminal,
                        environment,
                        in,
                        canAnswer);
        return Main.execute(args, terminal);
    }

    /** Runs the program with a stream that fails in a way nobody foresaw. */
    int runBroken(String... args) {
        PrintStream broken =
                new PrintStream(out, true, StandardCharsets.UTF_8) {
                    @Override
                    public void print(String text) {
                        throw new IllegalStateException("a planted defect");
                    }
                };
        PrintStream errors = new PrintStream(err, true, StandardCharsets.UTF_8);
        return Main.execute(args, new Terminal(broken, errors, false, false, environment));
    }

    String out() {
        return out.toString(StandardCharsets.UTF_8);
    }

    String err() {
        return err.toString(StandardCharsets.UTF_8);
    }

    /** The folder that users see, wherever the tests run. */
    static Path scenarios() {
        Path here = Path.of("").toAbsolutePath();
        while (here != null && !Files.isDirectory(here.resolve("scenarios"))) {
            here = here.getParent();
        }
        if (here == null) {
            throw new IllegalStateException("no folder scenarios above the working directory");
        }
        return here.resolve("scenarios");
    }
}
