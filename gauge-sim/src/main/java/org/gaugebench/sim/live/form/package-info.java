/**
 * The page "my system": what an owner types without any file, and the answers to it. Knows advice
 * and its reports; knows nothing of the bench that runs beside it, nor of the server.
 */
@NullMarked
package org.gaugebench.sim.live.form;

import org.jspecify.annotations.NullMarked;
