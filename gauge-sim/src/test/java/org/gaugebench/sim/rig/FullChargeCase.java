package org.gaugebench.sim.rig;

/**
 * One case of the trade's list of false and missed fulls, as a scenario on the real plant.
 *
 * @param id as the trade notes number it
 * @param what happens, in a few words
 * @param fulls how often the gauge has to set itself to full: 0 or 1
 * @param proof the reason that the rule has to give; empty where it has to give none
 * @param faults keys of standing faults that have to be raised, each once at least
 * @param scenario the file without its expectations and without the gauges beside
 */
record FullChargeCase(
        String id, String what, int fulls, String proof, String faults, String scenario) {

    /** The file, with two gauges of looser rules beside ours. */
    String text() {
        String loose =
                scenario.contains("lifepo4")
                        ? """
                          beside:
                            - {name: loose, absorption-margin: %s, taper: 4 %%, hold: 2 min,
                               flatness: 0 V, float-voltage: 0 V, rearm-discharge: 0.1 %%}
                            - {name: tighter, absorption-margin: %s, taper: 4 %%, hold: 1 min,
                               flatness: 0 V, float-voltage: 0 V, rearm-discharge: 0.1 %%}
                          """
                                .formatted("600 mV", "200 mV")
                        : """
                          beside:
                            - {name: loose, absorption-margin: %s, taper: 4 %%, hold: 2 min,
                               flatness: 0 V, float-voltage: 0 V, rearm-discharge: 0.1 %%}
                            - {name: tighter, absorption-margin: %s, taper: 2 %%, hold: 1 min,
                               flatness: 0 V, float-voltage: 0 V, rearm-discharge: 0.1 %%}
                          """
                                .formatted(
                                        scenario.contains("48 V") ? "2.4 V" : "600 mV",
                                        scenario.contains("48 V") ? "800 mV" : "200 mV");
        return "format: 1\ntitle: " + id + " " + what + "\n" + scenario + loose;
    }
}
