/**
 * Counts become microamps, microvolts and millicelsius; the raw clock becomes elapsed milliseconds.
 * May import fixed, port and settings; knows nothing of charge.
 */
package org.gaugebench.core.sense;
