package org.gaugebench.sim.scenario;

import org.gaugebench.core.settings.ChemistryPreset;

/** Chemistries a battery can have, and what follows from the chemistry alone. */
public enum Chemistry {
    /** Lead-acid under free acid. */
    LEAD_ACID_FLOODED(ChemistryPreset.LEAD_ACID_FLOODED, 6),
    /** Sealed lead-acid with the acid held in glass mat. */
    LEAD_ACID_AGM(ChemistryPreset.LEAD_ACID_AGM, 6),
    /** Sealed lead-acid with gelled acid. */
    LEAD_ACID_GEL(ChemistryPreset.LEAD_ACID_GEL, 6),
    /** Lithium iron phosphate; packs of 15 cells are not modelled. */
    LIFEPO4(ChemistryPreset.LIFEPO4, 4),
    /** Lithium nickel manganese cobalt oxide; packs of 7, 10 or 13 cells are not modelled. */
    NMC(ChemistryPreset.NMC, 3);

    private final ChemistryPreset preset;
    private final int cellsOfTwelveVolts;

    Chemistry(ChemistryPreset preset, int cellsOfTwelveVolts) {
        this.preset = preset;
        this.cellsOfTwelveVolts = cellsOfTwelveVolts;
    }

    /** The name in scenario files. */
    public String key() {
        return preset.key();
    }

    /** What an installer sets for it. */
    ChemistryPreset preset() {
        return preset;
    }

    /**
     * Cells in series of a battery of a nominal voltage: as many times those of 12 V, because every
     * voltage of a scenario scales with the nominal one.
     *
     * @param nominalVolts 12, 24, 36 or 48
     */
    public int cellsOf(int nominalVolts) {
        return cellsOfTwelveVolts * (nominalVolts / 12);
    }

    /** Whether the battery itself limits what it accepts near full. */
    public boolean isLeadAcid() {
        return !preset.isLithium();
    }
}
