package org.gaugebench.sim.live;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.gaugebench.sim.live.form.SystemDesk;
import org.gaugebench.sim.scenario.Scenario;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The page on this machine. It listens on the loopback address alone, writes no file, and ends when
 * somebody stops it or when no window has looked for half an hour.
 */
public final class LiveServer implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(LiveServer.class);

    /** More windows than a class needs; each holds a thread. */
    private static final int MOST_WINDOWS = 16;

    /** Of a message that is too large so much is read away before it is refused. */
    private static final long MOST_SKIPPED = 8L << 20;

    /** So long the windows have to be told of the end; each is told within a frame. */
    private static final long LONGEST_FAREWELL_MILLIS = 1_000;

    /** Sheets to print carry their style and their picture in themselves, and no script. */
    private static final String PAPER =
            "default-src 'none'; style-src 'unsafe-inline'; img-src data:; frame-ancestors 'none'";

    private static final String LOCK_DOWN =
            "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self';"
                    + " img-src 'self' data:; base-uri 'none'; form-action 'none';"
                    + " frame-ancestors 'none'";

    /** The form sends itself to this server, whose gate wants to see from where. */
    private static final String FORM =
            LOCK_DOWN.replace("form-action 'none'", "form-action 'self'");

    static {
        // Seconds in which a request must be complete: a slow one would hold its thread.
        if (System.getProperty("sun.net.httpserver.maxReqTime") == null) {
            System.setProperty("sun.net.httpserver.maxReqTime", "10");
        }
    }

    private final Player player;
    private final Gate gate;
    private final LiveRoutes routes;
    private final Acts acts;
    private final IdleWatch idle;
    private final HttpServer server;
    private final ExecutorService threads;
    private final CountDownLatch over = new CountDownLatch(1);

    /**
     * Opens the page.
     *
     * @param scenario set up at its start
     * @param seed of every random stream
     * @param port on the loopback address; 0 for any free one
     * @param lessons where lessons come from
     * @throws IOException if the port cannot be had
     */
    public static LiveServer open(Scenario scenario, long seed, int port, LessonShelf lessons)
            throws IOException {
        return new LiveServer(scenario, seed, port, lessons, System::nanoTime);
    }

    LiveServer(Scenario scenario, long seed, int port, LessonShelf lessons, LongSupplier nanos)
            throws IOException {
        server =
                HttpServer.create(
                        new InetSocketAddress(
                                InetAddress.getByAddress(new byte[] {127, 0, 0, 1}), port),
                        0);
        gate = new Gate(server.getAddress().getPort());
        player = new Player(new Bench(scenario, seed), nanos);
        idle = new IdleWatch(nanos);
        routes = new LiveRoutes(player, lessons, gate);
        acts = new Acts(player, lessons, scenario, seed, over::countDown);
        threads =
                Executors.newCachedThreadPool(
                        task -> {
                            Thread thread = new Thread(task, "page");
                            thread.setDaemon(true);
                            return thread;
                        });
        server.setExecutor(threads);
        server.createContext("/", this::handle);
        server.start();
        player.start();
    }

    /** Where a browser finds it. */
    public String address() {
        return "http://127.0.0.1:" + server.getAddress().getPort() + "/";
    }

    /** Waits until somebody stops it or nobody has looked for too long. */
    public void awaitEnd() throws InterruptedException {
        while (!over.await(1, TimeUnit.SECONDS)) {
            endIfIdle();
        }
    }

    /** Ends if nobody has looked for too long. */
    boolean endIfIdle() {
        if (idle.isOver()) {
            over.countDown();
        }
        return over.getCount() == 0;
    }

    /** How many windows look at it. */
    int windows() {
        return idle.windows();
    }

    private void handle(HttpExchange exchange) throws IOException {
        try (exchange) {
            try {
                gate.checkSource(exchange.getRequestHeaders());
                answer(exchange);
            } catch (Refusal e) {
                send(exchange, Reply.text(e.status(), e.reason()));
            } catch (IOException e) {
                LOG.debug("a window went away", e);
            } catch (RuntimeException e) {
                LOG.warn("a request met a defect of this program", e);
                send(exchange, Reply.text(500, "a defect of this program; the bench goes on"));
            }
        }
    }

    private void answer(HttpExchange exchange) throws IOException, Refusal {
        String path = exchange.getRequestURI().getPath();
        switch (exchange.getRequestMethod()) {
            case "GET" -> {
                if (path.equals("/events")) {
                    stream(exchange, level(exchange.getRequestURI().getQuery()));
                } else {
                    send(exchange, routes.get(path));
                }
            }
            case "POST" -> {
                if (path.equals("/system/sheet")) {
                    // Written for an address, a character takes up to three.
                    send(exchange, routes.sheet(body(exchange, 3 * SystemDesk.LARGEST_MESSAGE)));
                    return;
                }
                boolean isForm = path.startsWith("/system/");
                if (!isForm && !path.equals("/act")) {
                    throw new Refusal(404, "acts go to /act");
                }
                gate.checkAct(exchange.getRequestHeaders());
                if (isForm) {
                    // On this request's own thread: the bench and other windows go on.
                    byte[] message = body(exchange, SystemDesk.LARGEST_MESSAGE);
                    send(exchange, routes.form(path, message));
                } else {
                    acts.take(Message.read(body(exchange, Gate.LARGEST_MESSAGE)));
                    send(exchange, Reply.json("{}"));
                }
            }
            default -> throw new Refusal(405, "expected GET, or POST to /act");
        }
    }

    private static int level(@Nullable String query) throws Refusal {
        if (query == null) {
            return 1;
        }
        if (!query.matches("level=[0-9]") || query.charAt(6) - '0' >= History.levels()) {
            throw new Refusal(400, "expected /events?level=0 to " + (History.levels() - 1));
        }
        return query.charAt(6) - '0';
    }

    private static byte[] body(HttpExchange exchange, int most) throws IOException, Refusal {
        InputStream in = exchange.getRequestBody();
        byte[] bytes = in.readNBytes(most + 1);
        if (bytes.length > most) {
            // A sender that is still sending would not hear the answer.
            skip(in);
            throw new Refusal(413, "a message has at most " + most + " bytes; this has more");
        }
        return bytes;
    }

    private static void skip(InputStream in) throws IOException {
        byte[] dropped = new byte[1 << 14];
        int read = in.read(dropped);
        for (long sum = 0; read >= 0 && sum < MOST_SKIPPED; sum += read) {
            read = in.read(dropped);
        }
    }

    private void stream(HttpExchange exchange, int level) throws IOException, Refusal {
        if (idle.windows() >= MOST_WINDOWS) {
            throw new Refusal(503, MOST_WINDOWS + " windows look already; close one");
        }
        idle.opened();
        try {
            guard(exchange.getResponseHeaders());
            exchange.getResponseHeaders().set("Content-Type", "text/event-stream; charset=utf-8");
            exchange.sendResponseHeaders(200, 0);
            try (OutputStream out = exchange.getResponseBody()) {
                new EventStream(player, level).sendTo(out);
            }
        } finally {
            idle.closed();
        }
    }

    private static void send(HttpExchange exchange, Reply reply) throws IOException {
        Headers headers = exchange.getResponseHeaders();
        guard(headers);
        if (exchange.getRequestURI().getPath().equals("/system")) {
            headers.set("Content-Security-Policy", FORM);
            headers.set("Referrer-Policy", "same-origin");
        }
        if (reply.isPaper()) {
            headers.set("Content-Security-Policy", PAPER);
        }
        headers.set("Content-Type", reply.type());
        if (!reply.attachment().isEmpty()) {
            headers.set("Content-Disposition", "attachment; filename=" + reply.attachment());
        }
        if (reply.status() >= 400) {
            // What is left of a message that is not read would be taken for the next one.
            headers.set("Connection", "close");
        }
        byte[] body = reply.body().getBytes(StandardCharsets.UTF_8);
        exchange.sendResponseHeaders(reply.status(), body.length);
        exchange.getResponseBody().write(body);
    }

    private static void guard(Headers headers) {
        headers.set("Cache-Control", "no-store");
        headers.set("Content-Security-Policy", LOCK_DOWN);
        headers.set("Cross-Origin-Resource-Policy", "same-origin");
        headers.set("Referrer-Policy", "no-referrer");
        headers.set("X-Content-Type-Options", "nosniff");
        headers.set("X-Frame-Options", "DENY");
    }

    @Override
    public void close() {
        over.countDown();
        player.close();
        idle.awaitNone(LONGEST_FAREWELL_MILLIS);
        server.stop(0);
        threads.shutdownNow();
    }

    /** What runs, for tests. */
    Player player() {
        return player;
    }

    /** The token of this start, for tests. */
    String token() {
        return gate.token();
    }
}
