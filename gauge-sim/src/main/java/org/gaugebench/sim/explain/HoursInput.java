package org.gaugebench.sim.explain;

/**
 * What the hours were worked out from: at the end of a minute, or after a command.
 *
 * @param known whether the state of charge is known
 * @param chargeNanocoulombs the count
 * @param lowerEdge of the band in ppm, or -1 where it is that of a later moment
 * @param upperEdge of the band in ppm, or -1 likewise
 * @param seeded whether the filter has seen a whole minute
 * @param filteredMicroamps the filtered current
 * @param presentMicroamps the current of the last sample
 * @param millicelsius temperature of the last sample
 */
record HoursInput(
        boolean known,
        long chargeNanocoulombs,
        long lowerEdge,
        long upperEdge,
        boolean seeded,
        long filteredMicroamps,
        long presentMicroamps,
        long millicelsius) {}
