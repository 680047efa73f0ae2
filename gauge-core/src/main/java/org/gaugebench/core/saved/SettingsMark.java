package org.gaugebench.core.saved;

/**
 * What a record says about the settings under which it was written: a fingerprint of all of them,
 * and the two that decide whether the battery can be the same one.
 */
public final class SettingsMark {
    private final int fingerprint;
    private final int chemistryCode;
    private final int nominalMillivolts;

    /**
     * Keeps the three.
     *
     * @param fingerprint changes when any setting changes
     * @param chemistryCode what the battery is made of; the number's meaning is the settings'
     * @param nominalMillivolts system voltage
     */
    public SettingsMark(int fingerprint, int chemistryCode, int nominalMillivolts) {
        this.fingerprint = fingerprint;
        this.chemistryCode = chemistryCode;
        this.nominalMillivolts = nominalMillivolts;
    }

    /**
     * Changes when any setting changes.
     *
     * @return 32 bits
     */
    public int fingerprint() {
        return fingerprint;
    }

    /**
     * What the battery is made of.
     *
     * @return a number whose meaning is the settings'
     */
    public int chemistryCode() {
        return chemistryCode;
    }

    /**
     * System voltage.
     *
     * @return millivolts
     */
    public int nominalMillivolts() {
        return nominalMillivolts;
    }
}
