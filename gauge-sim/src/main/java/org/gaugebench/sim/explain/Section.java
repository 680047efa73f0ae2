package org.gaugebench.sim.explain;

import java.util.List;

/**
 * The steps of one stage.
 *
 * @param title what the stage does
 * @param where its numbers in arithmetic.md and rules.md
 * @param steps in the order in which they are done
 */
public record Section(String title, String where, List<Step> steps) {}
