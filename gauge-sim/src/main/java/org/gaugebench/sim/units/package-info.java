/**
 * Quantities as people write them, turned into the exact integers that the records hold, and back.
 * Decimal all the way: a double times a million is never formed. Imports nothing of this project.
 */
@NullMarked
package org.gaugebench.sim.units;

import org.jspecify.annotations.NullMarked;
