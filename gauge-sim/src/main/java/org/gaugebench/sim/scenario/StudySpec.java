package org.gaugebench.sim.scenario;

import java.util.List;
import org.gaugebench.sim.scenario.Expectation.Reading;
import org.gaugebench.sim.units.RecordUnit;

/**
 * A study as its author asked for it, checked and with every default filled in.
 *
 * @param file as the user named it
 * @param title one line
 * @param about what it is for; may be empty
 * @param seed of all draws
 * @param devices at most so many are drawn
 * @param stop when to stop before that
 * @param tolerances what differs from device to device, in file order
 * @param reading whose error, shown less true, is looked at
 * @param unit of that error
 * @param gauge whose reading
 * @param gaugeIndex its place among the gauges of the scenario
 * @param fromMillis errors before this do not count
 * @param everyMillis whole minutes between two moments of the band; the end is one too
 * @param coveragePartsPerMillion probability of the coverage interval
 * @param claim what is expected, or {@link Claim#NONE}
 * @param cases one for each combination of what stands under "vary"; at least one
 * @param digest of the study: of all that has to do with its figures
 */
public record StudySpec(
        String file,
        String title,
        String about,
        long seed,
        int devices,
        Stop stop,
        List<Tolerance> tolerances,
        Reading reading,
        RecordUnit unit,
        String gauge,
        int gaugeIndex,
        long fromMillis,
        long everyMillis,
        long coveragePartsPerMillion,
        Claim claim,
        List<Case> cases,
        String digest) {

    /**
     * When enough devices are drawn.
     *
     * @param adaptive false: at the last device
     * @param knownTo the numerical tolerance of the limits in the reading's unit, or 0
     * @param digits otherwise: meaningful digits of the standard uncertainty, 1 or 2
     * @param block devices in one block of JCGM 101, 7.9
     */
    public record Stop(boolean adaptive, long knownTo, int digits, int block) {}

    /**
     * What is expected of the devices.
     *
     * @param within the error of a device is at most this far from zero at every whole minute
     * @param sharePartsPerMillion of so many of all devices
     * @param because the reason of the figure, for people; may be empty
     */
    public record Claim(long within, long sharePartsPerMillion, String because) {
        /** Nothing is expected. */
        public static final Claim NONE = new Claim(-1, 0, "");

        /** Whether anything is expected. */
        public boolean isMade() {
            return within >= 0;
        }
    }

    /**
     * One combination of what varies.
     *
     * @param name such as "battery.temperature=-10 °C"; empty where nothing varies
     * @param template the scenario with the tolerances open
     * @param durationMillis of the run
     */
    public record Case(String name, ScenarioTemplate template, long durationMillis) {}
}
