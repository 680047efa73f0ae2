/**
 * What all pages share: the look, and the files that lie in the jar and go into a page. Knows no
 * run, no gauge and no command line.
 */
@NullMarked
package org.gaugebench.sim.page;

import org.jspecify.annotations.NullMarked;
