package org.gaugebench.sim.live;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Fault;
import org.gaugebench.sim.live.Player.View;

/** The account book and the list of events, as the page gets them, the newest first. */
final class BookJson {
    /** A microampere-hour: what a small offset books in an hour still shows. */
    private static final double PLACES = 1e6;

    private BookJson() {}

    /**
     * Both.
     *
     * @param gauge whose book, from 0
     */
    static String of(View view, int gauge) {
        return Json.object(
                json -> {
                    json.writeNumberField("run", view.runs());
                    json.writeNumberField("book", view.bench().book(gauge).revision());
                    entries(json, view, gauge);
                    events(json, view.bench().events());
                });
    }

    private static void entries(JsonGenerator json, View view, int gauge) throws IOException {
        BookKeeper book = view.bench().book(gauge);
        List<Entry> all = new ArrayList<>(book.ledger().entries());
        all.add(book.openEntry(view.bench().rig()));
        json.writeArrayFieldStart("entries");
        for (int i = all.size() - 1; i >= 0; i--) {
            entry(json, all.get(i), book.causes(), i == all.size() - 1, view.revealed());
        }
        json.writeEndArray();
    }

    private static void entry(
            JsonGenerator json, Entry entry, Causes causes, boolean open, boolean revealed)
            throws IOException {
        json.writeStartObject();
        json.writeNumberField("from", entry.fromMillis);
        json.writeNumberField("to", entry.toMillis);
        json.writeStringField("grain", open ? "open" : word(entry.grain));
        Json.figure(json, "gauge", entry.gauge, PLACES);
        Json.band(json, entry.lower, entry.upper, PLACES);
        if (revealed) {
            Json.figure(json, "truth", entry.truth, PLACES);
        }
        json.writeArrayFieldStart("lines");
        for (int cause = 0; cause < causes.count(); cause++) {
            boolean empty = entry.in[cause] < 1 / PLACES && entry.out[cause] < 1 / PLACES;
            if (empty || (causes.isSecret(cause) && !revealed)) {
                continue;
            }
            json.writeStartArray();
            json.writeString(causes.word(cause));
            Json.figure(json, entry.in[cause], PLACES);
            Json.figure(json, entry.out[cause], PLACES);
            json.writeEndArray();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void events(JsonGenerator json, EventList list) throws IOException {
        List<LiveEvent> events = list.events();
        json.writeNumberField("eventCount", list.count());
        json.writeArrayFieldStart("events");
        for (int i = events.size() - 1; i >= 0; i--) {
            LiveEvent it = events.get(i);
            Event event = it.event();
            json.writeStartObject();
            json.writeNumberField("number", it.number());
            json.writeNumberField("millis", it.millis());
            json.writeStringField("who", it.who());
            json.writeNumberField("value", it.value());
            LiveEvent.What what = it.what();
            if (what != null) {
                json.writeObjectFieldStart("what");
                json.writeStringField("target", what.target());
                json.writeStringField("control", what.control());
                json.writeStringField("name", what.name());
                json.writeStringField("text", what.text());
                json.writeEndObject();
            }
            if (event != null) {
                json.writeStringField("event", word(event));
                boolean fault = event == Event.FAULT_RAISED;
                if (fault && it.value() >= 0 && it.value() < Fault.values().length) {
                    json.writeStringField("fault", word(Fault.values()[(int) it.value()]));
                }
                json.writeBooleanField("warning", event.severity() == Event.Severity.WARNING);
            }
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
