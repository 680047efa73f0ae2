package org.gaugebench.sim.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A small scenario and a study of it in a folder of their own. */
final class StudyBench {
    static final String SCENARIO =
            """
            format: 1
            title: Some hours at the pier
            duration: 5 h
            tick: 1 min
            battery:
              chemistry: lifepo4
              capacity: 100 Ah
              start: 90 %
              self-discharge: 0 %/month
            sensor: {shunt: 100 A / 75 mV, noise: 0 uV}
            loads:
              logger: {current: 1 A}
            """;
    static final String STUDY =
            """
            format: 1
            title: What do some hours do?
            scenario: hours.yaml
            devices: 60
            every: 1 h
            tolerances:
              sensor.offset: {rectangular: [-75 uV, 75 uV]}
              sensor.shunt-error: {class: 0.5}
              battery.temperature: {normal: 20 °C, standard-uncertainty: 5 K}
            """;

    private final Path folder;
    private String out = "";
    private String err = "";

    StudyBench(Path folder) {
        this.folder = folder;
        write("hours.yaml", SCENARIO);
        write("hours.study", STUDY);
    }

    Path write(String name, String text) {
        try {
            return Files.writeString(folder.resolve(name), text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    String read(String name) {
        try {
            return Files.readString(folder.resolve(name), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    boolean exists(String name) {
        return Files.exists(folder.resolve(name));
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
