package org.gaugebench.sim.live;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;

/** Writes one JSON text for the page. */
final class Json {
    private static final JsonFactory FACTORY = new JsonFactory();

    private Json() {}

    /** What writes the inside of an object. */
    interface Body {
        /** Writes fields. */
        void write(JsonGenerator json) throws IOException;
    }

    /** An object as text. */
    static String object(Body body) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = FACTORY.createGenerator(text)) {
            json.writeStartObject();
            body.write(json);
            json.writeEndObject();
        } catch (IOException e) {
            throw new UncheckedIOException("a string can be written", e);
        }
        return text.toString();
    }

    /** A figure rounded for the page; null where it is not known. */
    static void figure(JsonGenerator json, String name, double value, double places)
            throws IOException {
        json.writeFieldName(name);
        figure(json, value, places);
    }

    /**
     * Both edges of a band, rounded for the page outward, so that the band never looks narrower
     * than it is; null where there is none.
     *
     * @param places to one of the unit
     */
    static void band(JsonGenerator json, double lower, double upper, double places)
            throws IOException {
        // An edge that stands on a place but for the error of a double stays there.
        double least = 1e-6;
        figure(json, "lower", Math.floor(lower * places + least) / places, places);
        figure(json, "upper", Math.ceil(upper * places - least) / places, places);
    }

    /** The same as an element of a list. */
    static void figure(JsonGenerator json, double value, double places) throws IOException {
        if (Double.isNaN(value) || Double.isInfinite(value)) {
            json.writeNull();
        } else {
            json.writeNumber(Math.rint(value * places) / places);
        }
    }
}
