/**
 * The logic of a battery gauge: counts in, a readout out. Integers only, no I/O, no clock, nothing
 * allocated by a tick.
 */
module org.gaugebench.core {
    exports org.gaugebench.core;
    exports org.gaugebench.core.port;
    exports org.gaugebench.core.settings;
}
