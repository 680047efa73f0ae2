package org.gaugebench.sim.program;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * What a program started and left behind: its descendants, and where the system shows the
 * environment of processes ({@code /proc}) also those whose parent is gone. They bear the mark that
 * the program was started with.
 */
final class Leftovers {
    private static final Path PROCESSES = Path.of("/proc");

    private Leftovers() {}

    /** Kills them all. */
    static void kill(Process process, String mark) {
        List<ProcessHandle> found = new ArrayList<>(process.descendants().toList());
        // By its handle: the process itself would throw away what we have not read yet.
        process.toHandle().destroyForcibly();
        found.addAll(marked(mark));
        found.forEach(ProcessHandle::destroyForcibly);
        // Who was killed cannot start another one; who was started in between is found now.
        marked(mark).forEach(ProcessHandle::destroyForcibly);
    }

    private static List<ProcessHandle> marked(String mark) {
        List<ProcessHandle> found = new ArrayList<>();
        byte[] wanted = mark.getBytes(StandardCharsets.US_ASCII);
        try (DirectoryStream<Path> all = Files.newDirectoryStream(PROCESSES, "[0-9]*")) {
            for (Path each : all) {
                if (has(each.resolve("environ"), wanted)) {
                    ProcessHandle.of(Long.parseLong(each.getFileName().toString()))
                            .ifPresent(found::add);
                }
            }
        } catch (IOException e) {
            // No such folder on this system: the descendants are all that can be known.
        }
        return found;
    }

    private static boolean has(Path environment, byte[] wanted) {
        byte[] bytes;
        try {
            bytes = Files.readAllBytes(environment);
        } catch (IOException e) {
            return false; // another user's, or gone by now
        }
        for (int i = 0; i + wanted.length <= bytes.length; i++) {
            int same = 0;
            while (same < wanted.length && bytes[i + same] == wanted[same]) {
                same++;
            }
            if (same == wanted.length) {
                return true;
            }
        }
        return false;
    }
}
