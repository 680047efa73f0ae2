package org.gaugebench.sim.program;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.locks.LockSupport;

/**
 * What a program started and left behind: its descendants, and where the system shows the
 * environment of processes ({@code /proc}) also those whose parent is gone. They bear the mark that
 * the program was started with.
 */
final class Leftovers {
    private static final Path PROCESSES = Path.of("/proc");

    /** A tenth of a second in all: long for a program to begin, short for who waits. */
    private static final int MOST_ROUNDS = 50;

    private static final long ROUND_NANOS = 2_000_000;

    private Leftovers() {}

    /** Kills them all. */
    static void kill(Process process, String mark) {
        List<ProcessHandle> found = new ArrayList<>(process.descendants().toList());
        // By its handle: the process itself would throw away what we have not read yet.
        process.toHandle().destroyForcibly();
        boolean isSure = killMarked(mark);
        found.forEach(ProcessHandle::destroyForcibly);
        // Who was killed cannot start another one; who was started in between is found now. And who
        // was just turning into another program showed no environment at that moment.
        isSure &= killMarked(mark);
        for (int round = 0; round < MOST_ROUNDS && !isSure; round++) {
            LockSupport.parkNanos(ROUND_NANOS);
            isSure = killMarked(mark);
        }
    }

    /** Kills who bears the mark, and answers whether each process here could be asked for it. */
    private static boolean killMarked(String mark) {
        boolean isSure = true;
        byte[] wanted = mark.getBytes(StandardCharsets.US_ASCII);
        try (DirectoryStream<Path> all = Files.newDirectoryStream(PROCESSES, "[0-9]*")) {
            for (Path each : all) {
                byte[] environment = read(each.resolve("environ"));
                if (has(environment, wanted)) {
                    ProcessHandle.of(Long.parseLong(each.getFileName().toString()))
                            .ifPresent(ProcessHandle::destroyForcibly);
                }
                isSure &= environment.length > 0 || !isProgram(each);
            }
        } catch (IOException e) {
            // No such folder on this system: the descendants are all that can be known.
        }
        return isSure;
    }

    /** Threads of the kernel and the dead run no file; they have no environment at any time. */
    private static boolean isProgram(Path process) {
        return Files.exists(process.resolve("exe"));
    }

    /** An environment; empty for another user's, and for one that is gone by now. */
    private static byte[] read(Path environment) {
        try {
            return Files.readAllBytes(environment);
        } catch (IOException e) {
            return new byte[0];
        }
    }

    private static boolean has(byte[] bytes, byte[] wanted) {
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
