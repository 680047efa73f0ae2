/**
 * The memory a gauge under test saves into: stricter than a real one, and able to fail in every way
 * that a real one does. May import the core's port and {@code random}; knows no gauge and no plant.
 */
@NullMarked
package org.gaugebench.sim.memory;

import org.jspecify.annotations.NullMarked;
