package org.gaugebench.sim.agree;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.sim.device.BusWords;
import org.gaugebench.sim.device.GaugeDevice;
import org.gaugebench.sim.device.PipeNames;

/** All that two gauges tell of themselves at one moment, side by side. */
final class Pairs {
    private Pairs() {}

    /**
     * Registers and, where both tell them, the words of the bus view. The words are looked at where
     * registers are: they are not part of a digest. What they are made of is: the registers, the
     * figures behind the readout, and what a host wrote, which no bench does.
     *
     * @param given registers that both give
     * @param left registers of the first
     * @param right of the second
     * @param first the first gauge
     * @param second the second
     */
    static List<Difference.Pair> of(
            List<Register> given,
            Registers left,
            Registers right,
            GaugeDevice first,
            GaugeDevice second) {
        List<Difference.Pair> pairs = new ArrayList<>();
        for (Register each : given) {
            pairs.add(new Difference.Pair(PipeNames.of(each), left.get(each), right.get(each)));
        }
        int[] one = new int[BusWords.COUNT];
        int[] other = new int[BusWords.COUNT];
        if (first.readBus(one) && second.readBus(other)) {
            for (int i = 0; i < BusWords.COUNT; i++) {
                pairs.add(new Difference.Pair(BusWords.name(i), one[i], other[i]));
            }
        }
        return pairs;
    }

    /** How many differ, in words. */
    static String unequal(long count) {
        return count == 1 ? "1 register differs" : count + " registers differ";
    }
}
