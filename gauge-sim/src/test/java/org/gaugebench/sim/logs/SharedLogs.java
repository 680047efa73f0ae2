package org.gaugebench.sim.logs;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;

/**
 * The measured logs. They stay outside the project; where {@code GAUGEBENCH_DATA} does not point to
 * their folder the tests that need them skip and say so.
 */
public final class SharedLogs {
    private SharedLogs() {}

    /** The folder; without one the calling test skips. */
    public static Path folder() {
        String folder = System.getenv("GAUGEBENCH_DATA");
        assumeTrue(
                folder != null && Files.isDirectory(Path.of(folder)),
                "skipped: GAUGEBENCH_DATA does not point to the folder of measured logs");
        return Path.of(folder);
    }

    /** A log with current, voltage and, where the file has it, temperature. */
    public static MeasuredLog read(String file, boolean temperature) {
        LogColumns columns =
                new LogColumns(
                        "time_s",
                        "current_A",
                        "voltage_V",
                        temperature ? "temperature_C" : null,
                        null);
        try {
            return LogReader.read(
                    folder().resolve(file), new LogOptions(columns, true, null, null));
        } catch (LogException e) {
            throw new AssertionError(e);
        }
    }
}
