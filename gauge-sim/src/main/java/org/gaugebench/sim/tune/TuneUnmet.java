package org.gaugebench.sim.tune;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A case in which the chosen settings let a false full through or miss one.
 *
 * @param tried the case
 * @param score what the chosen settings come to in it
 * @param better settings within the safe range that meet it, the best of all that were tried; null
 *     where none does
 * @param audit what has to be put right first, in plain words: a charger that no safe threshold
 *     meets, and what an audit of the scenario finds with the chosen settings in it
 */
public record TuneUnmet(
        TuneCase tried, CaseScore score, @Nullable TuneScore better, List<String> audit) {}
