package org.gaugebench.sim.live;

/**
 * What a request is answered with.
 *
 * @param status of HTTP
 * @param type of the content
 * @param body the content
 * @param attachment name of the file that a browser is to save it as; empty to show it
 * @param isPaper whether it is a sheet to print, with its own style and without any script
 */
record Reply(int status, String type, String body, String attachment, boolean isPaper) {
    static Reply text(int status, String text) {
        return new Reply(status, "text/plain; charset=utf-8", text + "\n", "", false);
    }

    static Reply json(String json) {
        return new Reply(200, "application/json; charset=utf-8", json, "", false);
    }

    static Reply of(String type, String text) {
        return new Reply(200, type + "; charset=utf-8", text, "", false);
    }

    static Reply paper(String html) {
        return new Reply(200, "text/html; charset=utf-8", html, "", true);
    }

    static Reply file(String name, String text) {
        return new Reply(200, "application/yaml; charset=utf-8", text, name, false);
    }
}
