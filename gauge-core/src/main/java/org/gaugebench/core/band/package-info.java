/**
 * How wrong the count may be: sums since the last anchor, and the terms built from them. May import
 * fixed, port, settings, sense and charge; knows no rule.
 */
package org.gaugebench.core.band;
