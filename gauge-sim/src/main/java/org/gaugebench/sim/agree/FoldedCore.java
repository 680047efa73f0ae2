package org.gaugebench.sim.agree;

import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.CommandOutcome;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.sim.device.GaugeDevice;

/**
 * A gauge whose registers are folded into a digest after every call, over all its lives: the other
 * side of the pipe's digest. A call that power cut off is left out.
 */
final class FoldedCore {
    private final Registers registers = new Registers();
    private long digest = Registers.DIGEST_START;

    /** The digest so far. */
    long digest() {
        return digest;
    }

    /** Watches the gauge of another life. */
    GaugeDevice watch(GaugeDevice device) {
        return new Folded(device);
    }

    private final class Folded implements GaugeDevice {
        private final GaugeDevice device;

        Folded(GaugeDevice device) {
            this.device = device;
        }

        private void fold() {
            device.inspect(registers);
            digest = registers.fold(digest);
        }

        @Override
        public void powerUp(long offMillis, OffTime offTime) {
            device.powerUp(offMillis, offTime);
            fold();
        }

        @Override
        public void tick(Sample sample) {
            device.tick(sample);
            fold();
        }

        @Override
        public CommandOutcome command(Command command, long argument) {
            CommandOutcome outcome = device.command(command, argument);
            fold();
            return outcome;
        }

        @Override
        public CommandOutcome changeSettings(GaugeSettings settings) {
            CommandOutcome outcome = device.changeSettings(settings);
            fold();
            return outcome;
        }

        @Override
        public void read(Readout readout) {
            device.read(readout);
        }

        @Override
        public boolean readBus(int[] words) {
            return device.readBus(words);
        }

        @Override
        public void inspect(Registers into) {
            device.inspect(into);
        }
    }
}
