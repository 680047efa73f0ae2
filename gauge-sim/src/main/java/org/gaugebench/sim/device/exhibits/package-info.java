/**
 * Gauges built for comparison. {@link org.gaugebench.sim.device.exhibits.ExhibitGauge} makes the
 * mistakes that it is told to make, each a {@link org.gaugebench.sim.scenario.Mistake} with a name;
 * {@link org.gaugebench.sim.device.exhibits.PlainCounter} makes none and has no rule.
 */
@NullMarked
package org.gaugebench.sim.device.exhibits;

import org.jspecify.annotations.NullMarked;
