package org.gaugebench.sim.cli;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import org.gaugebench.sim.judge.FullCharge;
import org.gaugebench.sim.scenario.Chemistry;
import org.gaugebench.sim.scenario.Nearest;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.SeedRange;
import org.gaugebench.sim.tune.FullDefinition;
import org.gaugebench.sim.tune.TuneTask;
import org.gaugebench.sim.units.Quantity;
import org.gaugebench.sim.units.QuantityException;
import org.gaugebench.sim.units.RecordUnit;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** What is searched, over which scenarios, and what is called false. */
final class TuneOptions {
    private static final int MOST_RUNS_OF_A_CANDIDATE = 2_000;
    private static final long MINUTE_MILLIS = 60_000;

    @Option(
            names = "--chemistry",
            paramLabel = "WORD",
            description =
                    "Only scenarios with such a battery, such as lead-acid-agm; needed where the"
                            + " files hold several kinds.")
    private @Nullable String chemistry;

    @Option(
            names = "--voltage",
            paramLabel = "VOLTAGE",
            description = "Only batteries of this nominal voltage, such as \"12 V\".")
    private @Nullable String voltage;

    @Option(
            names = "--covers",
            paramLabel = "WORD",
            description =
                    "Only scenarios that cover a number that begins so: FUL takes FUL01, FUL02 and"
                            + " so on.")
    private @Nullable String covers;

    @Option(
            names = "--seeds",
            paramLabel = "A..B",
            converter = SeedRangeText.class,
            description = "Seeds of noise and clouds in the search (default: 1..2).")
    private SeedRange seeds = new SeedRange(1, 2);

    @Option(
            names = "--holdout-seeds",
            paramLabel = "A..B",
            converter = SeedRangeText.class,
            description =
                    "Seeds that the search never sees, for the check at its end (default:"
                            + " 101..103).")
    private SeedRange holdout = new SeedRange(101, 103);

    @Option(
            names = "--seed",
            paramLabel = "N",
            converter = SeedText.class,
            description = "Shuffles the order in which settings are searched (default: 1).")
    private long seed = 1;

    @Option(
            names = "--false-below",
            paramLabel = "PART",
            description =
                    "A full announced below this true state of charge is false (default: 95 %%).")
    private @Nullable String falseBelow;

    @Option(
            names = "--full-for",
            paramLabel = "TIME",
            description =
                    "So long a charger has to hold a full battery before a gauge must have seen"
                            + " it (default: 2 h).")
    private @Nullable String fullFor;

    TuneOptions() {}

    /** The task over these scenarios, which come without their own seeds. */
    TuneTask task(List<Scenario> all) throws InputException {
        if (seeds.first() <= holdout.last() && holdout.first() <= seeds.last()) {
            throw new InputException(
                    "--seeds and --holdout-seeds share a seed; expected seeds that the search"
                            + " never sees, such as --holdout-seeds 101..103");
        }
        List<Scenario> asked = covering(all);
        Kind kind = kind(asked);
        List<Scenario> own = asked.stream().filter(it -> Kind.of(it).equals(kind)).toList();
        if ((long) own.size() * seeds.size() > MOST_RUNS_OF_A_CANDIDATE) {
            throw new InputException(
                    "--seeds: %s scenarios with %s seeds are more than %s runs for each try;"
                                    .formatted(own.size(), seeds.size(), MOST_RUNS_OF_A_CANDIDATE)
                            + " expected fewer seeds, such as --seeds 1..2");
        }
        // Its own first: if none can be used, the message says why, and not that it is another
        // kind.
        List<Scenario> ordered = new ArrayList<>(own);
        asked.stream().filter(it -> !own.contains(it)).forEach(ordered::add);
        try {
            return TuneTask.of(
                    kind.chemistry(), kind.volts(), ordered, definition(), seed, seeds, holdout);
        } catch (IllegalArgumentException e) {
            throw new InputException(
                    "none of these scenarios can be tuned on; %s; expected one whose main gauge is"
                                    .formatted(e.getMessage())
                            + " 'kind: core', such as scenarios/edge-cases/weak-winter-sun.yaml");
        }
    }

