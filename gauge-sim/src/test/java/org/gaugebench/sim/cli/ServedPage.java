package org.gaugebench.sim.cli;

import java.io.IOException;
import java.net.URI;
import org.gaugebench.sim.browser.BrowserExtension;
import org.gaugebench.sim.live.ClassShelf;
import org.gaugebench.sim.live.Hut;
import org.gaugebench.sim.live.LiveServer;
import org.gaugebench.sim.live.lessons.Words;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.extension.ExtendWith;

/** What tests of the live page in a browser begin with: a server of their own for each. */
@ExtendWith(BrowserExtension.class)
abstract class ServedPage {
    LiveServer server;
    URI page;

    @BeforeEach
    void serve() throws IOException {
        server = LiveServer.open(Hut.scenario(), 7, 0, new ClassShelf(Words.english()));
        page = URI.create(server.address());
    }

    @AfterEach
    void close() {
        server.close();
    }
}
