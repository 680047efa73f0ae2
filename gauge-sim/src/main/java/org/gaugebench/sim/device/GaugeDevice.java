package org.gaugebench.sim.device;

import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.CommandOutcome;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.GaugeSettings;

/** A gauge under test. It sees counts and commands; it never sees the plant. */
public interface GaugeDevice {
    /** Power came up; see {@code Gauge.powerUp}. */
    void powerUp(long offMillis, OffTime offTime);

    /** Takes one sample. */
    void tick(Sample sample);

    /** Takes the ticks that it has been given and has held back, if it ever does. */
    default void settle() {}

    /** Whether it holds ticks back. */
    default boolean holdsTicks() {
        return false;
    }

    /**
     * How many of the ticks that it was given come after the one that it works on: while it
     * announces an event or uses its memory, for a gauge that takes several ticks at once.
     */
    default int ticksBehind() {
        return 0;
    }

    /** Carries out a command between two ticks. */
    CommandOutcome command(Command command, long argument);

    /** Takes other settings between two ticks; a gauge that cannot says so. */
    default CommandOutcome changeSettings(GaugeSettings settings) {
        return CommandOutcome.REFUSED_NOT_OFFERED;
    }

    /** Fills a readout. */
    void read(Readout readout);

    /**
     * Fills at least current, voltage and temperature of the last sample, and of a gauge whose
     * state of charge or time to empty may jump in any tick without an event those too, for those
     * who look at every tick and need no more. What else it fills is for nobody's use.
     */
    default void readSample(Readout readout) {
        read(readout);
    }

    /**
     * Reads the words of the bus view as they are now, see {@link BusWords}.
     *
     * @param words receives them; left as it is where this gauge tells none
     * @return whether it tells any
     */
    default boolean readBus(int[] words) {
        return false;
    }

    /** Fills the register table; registers that this gauge does not have stay zero. */
    void inspect(Registers registers);
}
