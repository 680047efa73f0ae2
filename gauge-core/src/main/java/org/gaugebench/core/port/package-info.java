/**
 * Every contact with the outside: what comes in ({@link org.gaugebench.core.port.Sample}, {@link
 * org.gaugebench.core.port.Command}), what may be asked ({@link
 * org.gaugebench.core.port.StateStore}), what can be read ({@link
 * org.gaugebench.core.port.Readout}, {@link org.gaugebench.core.port.Registers}) and what is
 * announced ({@link org.gaugebench.core.port.Event}, {@link org.gaugebench.core.port.Fault}). Codes
 * are named here and decided elsewhere.
 *
 * <p>Sign, once for the whole project: <b>positive current flows into the battery</b>, negative
 * flows out.
 */
package org.gaugebench.core.port;
