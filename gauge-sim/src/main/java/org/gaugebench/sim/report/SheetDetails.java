package org.gaugebench.sim.report;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.advice.OwnSystem;
import org.gaugebench.sim.advice.WiringPlan;
import org.jspecify.annotations.Nullable;

/**
 * What the sheet asks for beyond the system and its gauge; everything may be left out.
 *
 * @param name of the system, for the head; empty for none
 * @param sources what charges, each drawn; empty for not told
 * @param chargerVolts the charger's highest steady volts; null for not known
 * @param isEarthed whether the negative has an earth
 */
public record SheetDetails(
        String name,
        List<WiringPlan.Source> sources,
        @Nullable Double chargerVolts,
        boolean isEarthed) {

    /** Nothing told. */
    public static final SheetDetails NONE = new SheetDetails("", List.of(), null, true);

    /** Keeps its own list. */
    public SheetDetails {
        sources = List.copyOf(sources);
    }

    /** What is drawn: a charger that nobody named is drawn as one. */
    List<WiringPlan.Source> drawn(OwnSystem system) {
        return sources.isEmpty() && system.chargerAmps() > 0
                ? List.of(WiringPlan.Source.OTHER)
                : sources;
    }

    /** What was taken where nothing was told. */
    List<String> assumed(OwnSystem system) {
        List<String> assumed = new ArrayList<>();
        if (chargerVolts == null) {
            assumed.add("the charger's highest steady volts are those usual for this battery");
        }
        if (sources.isEmpty() && system.chargerAmps() > 0) {
            assumed.add("one charger, of which it was not told what feeds it");
        }
        if (isEarthed) {
            assumed.add("the negative has one earth; ask your local code whether it should");
        }
        return assumed;
    }
}
