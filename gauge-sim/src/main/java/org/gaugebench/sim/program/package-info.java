/**
 * A program as a child process: started without a shell, bounded in time and size, and gone at the
 * end with all that it started. Knows nothing of gauges. Reads the machine's clock, and nothing of
 * that reaches a result: an exchange ends as it would have, or the run has no result.
 */
@NullMarked
package org.gaugebench.sim.program;

import org.jspecify.annotations.NullMarked;
