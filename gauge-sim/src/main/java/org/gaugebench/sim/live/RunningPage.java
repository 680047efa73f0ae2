package org.gaugebench.sim.live;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.HttpURLConnection;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;

/** Finds out whether a page of ours listens already. */
public final class RunningPage {
    private static final int LONGEST_WAIT_MILLIS = 2_000;

    private RunningPage() {}

    /**
     * Asks whoever listens at a port of this machine.
     *
     * @return the title of what runs there; null where it is no page of ours, or nobody answers
     */
    public static @Nullable String titleAt(int port) {
        try {
            HttpURLConnection asked =
                    (HttpURLConnection)
                            URI.create("http://127.0.0.1:" + port + "/hello")
                                    .toURL()
                                    .openConnection();
            asked.setConnectTimeout(LONGEST_WAIT_MILLIS);
            asked.setReadTimeout(LONGEST_WAIT_MILLIS);
            try (BufferedReader in =
                    new BufferedReader(
                            new InputStreamReader(
                                    asked.getInputStream(), StandardCharsets.UTF_8))) {
                boolean ours = LiveRoutes.HELLO.equals(in.readLine());
                String title = ours ? in.readLine() : null;
                return title;
            } finally {
                asked.disconnect();
            }
        } catch (IOException e) {
            return null;
        }
    }
}
