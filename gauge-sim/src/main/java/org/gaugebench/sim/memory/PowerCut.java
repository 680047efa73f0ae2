package org.gaugebench.sim.memory;

/**
 * Power went during a call to the memory. Passes through the gauge, which is then to be dropped as
 * its working memory would be; the {@link SimulatedStore} keeps what was written and starts a new
 * life with {@link SimulatedStore#powerUp()}.
 */
public final class PowerCut extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** Names the operation at which power went. */
    public PowerCut(int operation) {
        super("power cut at memory operation " + operation, null, false, false);
    }
}
