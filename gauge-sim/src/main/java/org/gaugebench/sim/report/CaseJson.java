package org.gaugebench.sim.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import org.gaugebench.sim.judge.Attribution;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.judge.ShelfCase;
import org.gaugebench.sim.scenario.ScenarioWriter;
import org.jspecify.annotations.Nullable;

/** One scenario of a list as one JSON object on one line, whether or not its run finished. */
public final class CaseJson {
    private static final JsonFactory FACTORY = new JsonFactory();

    private CaseJson() {}

    /**
     * Writes the object: that of {@link RunJson}, or a short one that says in {@code verdict} how
     * the run ended and in {@code why} the reason.
     *
     * @param each of a list
     * @param version of this program
     * @return one line without its line end
     */
    public static String of(ShelfCase each, String version) {
        return of(each, null, version);
    }

    /** The same with the error split by cause; null for without. */
    public static String of(ShelfCase each, @Nullable Attribution attribution, String version) {
        RunResult result = each.result();
        return result == null
                ? unfinished(each, version)
                : RunJson.of(result, attribution, version);
    }

    private static String unfinished(ShelfCase each, String version) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = FACTORY.createGenerator(text)) {
            json.writeStartObject();
            JsonHead.write(json, "run", RunJson.FORMAT_VERSION, version);
            json.writeStringField("scenario", each.scenario().file());
            json.writeStringField("variant", each.scenario().variant());
            json.writeStringField("title", each.scenario().title());
            json.writeStringField("scenarioDigest", ScenarioWriter.digest(each.scenario()));
            json.writeNumberField("seed", each.seed());
            json.writeStringField("verdict", each.verdictWords());
            json.writeStringField("why", each.why());
            json.writeEndObject();
        } catch (IOException impossible) {
            throw new UncheckedIOException("a string refused to be written", impossible);
        }
        return text.toString();
    }
}
