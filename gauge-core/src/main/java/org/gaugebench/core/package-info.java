/**
 * The gauge itself: wiring of the stages along a sample's way. Nobody imports this package; it is
 * the only one that sees all others.
 */
package org.gaugebench.core;
