/**
 * What survives a power cut: the state as named fields, the bytes it is written as, the choice
 * among the copies found at power-up, the order of writing, and when to write. {@code
 * docs/saved-state.md} draws every byte.
 *
 * <p>May import {@code fixed} and {@code port}; knows no stage of the gauge. The gauge fills a
 * {@link org.gaugebench.core.saved.SavedState} and takes it back; nothing here decides what a
 * restored value is worth.
 */
package org.gaugebench.core.saved;
