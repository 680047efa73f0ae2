package org.gaugebench.sim.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;

/** How every document for programs begins, so that one lying in a folder says what it is. */
final class JsonHead {
    private JsonHead() {}

    /**
     * Writes the first fields.
     *
     * @param json in a fresh object
     * @param command whose answer the document is, such as "size"
     * @param formatVersion grows when a key changes its meaning or goes
     * @param version of the program
     */
    static void write(JsonGenerator json, String command, int formatVersion, String version)
            throws IOException {
        json.writeNumberField("formatVersion", formatVersion);
        json.writeStringField("version", version);
        json.writeStringField("command", command);
    }
}
