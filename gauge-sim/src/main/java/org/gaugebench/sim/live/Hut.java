package org.gaugebench.sim.live;

import org.gaugebench.sim.page.PageAsset;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.ScenarioException;
import org.gaugebench.sim.scenario.ScenarioReader;

/** The small invented system with which the page begins when no file is named. */
public final class Hut {
    private static final String NAME = "hut.yaml";

    private Hut() {}

    /** Reads it. */
    public static Scenario scenario() {
        try {
            return ScenarioReader.read(NAME, PageAsset.text(Hut.class, NAME));
        } catch (ScenarioException e) {
            throw new IllegalStateException("the built-in hut is a scenario: " + e.render(), e);
        }
    }
}
