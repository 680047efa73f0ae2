/**
 * What the installer tells the gauge: one table of named integers with units, limits and defaults,
 * and the immutable set of values built from it. Cold code: nothing here runs in a tick.
 */
package org.gaugebench.core.settings;
