package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import org.gaugebench.sim.live.ClassShelf;
import org.gaugebench.sim.live.Hut;
import org.gaugebench.sim.live.LiveServer;
import org.gaugebench.sim.live.lessons.Words;
import org.gaugebench.sim.report.Samples;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the terminal says where a page runs already. */
class LiveCommandTest {
    @TempDir Path folder;

    private static String told(LiveServer running, String... file) {
        String port = Integer.toString(URI.create(running.address()).getPort());
        String[] args = new String[4 + file.length];
        args[0] = "live";
        args[1] = "--no-browser";
        args[2] = "--port";
        args[3] = port;
        System.arraycopy(file, 0, args, 4, file.length);
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(0, terminal.run(args), terminal.err());
        return terminal.out().replace(":" + port + "/", ":N/");
    }

    @Test
    void aFileThatWasNotOpenedIsNamedWithWhatToDo() throws IOException {
        String file = Files.writeString(folder.resolve("w.yaml"), Samples.hut()).toString();
        try (LiveServer running =
                LiveServer.open(Hut.scenario(), 7, 0, new ClassShelf(Words.english()))) {
            String head =
                    """
                    A page runs already, with: %s
                    http://127.0.0.1:N/
                    """
                            .formatted(Hut.scenario().title());
            assertEquals(
                    head + "For a second one beside it: gauge-sim live --port 0\n", told(running));
            assertEquals(
                    head
                            + file
                            + " was not opened. To open it, stop that page first (its Stop, or"
                            + " Ctrl-C where it was started), then give this command again.\n"
                            + "For a second one beside it: gauge-sim live --port 0 "
                            + file
                            + "\n",
                    told(running, file));
        }
    }
}
