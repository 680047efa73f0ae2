package org.gaugebench.sim.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import org.gaugebench.sim.report.Samples;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.Scenario;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The page's server: who is let in, what is refused, and that the bench goes on. */
@Timeout(60)
class LiveServerTest {
    /** Added to the machine's clock, so that half an hour passes at once. */
    private final AtomicLong aheadNanos = new AtomicLong();

    /** Asked for the time by a request, the clock then meets a defect. */
    private final AtomicBoolean isClockBroken = new AtomicBoolean();

    private final HttpClient client =
            HttpClient.newBuilder()
                    .version(HttpClient.Version.HTTP_1_1)
                    .connectTimeout(Duration.ofSeconds(10))
                    .build();

    private LiveServer server;

    @BeforeEach
    void open() throws IOException {
        server = new LiveServer(BenchSamples.scenario(), 5, 0, LessonShelf.NONE, this::nanos);
    }

    private long nanos() {
        if (isClockBroken.get()) {
            throw new IllegalStateException("a clock of this test");
        }
        return System.nanoTime() + aheadNanos.get();
    }

    @AfterEach
    void close() {
        server.close();
    }

    private HttpResponse<String> get(String path) throws Exception {
        URI uri = URI.create(server.address()).resolve(path);
        return client.send(
                HttpRequest.newBuilder(uri).build(), HttpResponse.BodyHandlers.ofString());
    }

    private HttpRequest.Builder post(String body) {
        return HttpRequest.newBuilder(URI.create(server.address()).resolve("/act"))
                .header(Gate.TOKEN_HEADER, server.token())
                .header("Content-Type", "application/json")
                .POST(HttpRequest.BodyPublishers.ofString(body));
    }

    private HttpResponse<String> send(HttpRequest.Builder request) throws Exception {
        return client.send(request.build(), HttpResponse.BodyHandlers.ofString());
    }

    private HttpResponse<String> act(String body) throws Exception {
        return send(post(body));
    }

    private long now() {
        return server.player().look(view -> view.bench().rig().timeMillis());
    }

