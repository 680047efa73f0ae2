package org.gaugebench.sim.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** A folder of small scenarios on which the full-charge rule can be tuned within seconds. */
final class TuneBench {
    /** A charge that ends in a full battery, after a noon of weak sun that does not. */
    static final String SHORE =
            """
            format: 1
            title: A weak noon, and shore power in the evening
            duration: 1 d 12 h
            tick: 1 min
            battery: {chemistry: lead-acid-agm, capacity: 100 Ah, start: 75 %%, temperature: 15 °C}
            sensor: {shunt: 100 A / 75 mV}
            %schargers:
              panel:
                current-limit: 10 A
                sun: {peak: 4 A, sunrise: 9 h, sunset: 15 h, clouds: 20 %%}
              shore:
                {absorption: %s, float: %s, current-limit: 15 A, absorption-limit: none,
                 float-below: none, switched: off}
            loads: {logger: {current: 300 mA}}
            timeline: [{at: 18 h, set: {shore: on}}]
            """;

    private final Path folder;
    private String out = "";
    private String err = "";

    TuneBench(Path folder) {
        this.folder = folder;
        write("evening.yaml", shore("", "14.4 V", "13.5 V"));
        write(
                "cold.yaml",
                shore("", "14.4 V", "13.5 V").replace("15 °C", "2 °C").replace("75 %", "60 %"));
        write("noon.yaml", shore("", "14.4 V", "13.5 V").replaceAll("(?m)^timeline.*\n", ""));
    }

    /** The scenario with a gauge of its own, and a charger. */
    static String shore(String gauge, String absorption, String floating) {
        return SHORE.formatted(gauge, absorption, floating);
    }

    Path write(String name, String text) {
        try {
            Path file = folder.resolve(name);
            Files.createDirectories(file.getParent());
            return Files.writeString(file, text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    String read(String name) {
        try {
            return Files.readString(folder.resolve(name));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Everything that lies in the folder. */
    List<String> files() {
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(Files::isRegularFile)
                    .map(it -> folder.relativize(it).toString())
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Runs a command; words that begin with @ are files of the folder. */
    int run(String... words) {
        List<String> all = new ArrayList<>();
        for (String word : words) {
            all.add(word.startsWith("@") ? folder.resolve(word.substring(1)).toString() : word);
        }
        FakeTerminal terminal = new FakeTerminal();
        int code = terminal.run(all.toArray(new String[0]));
        out = terminal.out();
        err = terminal.err();
        return code;
    }

    String out() {
        return out;
    }

    String err() {
        return err;
    }

    /** What came out, on one line with single spaces. */
    String flat() {
        return out.replaceAll("\\s+", " ");
    }
}
