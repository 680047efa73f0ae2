package org.gaugebench.sim.scenario;

import java.util.List;

/**
 * What a scenario is filed under. Nothing here changes what is simulated or how it is judged.
 *
 * @param tags words to choose scenarios by, such as "winter"; in file order, none twice
 * @param covers what the scenario is evidence for: numbers of rules or of catalogue cases, or
 *     requirement numbers of the user's own; in file order, none twice
 * @param symptom what the owner of the system would notice, in one line; may be empty
 */
public record Marks(List<String> tags, List<String> covers, String symptom) {
    /** A scenario filed under nothing. */
    public static final Marks NONE = new Marks(List.of(), List.of(), "");
}
