/**
 * Bare arithmetic on {@code long} and {@code int}: scaling, rounding, clamping. Knows no unit of
 * electricity and imports nothing of the core.
 */
package org.gaugebench.core.fixed;
