/**
 * What the builder of a small system asks: which shunt, how long until the figure cannot be
 * believed, what to check. Computes from what is printed on parts and from runs; plain words only.
 */
@NullMarked
package org.gaugebench.sim.advice;

import org.jspecify.annotations.NullMarked;
