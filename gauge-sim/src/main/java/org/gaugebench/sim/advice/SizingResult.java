package org.gaugebench.sim.advice;

import java.util.List;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;

/**
 * What a system needs, and what a shunt costs in accuracy.
 *
 * @param steadyAmps largest current that can flow for hours, in or out
 * @param peakAmps largest current that can flow for moments
 * @param outAmps everything on at once, out of the battery
 * @param ampHoursPerDay what the loads take in a day
 * @param proposed the smallest preferred shunt that fits; null if none does
 * @param chosen the one that is there, else the proposed one; null if there is neither
 * @param choices the chosen one between its neighbours, by size
 * @param usableAmpHours what can be drawn at the coldest temperature down to the usual depth
 * @param coldPart part of the printed charge that can be drawn at that temperature
 * @param usualDepth part of the charge that is usually drawn at most
 * @param fastPart part of the charge that comes out at the steady current; 1 where not known
 * @param autonomyDays days on the usable charge; infinite where nothing draws
 * @param neededAmpHours printed charge that a day needs with temperature, margin and ageing
 * @param assumed what was taken where nothing was told, in plain words
 * @param findings what does not fit, in plain words
 */
public record SizingResult(
        double steadyAmps,
        double peakAmps,
        double outAmps,
        double ampHoursPerDay,
        @Nullable ShuntRating proposed,
        @Nullable ShuntRating chosen,
        List<ShuntChoice> choices,
        double usableAmpHours,
        double coldPart,
        double usualDepth,
        double fastPart,
        double autonomyDays,
        double neededAmpHours,
        List<String> assumed,
        List<String> findings) {

    /** The chosen shunt in this system; null if there is none. */
    public @Nullable ShuntChoice choice() {
        return choices.stream()
                .filter(each -> each.rating().equals(chosen))
                .findFirst()
                .orElse(null);
    }
}
