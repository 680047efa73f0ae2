package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.List;

/** How an owner finds out what his gauge does: each within two minutes, but for one. */
public final class TwoMinuteTests {
    private static final String SETS_FULL =
            "whether it sets itself to 100 %: with the charger at its highest volts and the current"
                    + " still large, set it to 50 % by hand and wait two minutes: back at 100 is on"
                    + " volts alone; do it again when the current has become small: back at 100 is"
                    + " on volts and current; else it is never";

    private static final String PAST_FULL =
            "what it does past 100 %: set it to 100 % by hand while the charger still gives much,"
                    + " and look for two minutes: 101, or amp-hours that rise, shows more; then"
                    + " charger off and the largest load on for two minutes: what does not fall has"
                    + " counted on behind";

    private static final String AFTER_OFF =
            "what it shows after its wire was off: note the figure at 30 to 70 %, take out the fuse"
                    + " of its supply wire for a minute, and look: the same, 100, 0, nothing or"
                    + " another figure";

    private static final String SMALLEST_AMPS =
            "its smallest step of amps: all off but one small load of known current, such as a lamp"
                    + " of 50 mA: it shows it or it shows 0";

    private TwoMinuteTests() {}

    /** Of what is not known; empty where all is. */
    public static List<String> of(OwnersGauge gauge) {
        List<String> tests = new ArrayList<>();
        add(gauge, tests);
        return List.copyOf(tests);
    }

    static void add(OwnersGauge gauge, List<String> tests) {
        if (gauge.setsFull() == OwnersGauge.SetsFull.NOT_KNOWN) {
            tests.add(SETS_FULL);
        }
        if (gauge.pastFull() == OwnersGauge.PastFull.NOT_KNOWN) {
            tests.add(PAST_FULL);
        }
        if (gauge.afterOff() == OwnersGauge.AfterOff.NOT_KNOWN) {
            tests.add(AFTER_OFF);
        }
        if (gauge.smallestAmps() == null) {
            tests.add(SMALLEST_AMPS);
        }
    }
}
