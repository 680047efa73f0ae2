package org.gaugebench.sim.live;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;

/**
 * Sends frames to one window as server-sent events. The first one holds the whole past that the
 * chart shows, so that a window that lost the connection needs nothing of what it missed.
 */
final class EventStream {
    /**
     * At most 30 frames a second: a window and the bench share few cores, and an eye sees no more.
     */
    private static final long SHORTEST_MILLIS = 33;

    /** A window that is gone is noticed when something is sent to it. */
    private static final long HEARTBEAT_MILLIS = 2_000;

    private static final byte[] HEARTBEAT = ": here\n\n".getBytes(StandardCharsets.UTF_8);

    private final Player player;
    private final int level;
    private long version;
    private int run;
    private boolean revealed;
    private long bucket = -1;

    EventStream(Player player, int level) {
        this.player = player;
        this.level = level;
    }

    /** Sends until the window is gone or the program ends. */
    void sendTo(OutputStream out) throws IOException {
        try {
            send(out, "retry: 1000\n\n");
            send(out, frame());
            while (!player.isClosed()) {
                Thread.sleep(SHORTEST_MILLIS);
                if (player.awaitNewer(version, HEARTBEAT_MILLIS)) {
                    send(out, frame());
                } else {
                    out.write(HEARTBEAT);
                    out.flush();
                }
            }
            send(out, "event: end\ndata: {}\n\n");
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static void send(OutputStream out, String text) throws IOException {
        out.write(text.getBytes(StandardCharsets.UTF_8));
        out.flush();
    }

    private String frame() {
        return player.look(
                view -> {
                    // What was hidden of the past comes with all of it.
                    if (view.runs() != run || view.revealed() != revealed) {
                        run = view.runs();
                        revealed = view.revealed();
                        bucket = -1;
                    }
                    String json = FrameJson.of(view, level, bucket);
                    version = view.version();
                    bucket = view.bench().history().last(level);
                    return "id: " + run + "." + version + "\nevent: frame\ndata: " + json + "\n\n";
                });
    }
}
