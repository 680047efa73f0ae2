/**
 * The logic of a battery gauge: counts in, a readout out. Integers only, no I/O, no clock, nothing
 * allocated by a tick.
 */
module org.gaugebench.core {
    exports org.gaugebench.core;
    exports org.gaugebench.core.port;
    // The record's bytes: a bench puts records of its own into a memory (rule M7).
    exports org.gaugebench.core.saved;
    exports org.gaugebench.core.settings;
}
