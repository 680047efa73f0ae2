package org.gaugebench.sim.report;

/** What stands under every figure that somebody may wire by. */
public final class Cautions {
    /** Whom to ask. */
    public static final String DEFER =
            "Teaching and prototyping figures. Follow the battery maker's data and your local code"
                    + " (e.g. ABYC E-11 for boats, IEC/EN 62485, national wiring rules), and have a"
                    + " licensed person check real installations.";

    /** What a gauge is not. */
    public static final String NO_PROTECTION =
            "A gauge protects nothing: it must not be the only thing that switches a charger or a"
                    + " load off, nor the only basis of a decision on safety.";

    private Cautions() {}
}
