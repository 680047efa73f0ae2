package org.gaugebench.sim.rig;

/**
 * One case of the trade's list of false and missed fulls, as a scenario on the real plant.
 *
 * @param id as the trade notes number it
 * @param what happens, in a few words
 * @param fulls how often the gauge has to set itself to full: 0 or 1
 * @param proof the reason that the rule has to give; empty where it has to give none
 * @param fault key of the one fault that has to be raised; empty where there must be none
 * @param scenario the file without its expectations and without the gauges beside
 */
record FullChargeCase(
        String id, String what, int fulls, String proof, String fault, String scenario) {

    /** The file, with two gauges of looser settings beside ours: 13.8 V and 14.2 V for lead. */
    String text() {
        boolean high = scenario.contains("48 V");
        String taper = scenario.contains("lifepo4") ? "4 %" : "2 %";
        return "format: 1\ntitle: \"%s %s\"\n%sbeside:\n".formatted(id, what, scenario)
                + beside("loose", high ? "2.4 V" : "600 mV", "4 %", "2 min")
                + beside("tighter", high ? "800 mV" : "200 mV", taper, "1 min");
    }

    private static String beside(String name, String margin, String taper, String hold) {
        return """
          - {name: %s, absorption-margin: %s, taper: %s, hold: %s, flatness: 0 V,
             float-voltage: 0 V, rearm-discharge: 0.1 %%}
        """
                .formatted(name, margin, taper, hold);
    }
}