    private List<Scenario> covering(List<Scenario> all) throws InputException {
        String wanted = covers;
        if (wanted == null) {
            return all;
        }
        List<Scenario> chosen = new ArrayList<>();
        Set<String> known = new TreeSet<>();
        for (Scenario each : all) {
            known.addAll(each.marks().covers());
            if (each.marks().covers().stream().anyMatch(it -> it.startsWith(wanted))) {
                chosen.add(each);
            }
        }
        if (chosen.isEmpty()) {
            String near = Nearest.of(wanted, known);
            throw new InputException(
                    "--covers: no scenario covers anything that begins with '%s'; %s"
                            .formatted(
                                    wanted,
                                    near == null
                                            ? "expected one such as FUL or FUL01"
                                            : "did you mean '" + near + "'?"));
        }
        return chosen;
    }

    private record Kind(Chemistry chemistry, int volts) {
        static Kind of(Scenario scenario) {
            return new Kind(scenario.battery().chemistry(), scenario.battery().nominalVolts());
        }

        String words() {
            return chemistry.key() + ", " + volts + " V";
        }
    }

    /** The one kind of battery that is asked for, or that there is. */
    private Kind kind(List<Scenario> scenarios) throws InputException {
        Chemistry wanted = wantedChemistry();
        Integer volts = wantedVolts();
        Set<Kind> kinds = new LinkedHashSet<>();
        for (Scenario each : scenarios) {
            Kind kind = Kind.of(each);
            if ((wanted == null || kind.chemistry() == wanted)
                    && (volts == null || kind.volts() == volts)) {
                kinds.add(kind);
            }
        }
        if (kinds.isEmpty()) {
            throw new InputException(
                    "no scenario has such a battery; there are: " + kinds(scenarios));
        }
        if (kinds.size() > 1) {
            throw new InputException(
                    "the scenarios hold several kinds of batteries, and settings are for one: "
                            + kinds(scenarios)
                            + "; choose with --chemistry and --voltage, such as --chemistry "
                            + kinds.iterator().next().chemistry().key()
                            + " --voltage \"12 V\"");
        }
        return kinds.iterator().next();
    }

    private static String kinds(List<Scenario> scenarios) {
        StringBuilder text = new StringBuilder();
        Set<Kind> kinds = new LinkedHashSet<>();
        scenarios.forEach(it -> kinds.add(Kind.of(it)));
        for (Kind kind : kinds) {
            long count = scenarios.stream().filter(it -> Kind.of(it).equals(kind)).count();
            text.append(text.isEmpty() ? "" : "; ");
            text.append(count).append(" of ").append(kind.words());
        }
        return text.toString();
    }

    private @Nullable Chemistry wantedChemistry() throws InputException {
        String word = chemistry;
        try {
            return word == null ? null : QuantityArguments.chemistry(word);
        } catch (QuantityException e) {
            throw new InputException("--chemistry: " + e.getMessage());
        }
    }

    private @Nullable Integer wantedVolts() throws InputException {
        String text = voltage;
        if (text == null) {
            return null;
        }
        long millivolts = quantity("--voltage", text, RecordUnit.MILLIVOLTS);
        for (int volts : new int[] {12, 24, 36, 48}) {
            if (millivolts == volts * 1_000L) {
                return volts;
            }
        }
        throw new InputException(
                "--voltage: expected 12 V, 24 V, 36 V or 48 V, but found '" + text + "'");
    }

    private FullDefinition definition() throws InputException {
        FullDefinition usual = FullDefinition.USUAL;
        String part = falseBelow;
        String time = fullFor;
        long parts =
                part == null
                        ? usual.falseBelowParts()
                        : quantity("--false-below", part, RecordUnit.PARTS_PER_MILLION);
        if (parts < 500_000 || parts > FullCharge.IS_FULL_PARTS) {
            throw new InputException(
                    "--false-below: expected 50 to 99 %, such as \"97 %\", but found '"
                            + part
                            + "'");
        }
        long minutes =
                time == null
                        ? usual.heldMinutes()
                        : quantity("--full-for", time, RecordUnit.MILLIS) / MINUTE_MILLIS;
        if (minutes < 1 || minutes > 24 * 60) {
            throw new InputException(
                    String.format(
                            Locale.ROOT,
                            "--full-for: expected 1 min to 1 d, such as \"2 h\", but found '%s'",
                            time));
        }
        return new FullDefinition(parts, minutes, usual.floatedMinutes());
    }

    private static long quantity(String option, String text, RecordUnit unit)
            throws InputException {
        try {
            return Quantity.parse(text, unit);
        } catch (QuantityException e) {
            throw new InputException(option + ": " + e.getMessage());
        }
    }
}
