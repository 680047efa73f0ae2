package org.gaugebench.core.rules;

/**
 * Tells a taper from a stop, and a charge from the mere presence of a charger. A battery that fills
 * lets the current fall slowly; a protection circuit, an isolator or a blown fuse lets it fall in a
 * step. Full voltage without any flow proves nothing either way.
 *
 * <p>The step is looked for over {@value #MEMORY_MINUTES} minutes, because the minute in which the
 * current stops has a mean of its own in between. A longer memory would take a fast taper for a
 * step.
 *
 * <p>Flow is remembered only while a charger's voltage stands: yesterday's charge says nothing of a
 * battery that is cut off this morning.
 */
final class FlowWatch {
    /** The minute before the step and the minute of the step. */
    static final int MEMORY_MINUTES = 2;

    /** Without a charger's voltage for so long, one charge has ended (rule F8). */
    static final int FORGET_MINUTES = HoldTimer.RESET_MINUTES;

    // Parameters.
    private final long strongMicroamps;
    private final long noneMicroamps;
    private final long someMicroamps;

    // State.
    private final int[] recentMicroamps = new int[MEMORY_MINUTES];
    private int nextIndex;
    private int idleMinutes;
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

    /**
     * Takes one minute's mean current.
     *
     * @param meanMicroamps positive into the battery
     * @param voltageUp whether a charger's voltage stood all minute
     */
    void addMinute(int meanMicroamps, boolean voltageUp) {
        if (meanMicroamps > someMicroamps) {
            flowSeen = true;
            stopped = false;
        } else if (meanMicroamps < noneMicroamps && strongRecently()) {
            flowSeen = false;
            stopped = true;
        }
        recentMicroamps[nextIndex] = meanMicroamps;
        nextIndex = nextIndex + 1 == MEMORY_MINUTES ? 0 : nextIndex + 1;
        if (voltageUp || meanMicroamps > someMicroamps) {
            idleMinutes = 0;
        } else {
            addIdleMinute();
        }
    }

    /** A minute whose figures are not to be trusted: it hides whether anything stopped. */
    void addDoubtfulMinute() {
        addIdleMinute();
    }

    private void addIdleMinute() {
        idleMinutes++;
        if (idleMinutes >= FORGET_MINUTES) {
            idleMinutes = FORGET_MINUTES;
            stopped = false;
            forget();
        }
    }

    private boolean strongRecently() {
        for (int microamps : recentMicroamps) {
            if (microamps > strongMicroamps) {
                return true;
            }
        }
        return false;
    }

    /**
     * What flowed before says nothing of what comes: samples were missing, and a stop may hide
     * among them. A stop that was seen stands.
     */
    void forget() {
        flowSeen = false;
        for (int i = 0; i < MEMORY_MINUTES; i++) {
            recentMicroamps[i] = 0;
        }
    }

    /** What was seen under other settings was seen all the same. */
    void takeOver(FlowWatch before) {
        flowSeen = before.flowSeen;
        stopped = before.stopped;
        idleMinutes = before.idleMinutes;
        nextIndex = before.nextIndex;
        System.arraycopy(before.recentMicroamps, 0, recentMicroamps, 0, MEMORY_MINUTES);
    }

    /** Another battery: a stop was the old one's too. */
    void forgetBattery() {
        forget();
        stopped = false;
    }

    boolean flowSeen() {
        return flowSeen;
    }

    boolean stopped() {
        return stopped;
    }
}
