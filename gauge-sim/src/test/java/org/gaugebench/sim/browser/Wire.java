package org.gaugebench.sim.browser;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * A wire between a browser and a server that a test can cut and mend. The browser's own switch for
 * "offline" leaves an open stream alone. In what the browser says the wire's port is replaced by
 * the server's, which has as many digits, so that the server finds itself addressed.
 */
public final class Wire implements AutoCloseable {
    private final ServerSocket door;
    private final int target;
    private final Set<Socket> ends = ConcurrentHashMap.newKeySet();
    private volatile boolean isCut;

    /**
     * Lays a wire to a server on this machine.
     *
     * @param target port of the server
     */
    public Wire(int target) throws IOException {
        this.target = target;
        this.door = doorLike(target);
        run(this::accept);
    }

    private static ServerSocket doorLike(int target) throws IOException {
        while (true) {
            ServerSocket door = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
            int digits = String.valueOf(door.getLocalPort()).length();
            if (digits == String.valueOf(target).length()) {
                return door;
            }
            door.close();
        }
    }

    /** Where the browser goes instead. */
    public int port() {
        return door.getLocalPort();
    }

    /** Every connection breaks, and none can be made. */
    public void cut() {
        isCut = true;
        ends.forEach(Wire::drop);
    }

    /** New connections get through again. */
    public void mend() {
        isCut = false;
    }

    private void accept() throws IOException {
        while (true) {
            Socket browser = door.accept();
            if (isCut) {
                drop(browser);
                continue;
            }
            Socket server = new Socket(InetAddress.getLoopbackAddress(), target);
            ends.add(browser);
            ends.add(server);
            run(() -> pump(browser, server, true));
            run(() -> pump(server, browser, false));
        }
    }

    private void pump(Socket from, Socket to, boolean isRequest) throws IOException {
        try (from;
                to) {
            InputStream in = from.getInputStream();
            OutputStream out = to.getOutputStream();
            byte[] bytes = new byte[65_536];
            for (int count = in.read(bytes); count >= 0; count = in.read(bytes)) {
                byte[] sent = java.util.Arrays.copyOf(bytes, count);
                if (isRequest) {
                    sent =
                            new String(sent, StandardCharsets.ISO_8859_1)
                                    .replace("127.0.0.1:" + port(), "127.0.0.1:" + target)
                                    .getBytes(StandardCharsets.ISO_8859_1);
                }
                out.write(sent);
                out.flush();
            }
        }
    }

    private interface Task {
        void run() throws IOException;
    }

    private static void run(Task task) {
        Thread thread =
                new Thread(
                        () -> {
                            try {
                                task.run();
                            } catch (IOException e) {
                                // The wire was cut, or the test is over.
                            }
                        },
                        "wire");
        thread.setDaemon(true);
        thread.start();
    }

    private static void drop(Closeable end) {
        try {
            end.close();
        } catch (IOException e) {
            // It was closed already.
        }
    }

    @Override
    public void close() {
        drop(door);
        cut();
    }
}
