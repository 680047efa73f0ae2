package org.gaugebench.core.saved;

/**
 * What a record says about the settings under which it was written: a fingerprint of all of them,
 * and the two that decide whether the battery can be the same one.
 *
 * @param fingerprint changes when any setting changes
 * @param chemistryCode what the battery is made of; the number's meaning is the settings'
 * @param nominalMillivolts system voltage
 */
public record SettingsMark(int fingerprint, int chemistryCode, int nominalMillivolts) {}
