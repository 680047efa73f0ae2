package org.gaugebench.sim.device;

import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.gaugebench.core.Gauge;

/** A main class of the tests as a program of its own, run by the JVM of the tests. */
public final class JavaProgram {
    private static final long ANSWER_MILLIS = 20_000;

    private JavaProgram() {}

    /** How to start it, with a time to answer that a busy machine meets. */
    public static PipeCommand of(Class<?> main, String... args) {
        return of(ANSWER_MILLIS, main, args);
    }

    /** The same with another time to answer. */
    public static PipeCommand of(long answerMillis, Class<?> main, String... args) {
        List<String> words = new ArrayList<>();
        words.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        // Small and quick to start.
        words.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Xshare:auto"));
        words.addAll(List.of("-cp", classPath(main)));
        words.add(main.getName());
        words.addAll(List.of(args));
        return new PipeCommand(main.getSimpleName(), words, answerMillis);
    }

    private static String classPath(Class<?> main) {
        return Stream.of(main, ReadoutField.class, Gauge.class)
                .map(JavaProgram::place)
                .distinct()
                .collect(Collectors.joining(System.getProperty("path.separator")));
    }

    private static String place(Class<?> of) {
        try {
            return Path.of(of.getProtectionDomain().getCodeSource().getLocation().toURI())
                    .toString();
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }
}
