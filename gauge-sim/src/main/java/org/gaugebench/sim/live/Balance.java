package org.gaugebench.sim.live;

/**
 * What is on the account at a moment, in ampere-hours.
 *
 * @param gauge by the gauge; NaN where it shows nothing
 * @param lower edge of its error band, NaN where there is none
 * @param upper edge of its error band, NaN where there is none
 * @param counted what the gauge has counted in less out since it came up; NaN for one that keeps no
 *     such sums
 * @param truth what is really there
 */
record Balance(double gauge, double lower, double upper, double counted, double truth) {}
