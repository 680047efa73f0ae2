package org.gaugebench.sim.agree;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.saved.SavedField;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.sim.memory.CutPlan.Manner;

/** One thing that happens to a gauge. */
public sealed interface Step {
    /**
     * A reading of the converters.
     *
     * @param shuntCounts signed counts of the shunt converter
     * @param voltageCounts counts of the voltage converter
     * @param temperatureMillicelsius or {@code Sample.TEMPERATURE_ABSENT}
     * @param clockMillis the raw 32-bit counter
     */
    record Tick(int shuntCounts, int voltageCounts, int temperatureMillicelsius, int clockMillis)
            implements Step {}

    /**
     * Power comes, whether or not it was there before: a new life.
     *
     * @param known how well the time without power is known
     * @param offMillis that time
     */
    record Power(OffTime known, long offMillis) implements Step {}

    /**
     * A command.
     *
     * @param command which
     * @param argument its figure
     */
    record Tell(Command command, long argument) implements Step {}

    /**
     * Other settings.
     *
     * @param settings all of them
     */
    record Change(GaugeSettings settings) implements Step {}

    /**
     * The memory holds another record, with a right check word and as the newest, whatever its
     * figures: as another maker or a fault would leave it. It is read when power comes.
     *
     * @param slot in which it lies
     * @param isForeign whether it was written under other settings for the same kind of battery
     * @param figures one for each field, in the order of {@link SavedField}
     */
    record Forge(int slot, boolean isForeign, List<Long> figures) implements Step {
        /** Keeps its own list. */
        public Forge {
            figures = List.copyOf(figures);
        }

        /** The same with one figure changed. */
        Forge with(SavedField field, long figure) {
            List<Long> changed = new ArrayList<>(figures);
            changed.set(field.ordinal(), figure);
            return new Forge(slot, isForeign, changed);
        }
    }

    /**
     * Power will go at a write to come.
     *
     * @param writesFromNow 1 for the next one
     * @param manner what that write leaves
     */
    record CutAt(int writesFromNow, Manner manner) implements Step {}
}
