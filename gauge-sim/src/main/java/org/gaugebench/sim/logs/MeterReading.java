package org.gaugebench.sim.logs;

/**
 * What an owner measured in one check. Amps are positive into the battery.
 *
 * @param check which
 * @param meter by the meter, in amps or volts, or by the clock in hours; 0 where the check has none
 * @param gauge on the gauge, in amps, volts or amp-hours; 0 where the check has none
 */
public record MeterReading(MeterCheck check, double meter, double gauge) {}
