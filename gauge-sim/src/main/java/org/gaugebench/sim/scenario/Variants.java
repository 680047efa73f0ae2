package org.gaugebench.sim.scenario;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.nodes.Node;

/**
 * All runs of a scenario file: one for each combination of what stands under {@code vary}, and each
 * of those with every seed of {@code seeds}. Each run is a whole scenario of its own and says in
 * {@link Scenario#variant()} which one it is.
 */
public final class Variants {
    /** Most runs of one file. */
    public static final int MOST_RUNS = 10_000;

    /** Most ticks of all runs of one file: some hours of one core. */
    static final long MOST_TICKS = 20_000_000_000L;

    /** Most changes and expectations of all combinations: what a machine keeps with ease. */
    static final int MOST_PIECES = 500_000;

    private Variants() {}

    /**
     * Reads every run of a file.
     *
     * @param file as for {@link ScenarioReader#read(Path)}
     * @return at least one, in file order: the last key varies fastest, the seed faster still
     * @throws ScenarioException with every problem of the file
     */
    public static List<Scenario> read(Path file) throws ScenarioException {
        return read(file, null);
    }

    /**
     * Reads every run of a file, with seeds that the file may not know.
     *
     * @param file as for {@link ScenarioReader#read(Path)}
     * @param seeds before those that the file states itself, a varying one included; null for the
     *     file's own. The limits are those of seeds in a file
     * @return as for the file alone
     * @throws ScenarioException with every problem of the file
     */
    public static List<Scenario> read(Path file, @Nullable SeedRange seeds)
            throws ScenarioException {
        return read(file.toString(), ScenarioReader.text(file), file, seeds);
    }

    /**
     * Reads every run of a text.
     *
     * @param fileName the name that problems and reports show
     * @param text the scenario
     * @return as for a file
     * @throws ScenarioException with every problem of the text
     */
    public static List<Scenario> read(String fileName, String text) throws ScenarioException {
        return read(fileName, text, null, null);
    }

    /** Reads every run of a text as if it stood in a file. */
    static List<Scenario> read(String fileName, String text, @Nullable Path file)
            throws ScenarioException {
        return read(fileName, text, file, null);
    }

    private static List<Scenario> read(
            String fileName, String text, @Nullable Path file, @Nullable SeedRange asked)
            throws ScenarioException {
        Problems problems = new Problems(fileName, text);
        Node root = ScenarioReader.tree(fileName, text, file, problems);
        VaryReader vary = new VaryReader(problems, root, asked);
        SeedRange seeds = vary.seeds();
        List<VaryReader.Combination> combinations = vary.combinations();
        problems.throwIfAny();
        ProfileFolder folder = new ProfileFolder(problems, file);
        List<Scenario> runs = new ArrayList<>();
        long ticks = 0;
        int pieces = 0;
        for (VaryReader.Combination combination : combinations) {
            Scenario run = new FileReader(problems, fileName, folder).read(combination.root());
            ticks += run.durationMillis() / Math.max(1, run.tickMillis());
            pieces += run.changes().size() + run.expectations().size();
            if (pieces > MOST_PIECES) {
                vary.refuse(
                        "all combinations together have more than "
                                + MOST_PIECES
                                + " changes and expectations; expected fewer of them");
                break;
            }
            runs.add(run.asVariant(combination.name(), run.seed()));
        }
        problems.throwIfAny();
        int seedCount = seeds == null ? 1 : seeds.size();
        if (runs.size() > MOST_RUNS / seedCount) {
            vary.refuse(
                    "'vary' and 'seeds' together make "
                            + (long) runs.size() * seedCount
                            + " runs; expected at most "
                            + MOST_RUNS);
        } else if (ticks > MOST_TICKS / seedCount) {
            vary.refuse(
                    "all runs of this file together have more than "
                            + MOST_TICKS
                            + " ticks; take fewer of them, a shorter 'duration' or a"
                            + " longer 'tick'");
        }
        problems.throwIfAny();
        return seeds == null ? List.copyOf(runs) : withSeeds(runs, seeds);
    }

    /**
     * Each scenario with each seed.
     *
     * @param scenarios in order
     * @param seeds instead of their own
     * @return for each scenario one run a seed, in order
     */
    public static List<Scenario> withSeeds(List<Scenario> scenarios, SeedRange seeds) {
        List<Scenario> runs = new ArrayList<>();
        for (Scenario scenario : scenarios) {
            for (long seed = seeds.first(); seed <= seeds.last(); seed++) {
                String variant = scenario.variant();
                runs.add(
                        scenario.asVariant(
                                variant + (variant.isEmpty() ? "" : ", ") + "seed=" + seed, seed));
            }
        }
        return List.copyOf(runs);
    }
}
