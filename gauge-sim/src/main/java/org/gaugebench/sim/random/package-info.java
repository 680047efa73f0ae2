/** Random numbers to published algorithms, and one seed for each named stream. Imports nothing. */
@NullMarked
package org.gaugebench.sim.random;

import org.jspecify.annotations.NullMarked;
