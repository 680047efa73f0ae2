package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** A folder with the invented log of the hut, and the command that adopts it. */
final class AdoptBench {
    Path log;
    Path out;

    AdoptBench(Path folder) throws IOException {
        log = Files.writeString(folder.resolve("Hut complaint.csv"), HutLog.csv(1));
        out = folder.resolve("tests").resolve("scenarios");
    }

    /** The written table. */
    String table() throws IOException {
        return Files.readString(out.resolve("hut-complaint.csv"));
    }

    void writeLog(String text) throws IOException {
        Files.writeString(log, text);
    }

    /** All that has to be told, changed as asked for: null takes an option away. */
    FakeTerminal adopt(int exitCode, String... changes) {
        Map<String, String> options = new LinkedHashMap<>();
        options.put("--time", "time_s");
        options.put("--current", "current_A");
        options.put("--positive", "charge");
        options.put("--uptime", "uptime_s");
        options.put("--gap-current", "before");
        options.put("--chemistry", "lead-acid-agm");
        options.put("--capacity", "60 Ah");
        options.put("--start", "70 %");
        options.put("--shunt", "50 A / 75 mV");
        List<String> flags = new ArrayList<>();
        for (int i = 0; i < changes.length; i += 2) {
            if (changes[i + 1].isEmpty()) {
                options.remove(changes[i]);
            } else if (changes[i + 1].equals("on")) {
                flags.add(changes[i]);
            } else {
                options.put(changes[i], changes[i + 1]);
            }
        }
        List<String> args =
                new ArrayList<>(List.of("adopt", log.toString(), "--out", out.toString()));
        options.forEach((key, value) -> args.addAll(List.of(key, value)));
        args.addAll(flags);
        FakeTerminal terminal = new FakeTerminal();
        int found = terminal.run(args.toArray(new String[0]));
        assertEquals(exitCode, found, terminal.out() + terminal.err());
        return terminal;
    }

    Path scenario() {
        return out.resolve("hut-complaint.yaml");
    }

    List<String> left() throws IOException {
        if (!Files.isDirectory(out)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(out)) {
            return files.map(it -> it.getFileName().toString()).sorted().toList();
        }
    }

    /** The figure in the second cell of a row. */
    static double second(String row) {
        return Double.parseDouble(row.replaceFirst("^[^,]*,([^,]*).*", "$1"));
    }

    static String digest(String printed) {
        return printed.replaceFirst("(?s).*digest +([0-9a-f]{16}).*", "$1");
    }
}
