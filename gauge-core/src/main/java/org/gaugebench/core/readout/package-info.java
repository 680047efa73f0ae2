/**
 * What a display or a bus may show: rounding with hysteresis, and the words of an open bus
 * standard. Reads the gauge, never changes it.
 */
package org.gaugebench.core.readout;
