package org.gaugebench.sim.live;

import java.nio.charset.StandardCharsets;

/**
 * What a request is answered with.
 *
 * @param status of HTTP
 * @param type of the content
 * @param body the content
 * @param attachment name of the file that a browser is to save it as; empty to show it
 */
record Reply(int status, String type, byte[] body, String attachment) {
    static Reply text(int status, String text) {
        return new Reply(status, "text/plain; charset=utf-8", bytes(text + "\n"), "");
    }

    static Reply json(String json) {
        return new Reply(200, "application/json; charset=utf-8", bytes(json), "");
    }

    static Reply of(String type, String text) {
        return new Reply(200, type + "; charset=utf-8", bytes(text), "");
    }

    static Reply file(String name, String text) {
        return new Reply(200, "application/yaml; charset=utf-8", bytes(text), name);
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
