package org.gaugebench.core.rules;

/**
 * Tells a taper from a stop. A battery that fills lets the current fall slowly; a protection
 * circuit, an isolator or a blown fuse lets it fall in a step. Full voltage without any flow proves
 * nothing either way.
 *
 * <p>The step is looked for over {@value #MEMORY_MINUTES} minutes, because the minute in which the
 * current stops has a mean of its own in between.
 */
final class FlowWatch {
    private static final int MEMORY_MINUTES = 4;

    // Parameters.
    private final long strongMicroamps;
    private final long noneMicroamps;
    private final long someMicroamps;

    // State.
    private final int[] recentMicroamps = new int[MEMORY_MINUTES];
    private int next;
    private boolean flowSeen;
    private boolean stopped;

    /**
     * Creates a watch that has seen no flow.
     *
     * @param strongMicroamps from above this a fall to nothing is a step
     * @param noneMicroamps under this nothing flows
     * @param someMicroamps above this something flows again
     */
    FlowWatch(long strongMicroamps, long noneMicroamps, long someMicroamps) {
        this.strongMicroamps = strongMicroamps;
        this.noneMicroamps = noneMicroamps;
        this.someMicroamps = someMicroamps;
    }

    /** Takes one minute's mean current. */
    void addMinute(int meanMicroamps) {
        if (meanMicroamps > someMicroamps) {
            flowSeen = true;
            stopped = false;
        } else if (meanMicroamps < noneMicroamps && strongRecently()) {
            flowSeen = false;
            stopped = true;
        }
        recentMicroamps[next] = meanMicroamps;
        next = next + 1 == MEMORY_MINUTES ? 0 : next + 1;
    }

    private boolean strongRecently() {
        for (int microamps : recentMicroamps) {
            if (microamps > strongMicroamps) {
                return true;
            }
        }
        return false;
    }

    /** Samples were missing: what flowed before them explains nothing after them. */
    void forgetRecent() {
        for (int i = 0; i < MEMORY_MINUTES; i++) {
            recentMicroamps[i] = 0;
        }
    }

    boolean flowSeen() {
        return flowSeen;
    }

    boolean stopped() {
        return stopped;
    }
}
