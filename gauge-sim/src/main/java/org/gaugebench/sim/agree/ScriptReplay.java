package org.gaugebench.sim.agree;

import java.util.function.BiFunction;
import java.util.function.UnaryOperator;
import org.gaugebench.core.port.StateStore;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.sim.device.CoreDevice;
import org.gaugebench.sim.device.GaugeDevice;
import org.gaugebench.sim.memory.SimulatedStore;
import org.jspecify.annotations.Nullable;

/** Plays a script to the core alone, for somebody who looks on. */
public final class ScriptReplay {
    private ScriptReplay() {}

    /**
     * Plays it to its end.
     *
     * @param script which
     * @param watchStore stands between the gauge and its memory
     * @param watch stands before the gauge of each life, told the settings that it was built with
     */
    public static void play(
            Script script,
            UnaryOperator<StateStore> watchStore,
            BiFunction<GaugeSettings, GaugeDevice, GaugeDevice> watch) {
        SimulatedStore memory = script.memory();
        @Nullable StateStore[] watched = {null};
        Player player =
                new Player(
                        script,
                        memory,
                        (settings, store, events) -> {
                            // One watcher over all lives.
                            StateStore known = watched[0];
                            StateStore seen = known == null ? watchStore.apply(store) : known;
                            watched[0] = seen;
                            return watch.apply(settings, new CoreDevice(settings, seen, events));
                        });
        for (Step step : script.steps()) {
            player.play(step);
        }
    }
}
