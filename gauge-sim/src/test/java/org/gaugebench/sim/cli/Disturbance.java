package org.gaugebench.sim.cli;

import java.util.Map;
import org.snakeyaml.engine.v2.api.Dump;
import org.snakeyaml.engine.v2.api.DumpSettings;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

/**
 * One thing that is made different about a scenario, to see which of its claims notice.
 *
 * @param name for people
 * @param edit changes the scenario as a tree of maps, lists and plain values
 */
record Disturbance(String name, Edit edit) {
    /** A change of a scenario's tree. */
    interface Edit {
        /**
         * Changes it in place.
         *
         * @return false where there is nothing to change
         */
        boolean change(Map<String, Object> scenario);
    }

    /** The text with the change made, or null where it does not apply. */
    String applyTo(String resolved) {
        @SuppressWarnings("unchecked")
        Map<String, Object> tree =
                (Map<String, Object>)
                        new Load(LoadSettings.builder().build()).loadFromString(resolved);
        if (!edit.change(tree)) {
            return null;
        }
        return new Dump(DumpSettings.builder().build()).dumpToString(tree);
    }
}
