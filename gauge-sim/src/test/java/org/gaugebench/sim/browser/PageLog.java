package org.gaugebench.sim.browser;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.Logs;

/** What the browser wrote down about a page: complaints, and addresses that were asked for. */
final class PageLog {
    private static final ObjectMapper JSON = new ObjectMapper();

    private final Logs logs;
    private final List<String> complaints = new ArrayList<>();
    private final List<String> requests = new ArrayList<>();

    PageLog(Logs logs) {
        this.logs = logs;
    }

    void forget() {
        read();
        complaints.clear();
        requests.clear();
    }

    List<String> complaints() {
        read();
        return List.copyOf(complaints);
    }

    List<String> requests() {
        read();
        return List.copyOf(requests);
    }

    /** Errors and warnings both count: a page of ours has no reason for either. */
    private void read() {
        for (LogEntry entry : logs.get(LogType.BROWSER)) {
            if (entry.getLevel().intValue() >= java.util.logging.Level.WARNING.intValue()) {
                complaints.add(entry.getMessage());
            }
        }
        for (LogEntry entry : logs.get(LogType.PERFORMANCE)) {
            JsonNode message = parse(entry.getMessage()).path("message");
            if ("Network.requestWillBeSent".equals(message.path("method").asText())) {
                JsonNode params = message.path("params");
                String address = params.path("request").path("url").asText();
                boolean isThePage =
                        address.equals(params.path("documentURL").asText())
                                && "Document".equals(params.path("type").asText());
                // What lies inside the page is no request to anybody.
                if (!isThePage && !address.startsWith("data:") && !address.startsWith("blob:")) {
                    requests.add(address);
                }
            }
        }
    }

    private static JsonNode parse(String text) {
        try {
            return JSON.readTree(text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
