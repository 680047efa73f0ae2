package org.gaugebench.sim.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The addresses of "my system": who is let in, what is refused, and that the bench goes on. */
@Timeout(60)
class SystemRoutesTest {
    private static final String SIZE = "{\"question\":\"size\",\"system\":{\"my-system\":1}}";
    private static final String MONTH = SIZE.replace("size", "month");

    private final HttpClient client =
            HttpClient.newBuilder()
                    .version(HttpClient.Version.HTTP_1_1)
                    .connectTimeout(Duration.ofSeconds(10))
                    .build();

    private LiveServer server;

    @BeforeEach
    void open() throws IOException {
        server = LiveServer.open(BenchSamples.scenario(), 5, 0, LessonShelf.NONE);
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

    private HttpRequest.Builder post(String path, String body) {
        return HttpRequest.newBuilder(URI.create(server.address()).resolve(path))
                .header(Gate.TOKEN_HEADER, server.token())
                .header("Content-Type", "application/json")
                .POST(HttpRequest.BodyPublishers.ofString(body));
    }

    private HttpResponse<String> send(HttpRequest.Builder request) throws Exception {
        return client.send(request.build(), HttpResponse.BodyHandlers.ofString());
    }

    private void theBenchGoesOn() throws Exception {
        long before = now();
        assertEquals(200, send(post("/act", "{\"act\":\"step\"}")).statusCode());
        assertEquals(before + 1_000, now());
    }

    private long now() {
        return server.player().look(view -> view.bench().rig().timeMillis());
    }

    @Test
    void thePageIsServedWithItsWordsAndLockedDown() throws Exception {
        for (String path : List.of("/system", "/system.js", "/system-chart.js", "/system.css")) {
            HttpResponse<String> answer = get(path);
            assertEquals(200, answer.statusCode(), path);
            String policy = answer.headers().firstValue("Content-Security-Policy").orElse("");
            assertTrue(policy.contains("default-src 'none'"), path);
            assertFalse(policy.contains("unsafe"), path);
        }
        String html = get("/system").body();
        assertTrue(html.contains(server.token()));
        assertTrue(html.contains(">Amp-hours printed on it<"));
        assertTrue(get("/").body().contains("href=\"/system\""));
    }

    @Test
    void anAnswerIsGivenAndNothingIsKept() throws Exception {
        HttpResponse<String> answer = send(post("/system/answer", SIZE));
        assertEquals(200, answer.statusCode(), answer.body());
        assertTrue(answer.body().startsWith("{\"answer\":\"Take a shunt of"), answer.body());
        assertEquals("no-store", answer.headers().firstValue("Cache-Control").orElse(""));
        assertEquals(404, get("/system/answer").statusCode());
        theBenchGoesOn();
    }

    @Test
    void whoeverIsNotThePageIsRefused() throws Exception {
        HttpRequest.Builder foreign =
                post("/system/answer", SIZE).header("Origin", "http://evil.example");
        assertEquals(403, send(foreign).statusCode());
        for (String path : List.of("/system/answer", "/system/save", "/system/open")) {
            HttpRequest.Builder blind =
                    HttpRequest.newBuilder(URI.create(server.address()).resolve(path))
                            .header("Content-Type", "application/json")
                            .POST(HttpRequest.BodyPublishers.ofString(SIZE));
            assertEquals(403, send(blind).statusCode(), path);
        }
        HttpRequest.Builder text =
                post("/system/answer", SIZE).setHeader("Content-Type", "text/plain");
        assertEquals(415, send(text).statusCode());
        theBenchGoesOn();
    }

    @Test
    void whatIsTooLargeOrMalformedIsRefusedAndTheBenchGoesOn() throws Exception {
        assertEquals(413, send(post("/system/answer", " ".repeat(100_000))).statusCode());
        assertEquals(413, send(post("/system/open", " ".repeat(3_000_000))).statusCode());
        assertEquals(404, send(post("/system/else", SIZE)).statusCode());
        for (String bad :
                List.of("", "{", "[]", "null", "{}", "{\"question\":1}", SIZE + SIZE, "\u0000")) {
            assertEquals(400, send(post("/system/answer", bad)).statusCode(), bad);
            assertEquals(400, send(post("/system/save", bad)).statusCode(), bad);
            assertEquals(400, send(post("/system/open", bad)).statusCode(), bad);
        }
        // A form larger than an act fits; an act as large as a form does not.
        String rows = "{\"name\":\"" + "n".repeat(100) + "\"},";
        String large = "{\"system\":{\"my-system\":1,\"loads\":[%s{}]}}".formatted(rows.repeat(39));
        assertTrue(large.length() > Gate.LARGEST_MESSAGE);
        assertEquals(200, send(post("/system/save", large)).statusCode());
        assertEquals(413, send(post("/act", large)).statusCode());
        theBenchGoesOn();
    }

    /** More questions than cores: each is answered in its turn, and the bench steps meanwhile. */
    @Test
    void theBenchStepsWhileQuestionsAreWorkedOut() throws Exception {
        List<CompletableFuture<HttpResponse<String>>> asked = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            asked.add(
                    client.sendAsync(
                            post("/system/answer", MONTH).build(),
                            HttpResponse.BodyHandlers.ofString()));
        }
        theBenchGoesOn();
        for (CompletableFuture<HttpResponse<String>> each : asked) {
            assertEquals(200, each.get().statusCode());
        }
    }

    private HttpResponse<String> sheet(String body) throws Exception {
        return send(
                post("/system/sheet", body)
                        .setHeader("Content-Type", "application/x-www-form-urlencoded"));
    }

    @Test
    void theSheetWantsTheTokenOfThisStartAndCarriesNoScript() throws Exception {
        String system = "system=%7B%22my-system%22%3A1%7D";
        HttpResponse<String> answer = sheet("token=" + server.token() + "&" + system);
        assertEquals(200, answer.statusCode(), answer.body());
        assertTrue(answer.body().contains("The sheet of my system"));
        String policy = answer.headers().firstValue("Content-Security-Policy").orElse("");
        assertTrue(policy.contains("default-src 'none'") && !policy.contains("script"), policy);
        assertEquals(403, sheet(system).statusCode());
        assertEquals(403, sheet("token=0&" + system).statusCode());
        assertEquals(400, sheet("token=" + server.token() + "&system=%7").statusCode());
        assertEquals(400, sheet("token=" + server.token()).statusCode());
        assertEquals(413, sheet("x".repeat(400_000)).statusCode());
        HttpRequest.Builder foreign =
                post("/system/sheet", "token=" + server.token() + "&" + system)
                        .header("Origin", "null");
        assertEquals(403, send(foreign).statusCode());
        theBenchGoesOn();
    }
}
