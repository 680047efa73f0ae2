package org.gaugebench.sim.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** A folder of files to try commands on, and what the last command said. */
class CommandFolder {
    private final Path folder;
    private String out = "";
    private String err = "";

    CommandFolder(Path folder) {
        this.folder = folder;
    }

    final Path write(String name, String text) {
        try {
            Path file = folder.resolve(name);
            Files.createDirectories(file.getParent());
            return Files.writeString(file, text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    final String read(String name) {
        try {
            return Files.readString(folder.resolve(name), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    final boolean exists(String name) {
        return Files.exists(folder.resolve(name));
    }

    /** Everything that lies in the folder. */
    final List<String> files() {
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
    final int run(String... words) {
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

    final String out() {
        return out;
    }

    final String err() {
        return err;
    }

    /** What came out, on one line with single spaces. */
    final String flat() {
        return out.replaceAll("\\s+", " ");
    }
}
