package org.gaugebench.sim.device;

import org.gaugebench.core.port.Sample;

/** Samples that wait for their message. */
final class PipeTicks {
    final int[] shuntCounts;
    final int[] voltageCounts;
    final int[] temperatureMillicelsius;
    final int[] clockMillis;
    int count;

    PipeTicks(int most) {
        shuntCounts = new int[most];
        voltageCounts = new int[most];
        temperatureMillicelsius = new int[most];
        clockMillis = new int[most];
    }

    void add(Sample sample) {
        shuntCounts[count] = sample.shuntCounts;
        voltageCounts[count] = sample.voltageCounts;
        temperatureMillicelsius[count] = sample.temperatureMillicelsius;
        clockMillis[count] = sample.clockMillis;
        count++;
    }

    boolean isFull() {
        return count == clockMillis.length;
    }
}
