package org.gaugebench.sim.scenario;

import org.gaugebench.core.settings.ChemistryPreset;

/** Chemistries a battery can have, and what follows from the chemistry alone. */
public enum Chemistry {
    /** Sealed lead-acid with the acid held in glass mat. */
    LEAD_ACID_AGM(ChemistryPreset.LEAD_ACID_AGM, 2.0),
    /** Lithium iron phosphate. */
    LIFEPO4(ChemistryPreset.LIFEPO4, 3.2);

    private final ChemistryPreset preset;
    private final double nominalCellVolts;

    Chemistry(ChemistryPreset preset, double nominalCellVolts) {
        this.preset = preset;
        this.nominalCellVolts = nominalCellVolts;
    }

    /** The name in scenario files. */
    public String key() {
        return preset.key();
    }

    /** What an installer sets for it. */
    ChemistryPreset preset() {
        return preset;
    }

    /** Cells in series of a battery of the given nominal voltage: 12 V is 6 of lead, 4 of LFP. */
    public int cellsOf(int nominalVolts) {
        return (int) (nominalVolts / nominalCellVolts + 0.5);
    }

    /** Whether the battery itself limits what it accepts near full. */
    public boolean isLeadAcid() {
        return this == LEAD_ACID_AGM;
    }
}
