package org.gaugebench.sim.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** What the page's server refuses by a reason of its own, and how often and how long it serves. */
@Timeout(60)
class LiveServerLimitsTest {
    private static final String END = "\r\n\r\n";

    private final AtomicLong aheadNanos = new AtomicLong();
    private LiveServer server;

    @BeforeEach
    void open() throws IOException {
        server =
                new LiveServer(
                        BenchSamples.scenario(),
                        5,
                        0,
                        LessonShelf.NONE,
                        () -> System.nanoTime() + aheadNanos.get());
    }

    @AfterEach
    void close() {
        server.close();
    }

    private int port() {
        return URI.create(server.address()).getPort();
    }

    private Socket socket() throws IOException {
        Socket socket = new Socket(InetAddress.getLoopbackAddress(), port());
        socket.setSoTimeout(20_000);
        return socket;
    }

    /** Head of a request, up to the lines that a test adds. */
    private String head(String line) {
        return line + " HTTP/1.1\r\nHost: 127.0.0.1:" + port();
    }

    private String post(int length) {
        return head("POST /act")
                + "\r\nContent-Type: application/json\r\n"
                + Gate.TOKEN_HEADER
                + ": "
                + server.token()
                + "\r\nContent-Length: "
                + length;
    }

    /** The whole answer to what is sent byte by byte as given; the sender listens only then. */
    private String sent(String request) throws IOException {
        try (Socket socket = socket()) {
            socket.getOutputStream().write(request.getBytes(StandardCharsets.UTF_8));
            socket.getOutputStream().flush();
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private static int status(String answer) {
        return answer.isEmpty() ? -1 : Integer.parseInt(answer.split(" ", 3)[1]);
    }

    private static BufferedReader reader(Socket socket) throws IOException {
        return new BufferedReader(
                new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8));
    }

    /** Another address of this machine, such as its name in a network, leads to nobody. */
    @Test
    void itListensOnTheOneLoopbackAddressAlone() throws IOException {
        InetAddress beside = InetAddress.getByAddress(new byte[] {127, 0, 0, 2});
        try (Socket other = new Socket()) {
            InetSocketAddress door = new InetSocketAddress(beside, port());
            assertThrows(IOException.class, () -> other.connect(door, 2_000));
        }
        assertEquals(
                200, status(sent(head("GET /hello") + "\r\nConnection: close" + END)), "its own");
    }

    /** Our own address, but not by our own way to it, is another page's. */
    @Test
    void anOriginIsSchemeAndHostTogether() throws IOException {
        String own = "127.0.0.1:" + port();
        String closing = "\r\nConnection: close";
        for (String origin : new String[] {"https://" + own, "fileq//" + own, own}) {
            String answer = sent(head("GET /hello") + "\r\nOrigin: " + origin + closing + END);
            assertEquals(403, status(answer), origin);
        }
        String twice = "\r\nOrigin: http://" + own;
        assertEquals(403, status(sent(head("GET /hello") + twice + twice + closing + END)));
        assertEquals(200, status(sent(head("GET /hello") + twice + closing + END)));
    }

    /** A sender that listens only after its last byte hears why, and not a broken connection. */
    @Test
    void whoSendsTooMuchIsToldSoAfterwards() throws IOException {
        String answer = sent(post(3_000_000) + END + " ".repeat(3_000_000));
        assertEquals(413, status(answer), answer);
        assertTrue(answer.contains("at most 4096 bytes"), answer);
    }

    @Test
    void eachMessageThatCannotBeReadIsToldItsOwnReason() throws IOException {
        Map<String, String> reasons =
                Map.of(
                        "[]",
                        "it is no object",
                        "null",
                        "it is no object",
                        "\"step\"",
                        "it is no object",
                        "{\"act\":\"step\"",
                        "it is no JSON",
                        "{\"act\":{}}",
                        "no text, number, true or false",
                        "{\"act\":null}",
                        "no text, number, true or false",
                        "{\"act\":\"step\"} {}",
                        "something follows",
                        "{\"act\":\"" + "x".repeat(201) + "\"}",
                        "more than an act needs",
                        "{\"" + "x".repeat(201) + "\":1}",
                        "more than an act needs");
        for (Map.Entry<String, String> each : reasons.entrySet()) {
            String body = each.getKey();
            String answer = sent(post(body.length()) + END + body);
            assertEquals(400, status(answer), body);
            assertTrue(answer.contains(each.getValue()), body + " is told: " + answer);
        }
        StringBuilder many = new StringBuilder("{\"act\":\"set\"");
        for (int i = 0; i < 20; i++) {
            many.append(",\"k").append(i).append("\":1");
        }
        String body = many.append('}').toString();
        assertTrue(sent(post(body.length()) + END + body).contains("more than an act needs"));
    }

    /** However much happens: a window gets at most 60 updates in a second. */
    @Test
    void aWindowGetsAtMostSixtyUpdatesASecond() throws Exception {
        try (Socket socket = socket()) {
            socket.getOutputStream()
                    .write((head("GET /events?level=1") + END).getBytes(StandardCharsets.UTF_8));
            BufferedReader in = reader(socket);
            Thread busy =
                    new Thread(
                            () -> {
                                for (int i = 0; !Thread.interrupted(); i++) {
                                    server.player().setRevealed(i % 2 == 0);
                                    // Some thousand changes a second.
                                    LockSupport.parkNanos(200_000);
                                }
                            });
            busy.setDaemon(true);
            busy.start();
            try {
                frames(in, 1);
                long begin = System.nanoTime();
                int wanted = 40;
                frames(in, wanted);
                double seconds = (System.nanoTime() - begin) / 1e9;
                assertTrue(wanted / seconds <= 60, wanted + " updates in " + seconds + " s");
            } finally {
                busy.interrupt();
            }
        }
    }

    private static void frames(BufferedReader in, int wanted) throws IOException {
        for (int seen = 0; seen < wanted; ) {
            String line = in.readLine();
            assertFalse(line == null, "the stream ended");
            seen += line.startsWith("data: ") ? 1 : 0;
        }
    }

    /** The page stands, nobody does anything, and the window is gone all the same. */
    @Test
    void aWindowThatGoesIsNoticedWhileTheRunStands() throws Exception {
        try (Socket socket = socket()) {
            socket.getOutputStream()
                    .write((head("GET /events?level=1") + END).getBytes(StandardCharsets.UTF_8));
            frames(reader(socket), 1);
            assertEquals(1, server.windows());
        }
        // A heartbeat is sent every two seconds, and the second one meets the closed door.
        for (int i = 0; server.windows() > 0; i++) {
            assertTrue(i < 1_000, "still counted after 20 s");
            TimeUnit.MILLISECONDS.sleep(20);
        }
    }

    /** Every window hears that it is over, and does not go on trying. */
    @Test
    void everyWindowIsToldOfTheEnd() throws Exception {
        try (Socket first = socket();
                Socket second = socket()) {
            for (Socket each : new Socket[] {first, second}) {
                each.getOutputStream()
                        .write(
                                (head("GET /events?level=1") + END)
                                        .getBytes(StandardCharsets.UTF_8));
            }
            BufferedReader one = reader(first);
            BufferedReader two = reader(second);
            frames(one, 1);
            frames(two, 1);
            server.close();
            for (BufferedReader each : new BufferedReader[] {one, two}) {
                String line = each.readLine();
                while (line != null && !line.equals("event: end")) {
                    line = each.readLine();
                }
                assertEquals("event: end", line);
            }
        }
    }

    /** Whoever waits for the end hears that nobody has looked for half an hour. */
    @Test
    void theWaitingProgramEndsByItself() throws Exception {
        Thread waiting =
                new Thread(
                        () -> {
                            try {
                                server.awaitEnd();
                            } catch (InterruptedException e) {
                                Thread.currentThread().interrupt();
                            }
                        });
        waiting.setDaemon(true);
        waiting.start();
        waiting.join(1_500);
        assertTrue(waiting.isAlive(), "nothing has passed yet");
        aheadNanos.addAndGet(TimeUnit.MINUTES.toNanos(31));
        waiting.join(20_000);
        assertFalse(waiting.isAlive(), "31 minutes without a window");
    }
}
