package org.gaugebench.sim.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.gaugebench.sim.agree.Agreement;
import org.gaugebench.sim.agree.Script;
import org.gaugebench.sim.device.PipeCommand;
import org.gaugebench.sim.report.AgreementText;
import org.gaugebench.sim.report.VectorWriter;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code agree}: whether a program does exactly what the core does, on anything. */
@Command(
        name = "agree",
        header = "Draw sequences by chance and find where a program differs from the core.",
        description = {
            "",
            "For ports of the core: settings, loads, chargers, nonsense, commands, faults of memory"
                    + " and cuts of power are drawn, and played to both. A difference is shrunk to"
                    + " the shortest sequence that still shows it. One seed gives one list of"
                    + " sequences.",
            ""
        },
        optionListHeading = "Options:%n",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            " 0:no difference",
            " 1:they differ",
            " 2:wrong command line",
            " 3:the program cannot be started or does not say hello",
            "70:a defect of this program"
        },
        footerHeading = "%nExample:%n",
        footer = {"  gauge-sim agree --device gauge-core/target/c/gauge-twin --ticks 1000000"})
final class AgreeCommand implements Callable<Integer> {
    private static final long SHRINK_MILLIS = 60_000;
    private static final long MOST_TICKS = 1_000_000_000_000L;

    private final Terminal terminal;

    @Mixin private final DeviceOptions device = new DeviceOptions();

    @Option(
            names = "--ticks",
            defaultValue = "1000000",
            paramLabel = "N",
            description =
                    "how many, in sequences of "
                            + Agreement.SCRIPT_TICKS
                            + " (default: ${DEFAULT-VALUE})")
    private long ticks;

    @Option(
            names = "--seed",
            defaultValue = "1",
            paramLabel = "N",
            description = "of the list of sequences (default: ${DEFAULT-VALUE})")
    private long seed;

    @Option(
            names = "--first",
            defaultValue = "0",
            paramLabel = "N",
            description = "number of the first sequence (default: ${DEFAULT-VALUE})")
    private long first;

    @Option(
            names = "--threads",
            paramLabel = "N",
            description = "sequences at once (default: one for each processor)")
    private @Nullable Integer threads;

    @Option(
            names = "--vectors",
            paramLabel = "DIR",
            description = "where a difference is found, write test vectors that show it")
    private @Nullable Path vectors;

    @Mixin
    @SuppressWarnings("unused") // the parser reads it
    private final HelpOption help = new HelpOption();

    AgreeCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InputException, InterruptedException {
        PipeCommand command = device.tryOut();
        if (command == null) {
            throw new InputException(
                    "--device is missing: the program that is held against the core; expected for"
                            + " instance --device ./my-gauge");
        }
        Integer wanted = threads;
        int count = wanted == null ? Runtime.getRuntime().availableProcessors() : wanted;
        if (ticks < 1 || ticks > MOST_TICKS || first < 0 || count < 1 || count > 1_000) {
            throw new InputException(
                    "expected --ticks from 1 to %s, --first from 0, --threads from 1 to 1000, such"
                                    .formatted(MOST_TICKS)
                            + " as --ticks 1000000");
        }
        long scripts = (ticks + Agreement.SCRIPT_TICKS - 1) / Agreement.SCRIPT_TICKS;
        Agreement.Result result = play(command, scripts, count);
        terminal.out().print(AgreementText.of(result));
        terminal.out().flush();
        if (result.bad() < 0) {
            return ExitCodes.OK;
        }
        write(result);
        return ExitCodes.FAILED;
    }

    private Agreement.Result play(PipeCommand command, long scripts, int count)
            throws InterruptedException {
        if (!terminal.errIsTerminal()) {
            return Agreement.of(
                    command, seed, first, scripts, count, SHRINK_MILLIS, (done, of) -> {});
        }
        ProgressLine line = new ProgressLine(terminal.err());
        Agreement.Result result =
                Agreement.of(
                        command,
                        seed,
                        first,
                        scripts,
                        count,
                        SHRINK_MILLIS,
                        (done, of) -> draw(line, done, of));
        line.clear();
        return result;
    }

    private static void draw(ProgressLine line, long done, long of) {
        synchronized (line) {
            line.draw(String.format(Locale.ROOT, "%,d of %,d ticks", done, of));
        }
    }

    private void write(Agreement.Result result) throws InputException {
        Script script = result.shrunk();
        Path folder = vectors;
        if (folder == null || script == null) {
            return;
        }
        try {
            Files.createDirectories(folder);
            try (VectorWriter writer = new VectorWriter(folder, "gauge", Long.MAX_VALUE)) {
                long rows = writer.run(script);
                writer.keep();
                terminal.out().print("%s: %d rows that show it\n".formatted(folder, rows));
                terminal.out().flush();
            }
        } catch (IOException | UncheckedIOException e) {
            throw new InputException(
                    "--vectors: cannot write to %s: %s; expected a folder such as vectors"
                            .formatted(folder, FileTrouble.words(e)));
        }
    }
}
