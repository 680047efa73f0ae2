/** The command line: Main and one class for each command. */
@NullMarked
package org.gaugebench.sim.cli;

import org.jspecify.annotations.NullMarked;