    /** Status of a request that is sent byte by byte as given. */
    private int raw(String request) throws IOException {
        int port = URI.create(server.address()).getPort();
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
            socket.setSoTimeout(20_000);
            socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
            socket.getOutputStream().flush();
            String line = reader(socket).readLine();
            return line == null ? -1 : Integer.parseInt(line.split(" ", -1)[1]);
        }
    }

    private static BufferedReader reader(Socket socket) throws IOException {
        return new BufferedReader(
                new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8));
    }

    private void stillGoesOn() throws Exception {
        long before = now();
        assertEquals(200, act("{\"act\":\"step\"}").statusCode());
        assertEquals(before + 1_000, now());
    }

    @Test
    void aDefectIsToldAndTheBenchGoesOn() throws Exception {
        isClockBroken.set(true);
        HttpResponse<String> met = act("{\"act\":\"play\"}");
        isClockBroken.set(false);
        assertEquals(500, met.statusCode());
        assertEquals("a defect of this program; the bench goes on", met.body().strip());
        stillGoesOn();
    }

    @Test
    void thePageAndItsFilesAreServedAndLockedDown() throws Exception {
        for (String path :
                new String[] {
                    "/",
                    "/live.js",
                    "/chart.js",
                    "/book.js",
                    "/live.css",
                    "/look.css",
                    "/uplot.js",
                    "/uplot.css",
                    "/licence",
                    "/setup",
                    "/book",
                    "/words",
                    "/lessons"
                }) {
            HttpResponse<String> answer = get(path);
            assertEquals(200, answer.statusCode(), path);
            String policy = answer.headers().firstValue("Content-Security-Policy").orElse("");
            assertTrue(policy.contains("default-src 'none'"), path);
            assertFalse(policy.contains("unsafe"), path);
        }
        assertTrue(get("/").body().contains(server.token()));
        assertEquals(404, get("/secret").statusCode());
        assertEquals(404, get("/lesson/3").statusCode());
        assertEquals(404, get("/lesson/../x").statusCode());
    }

    @Test
    void anotherHostIsRefused() throws Exception {
        String port = ":" + URI.create(server.address()).getPort();
        assertEquals(200, raw("GET /hello HTTP/1.1\r\nHost: 127.0.0.1" + port + "\r\n\r\n"));
        assertEquals(200, raw("GET /hello HTTP/1.1\r\nHost: localhost" + port + "\r\n\r\n"));
        assertEquals(421, raw("GET /hello HTTP/1.1\r\nHost: evil.example" + port + "\r\n\r\n"));
        assertEquals(421, raw("GET /hello HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n"));
        assertEquals(421, raw("GET /hello HTTP/1.1\r\n\r\n"));
        stillGoesOn();
    }

    @Test
    void anotherOriginIsRefused() throws Exception {
        String own = server.address().substring(0, server.address().length() - 1);
        assertEquals(200, send(post("{\"act\":\"pause\"}").header("Origin", own)).statusCode());
        for (String foreign :
                new String[] {"http://evil.example", "null", own + "0", "https" + own}) {
            long before = now();
            assertEquals(
                    403,
                    send(post("{\"act\":\"step\"}").header("Origin", foreign)).statusCode(),
                    foreign);
            assertEquals(before, now());
        }
        HttpRequest.Builder blind =
                post("{\"act\":\"step\"}").header("Sec-Fetch-Site", "cross-site");
        assertEquals(403, send(blind).statusCode());
    }

    @Test
    void anActWithoutTheTokenOfThisStartIsRefused() throws Exception {
        for (String token : new String[] {"", "0".repeat(48)}) {
            HttpRequest.Builder request =
                    HttpRequest.newBuilder(URI.create(server.address()).resolve("/act"))
                            .header("Content-Type", "application/json")
                            .POST(HttpRequest.BodyPublishers.ofString("{\"act\":\"step\"}"));
            if (!token.isEmpty()) {
                request.header(Gate.TOKEN_HEADER, token);
            }
            assertEquals(403, send(request).statusCode());
        }
        assertEquals(0, now());
        assertEquals(415, send(post("{}").setHeader("Content-Type", "text/plain")).statusCode());
    }

    @Test
    void whatIsTooLargeOrMalformedIsRefusedAndTheBenchGoesOn() throws Exception {
        assertEquals(413, act("{\"act\":\"" + "x".repeat(5_000) + "\"}").statusCode());
        assertEquals(413, act(" ".repeat(3_000_000)).statusCode());
        for (String bad :
                new String[] {
                    "",
                    "{",
                    "[]",
                    "null",
                    "{\"act\":{}}",
                    "{\"act\":null}",
                    "{\"act\":\"step\"} {}",
                    "{\"act\":\"step\",\"act\":\"step\"}",
                    "{\"act\":\"fly\"}",
                    "{\"do\":\"step\"}",
                    "{\"act\":\"step\",\"more\":1}",
                    "{\"act\":\"speed\"}",
                    "{\"act\":\"reveal\",\"value\":\"perhaps\"}",
                    "{\"act\":\"" + "[".repeat(300) + "\"}"
                }) {
            HttpResponse<String> answer = act(bad);
            assertEquals(400, answer.statusCode(), bad);
            assertTrue(answer.body().contains("expected"), answer.body());
        }
        for (String wrong :
                new String[] {
                    "{\"act\":\"set\",\"lamb\":\"on\"}",
                    "{\"act\":\"set\",\"lamp.current\":\"1 V\"}",
                    "{\"act\":\"speed\",\"value\":\"NaN\"}",
                    "{\"act\":\"speed\",\"value\":-5}",
                    "{\"act\":\"run-to\",\"at\":\"noon\"}",
                    "{\"act\":\"command\",\"command\":\"explode\"}"
                }) {
            assertEquals(422, act(wrong).statusCode(), wrong);
        }
        assertEquals(
                405,
                send(post("").method("PUT", HttpRequest.BodyPublishers.noBody())).statusCode());
        assertEquals(400, get("/events?level=77").statusCode());
        assertEquals(409, get("/save").statusCode());
        stillGoesOn();
    }

    /** One window: a connection that takes server-sent events. */
    private final class Window implements AutoCloseable {
        private final BufferedReader in;

        Window(String lastEventId) throws Exception {
            HttpRequest.Builder request =
                    HttpRequest.newBuilder(URI.create(server.address()).resolve("/events?level=1"));
            if (!lastEventId.isEmpty()) {
                request.header("Last-Event-ID", lastEventId);
            }
            HttpResponse<InputStream> answer =
                    client.send(request.build(), HttpResponse.BodyHandlers.ofInputStream());
            assertEquals(200, answer.statusCode());
            in = new BufferedReader(new InputStreamReader(answer.body(), StandardCharsets.UTF_8));
        }

        /** The data of the next frame. */
        String frame() throws IOException {
            int heartbeats = 0;
            String line = in.readLine();
            while (line != null && !line.startsWith("data: ")) {
                // One comes every two seconds: a window that gets nothing else waits in vain.
                heartbeats += line.startsWith(":") ? 1 : 0;
                assertTrue(heartbeats < 5, "ten seconds without a frame");
                line = in.readLine();
            }
            return line == null ? "" : line.substring("data: ".length());
        }

        String frameWith(String part) throws IOException {
            String frame = frame();
            while (!frame.contains(part)) {
                assertNotEquals("", frame, "the stream ended without " + part);
                frame = frame();
            }
            return frame;
        }

        @Override
        public void close() throws IOException {
            in.close();
        }
    }

    @Test
    void aSecondWindowSeesTheSameRun() throws Exception {
        try (Window first = new Window("");
                Window second = new Window("")) {
            act("{\"act\":\"run-to\",\"at\":\"90 min\"}");
            first.frameWith("\"millis\":5400000");
            second.frameWith("\"millis\":5400000");
            act("{\"act\":\"set\",\"shore\":\"on\"}");
            first.frameWith("\"shore\":1");
            second.frameWith("\"shore\":1");
            assertEquals(2, server.windows());
        }
    }

    @Test
    void theTruthLeavesTheProgramOnlyWhenItIsRevealed() throws Exception {
        try (Window window = new Window("")) {
            act("{\"act\":\"run-to\",\"at\":\"90 min\"}");
            String hidden = window.frameWith("\"millis\":5400000");
            assertFalse(hidden.contains("\"truth\""));
            assertTrue(hidden.contains("[null,null,"), "the true line of the chart too");
            assertTrue(hidden.contains("\"error\":null"), "a figure and its error are the truth");
            assertFalse(get("/book").body().contains("\"truth\""));
            assertFalse(get("/book").body().contains("self-discharge"));
            act("{\"act\":\"reveal\",\"value\":true}");
            String shown = window.frameWith("\"revealed\":true");
            assertTrue(shown.contains("\"truth\""));
            assertFalse(shown.contains("\"error\":null"));
            assertFalse(shown.contains("[null,null,"), "all of the past");
            assertTrue(get("/book").body().contains("self-discharge"));
            act("{\"act\":\"reset\"}");
            window.frameWith("\"revealed\":false");
        }
    }

    @Test
    void aWindowThatComesBackGetsThePastThatItMissed() throws Exception {
        String frame;
        try (Window window = new Window("")) {
            act("{\"act\":\"run-to\",\"at\":\"1 h\"}");
            frame = window.frameWith("\"millis\":3600000");
        }
        act("{\"act\":\"run-to\",\"at\":\"3 h\"}");
        while (now() < 3 * 3_600_000) {
            TimeUnit.MILLISECONDS.sleep(5);
        }
        try (Window again = new Window("1.2")) {
            String first = again.frame();
            assertTrue(first.contains("\"first\":0"), first.substring(0, 200));
            assertTrue(first.split("\\],\\[", -1).length > 170, "three hours of minutes");
        }
        assertFalse(frame.isEmpty());
    }

    @Test
    void whatIsSavedRunsToTheSameDigest() throws Exception {
        act("{\"act\":\"run-to\",\"at\":\"2 h\"}");
        while (now() < 2 * 3_600_000) {
            TimeUnit.MILLISECONDS.sleep(5);
        }
        act("{\"act\":\"set\",\"lamp.current\":\"2.5 A\",\"gauge.power\":\"off\"}");
        act("{\"act\":\"step\"}");
        act("{\"act\":\"command\",\"command\":\"new-battery\"}");
        act("{\"act\":\"step\"}");
        HttpResponse<String> file = get("/save");
        assertTrue(
                file.headers().firstValue("Content-Disposition").orElse("").contains("attachment"));
        Scenario saved = Samples.scenario("saved.yaml", file.body());
        Rig again = new Rig(saved, saved.seed(), Observer.NONE);
        again.run();
        long digest = server.player().look(view -> view.bench().rig().digestIfEndedNow());
        assertEquals(digest, again.digest());
    }

    @Test
    void itEndsHalfAnHourAfterTheLastWindowClosed() throws Exception {
        long minute = TimeUnit.MINUTES.toNanos(1);
        Window window = new Window("");
        window.frame();
        aheadNanos.addAndGet(600 * minute);
        assertFalse(server.endIfIdle(), "a window is open");
        window.close();
        act("{\"act\":\"step\"}");
        while (server.windows() > 0) {
            TimeUnit.MILLISECONDS.sleep(20);
            act("{\"act\":\"step\"}");
        }
        aheadNanos.addAndGet(29 * minute);
        assertFalse(server.endIfIdle(), "29 minutes");
        aheadNanos.addAndGet(2 * minute);
        assertTrue(server.endIfIdle(), "31 minutes");
    }

    @Test
    void itEndsWhenSomebodyStopsIt() throws Exception {
        assertFalse(server.endIfIdle());
        assertEquals(200, act("{\"act\":\"stop\"}").statusCode());
        assertTrue(server.endIfIdle());
    }

    @Test
    void noMoreWindowsThanThereIsRoomFor() throws Exception {
        Window[] windows = new Window[16];
        for (int i = 0; i < windows.length; i++) {
            windows[i] = new Window("");
            windows[i].frame();
        }
        assertEquals(503, get("/events?level=1").statusCode());
        for (Window window : windows) {
            window.close();
        }
    }
}
