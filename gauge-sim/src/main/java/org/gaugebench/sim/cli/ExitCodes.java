package org.gaugebench.sim.cli;

/** What the program's end tells a script. */
final class ExitCodes {
    /** Everything held, or there was nothing to hold and the user asked for one file. */
    static final int OK = 0;

    /** It ran, and an expectation failed. */
    static final int FAILED = 1;

    /** The input or the command line is wrong; nothing was written. */
    static final int WRONG_INPUT = 2;

    /** A program under test ended, took too long or did not keep to the protocol. */
    static final int PROGRAM_FAILED = 3;

    /** A defect of this program. */
    static final int OUR_BUG = 70;

    private ExitCodes() {}
}
