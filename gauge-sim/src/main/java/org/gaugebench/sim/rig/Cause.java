package org.gaugebench.sim.rig;

/**
 * What can make a gauge's charge differ from the true one, in the order in which twins take it
 * away. Another order would give what two causes do together to the other one of them.
 */
public enum Cause {
    /** Full, empty and rest rule set the count; a proof of full lifts its limit to 100 %. */
    RULES("rules", "corrections by its own rules"),
    /**
     * The count stops at empty, at full, and at 99 % before full is proven. Next to the rules,
     * because it corrects as they do: a limit that stood further down would swallow what offset and
     * losses have made until it was met, and no part would be its closed form.
     */
    CLAMP("clamp", "the count's limits"),
    /** Nothing is counted without power, and a memory may hold an old count. */
    POWER("power", "time without power, and its memory"),
    /** Steps, rails, bends and dead band; instants, gaps, and samples lost or garbled. */
    CONVERTER("converter", "steps, clipping and sampling of the converter"),
    /** Noise of the shunt channel. */
    NOISE("noise", "noise of the shunt channel"),
    /** The machine's counter: fast, slow, trembling, jumping, or standing. */
    CLOCK("clock", "its clock"),
    /** Offset, drift and thermal voltage, and what the settings take off for it. */
    OFFSET("offset", "zero error: offset, drift, thermal voltage"),
    /** Shunt, converter and settings disagree on the scale; leads, warmth, asymmetry. */
    GAIN("gain", "scale: shunt, gain, leads, warm shunt, asymmetry"),
    /** Loads and chargers past the shunt, a parallel path, its own supply. */
    PAST_SHUNT("past-shunt", "current that never crossed the shunt"),
    /** Efficiency and self-discharge, true ones against assumed ones. */
    LOSSES("losses", "charge lost as heat: efficiency, self-discharge"),
    /** What was declared, at the start and later. */
    START("start", "not really full at the start: what was declared"),
    /** Percents of the assumed capacity are not percents of the true one. */
    CAPACITY("capacity", "wrong amp-hours: capacity assumed"),
    /** What is left. */
    ARITHMETIC("arithmetic", "arithmetic of the core");

    private final String key;
    private final String words;

    Cause(String key, String words) {
        this.key = key;
        this.words = words;
    }

    /** The name in JSON. */
    public String key() {
        return key;
    }

    /** For people, at most 50 columns. */
    public String words() {
        return words;
    }
}
