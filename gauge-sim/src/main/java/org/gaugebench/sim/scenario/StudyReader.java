package org.gaugebench.sim.scenario;

import static org.gaugebench.sim.units.RecordUnit.MILLIS;
import static org.gaugebench.sim.units.RecordUnit.PARTS_PER_MILLION;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import org.gaugebench.sim.scenario.Expectation.Reading;
import org.gaugebench.sim.units.RecordUnit;
import org.gaugebench.sim.units.Texts;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;

/**
 * Reads a study: a scenario, what differs from device to device, and what is asked. Keys of the
 * scenario are addressed as under its own "vary", and problems are told in both files alike.
 */
public final class StudyReader {
    /** Most devices of one combination: their rows stay in memory. */
    public static final int MOST_DEVICES = 100_000;

    private static final int FEWEST_DEVICES = 20;
    private static final int USUAL_DEVICES = 1_000;
    private static final int USUAL_BLOCK = 100;

    /** Moments of the band: a picture shows no more, and a device's row stays under 4 KiB. */
    private static final int MOST_MOMENTS = 240;

    private static final int USUAL_MOMENTS = 120;
    private static final long MINUTE_MILLIS = 60_000;
    private static final long[] ROUND_MINUTES = {
        1, 2, 5, 10, 15, 30, 60, 120, 180, 360, 720, 1_440, 2_880, 7_200, 14_400, 43_200, 525_600
    };
    private static final long LARGEST_SEED = Long.MAX_VALUE / 4;
    private static final List<Reading> MEASURED =
            List.of(
                    Reading.STATE_OF_CHARGE,
                    Reading.REMAINING_CHARGE,
                    Reading.CURRENT,
                    Reading.VOLTAGE,
                    Reading.FULL_CHARGE_CAPACITY,
                    Reading.TEMPERATURE);

    private final Path file;
    private final String studyText;
    private final Problems problems;
    private final Block block;

    private StudyReader(Path file, String text, Problems problems, Node root) {
        this.file = file;
        this.studyText = text;
        this.problems = problems;
        this.block = new Block(problems, root, "the study");
    }

    /**
     * Reads a file.
     *
     * @param file a study of at most 1 MiB, in UTF-8
     * @return the study with its scenario
     * @throws ScenarioException with every problem of both files
     */
    public static StudySpec read(Path file) throws ScenarioException {
        String name = file.toString();
        String text = ScenarioReader.text(file);
        Problems problems = new Problems(name, text);
        Node root = YamlDocument.root(text, problems, name);
        problems.throwIfAny();
        if (root == null) {
            problems.add(
                    problems.mark(1, 1),
                    "the file is empty; expected a study that begins with 'format: 1'");
            problems.throwIfAny();
            throw new IllegalStateException("a problem was added");
        }
        if (PartMerge.value(root, "battery") != null) {
            problems.add(
                    root,
                    "this is a scenario; a study names one: 'scenario: "
                            + file.getFileName()
                            + "', and says under 'tolerances' what differs");
            problems.throwIfAny();
        }
        return new StudyReader(file, text, problems, root).spec();
    }

    private StudySpec spec() throws ScenarioException {
        block.require("format", "format: 1");
        if (block.has("format") && !block.isWord("format", "1")) {
            block.valueProblem("format", "expected 'format: 1'");
        }
        block.require("title", "title: Is a month of 3 uV tolerable?");
        block.require("scenario", "scenario: a-month-in-the-hut.yaml");
        block.require("tolerances", "tolerances: {" + ToleranceReader.EXAMPLE + "}");
        String title = text("title", "Is a month of 3 uV tolerable?");
        String about = text("about", "What it is for.");
        long seed = block.whole("seed", -LARGEST_SEED, LARGEST_SEED, 1, 1);
        Block tolerances = block.block("tolerances", "tolerances");
        block.has(VaryReader.VARY);
        Reading reading = block.choice("reading", MEASURED, Reading::key, Reading.STATE_OF_CHARGE);
        String gaugeName = block.text("gauge", GaugeReader.FIRST);
        String gauge = gaugeName == null ? GaugeReader.FIRST : gaugeName;
        long coverage = block.quantity("coverage", PARTS_PER_MILLION, 500_000, 999_000, 950_000);
        StudySpec.Claim claim = claim(SettingUnits.of(reading));
        Devices devices = devices(SettingUnits.of(reading));
        StudyCases opened = new StudyCases(file, studyText, problems, block);
        opened.open(tolerances);
        List<Tolerance> all = opened.tolerances();
        List<Scenario> plain = opened.plain();
        long shortest = plain.stream().mapToLong(Scenario::durationMillis).min().orElse(0);
        long longest = plain.stream().mapToLong(Scenario::durationMillis).max().orElse(0);
        long from = block.quantity("from", MILLIS, 0, Math.max(1, shortest) - 1, 0);
        long every = every(longest - from);
        int gaugeIndex = gaugeIndex(plain, gauge);
        block.finish();
        problems.throwIfAny();
        RecordUnit unit = SettingUnits.of(reading);
        return new StudySpec(
                file.toString(),
                title,
                about,
                seed,
                devices.most,
                devices.stop,
                List.copyOf(all),
                reading,
                unit,
                gauge,
                gaugeIndex,
                from,
                every,
                coverage,
                claim,
                List.copyOf(opened.cases()),
                digest(List.of(seed, all, reading, gauge, from, every, texts(plain))));
    }

    private String text(String key, String example) {
        String text = block.text(key, example);
        return text == null ? "" : text;
    }

    private record Devices(int most, StudySpec.Stop stop) {}

    private Devices devices(RecordUnit unit) {
        StudySpec.Stop never = new StudySpec.Stop(false, 0, 1, USUAL_BLOCK);
        if (!(block.node("devices") instanceof MappingNode)) {
            long count =
                    block.whole(
                            "devices", FEWEST_DEVICES, MOST_DEVICES, USUAL_DEVICES, USUAL_DEVICES);
            return new Devices((int) count, never);
        }
        Block inner = block.block("devices", "devices");
        inner.require("at-most", "at-most: 10000");
        long most = inner.whole("at-most", FEWEST_DEVICES, MOST_DEVICES, USUAL_DEVICES, 10_000);
        long size = inner.whole("block", FEWEST_DEVICES, MOST_DEVICES, USUAL_BLOCK, USUAL_BLOCK);
        long digits = inner.whole("digits", 1, 2, 1, 1);
        long known = inner.quantity("known-to", unit, 1, Long.MAX_VALUE / 4, 0);
        if (inner.has("digits") == inner.has("known-to")) {
            inner.problem(
                    "known-to",
                    "expected one of 'known-to: %s', how well the limits are to be known, and"
                                    .formatted(Block.example(unit))
                            + " 'digits: 1', meaningful digits of the standard uncertainty");
        }
        inner.finish();
        return new Devices((int) most, new StudySpec.Stop(true, known, (int) digits, (int) size));
    }

    private StudySpec.Claim claim(RecordUnit unit) {
        if (block.node("expect") == null) {
            return StudySpec.Claim.NONE;
        }
        Block inner = block.block("expect", "expect");
        inner.require("within", "within: " + Block.example(unit));
        long within = inner.quantity("within", unit, 0, Long.MAX_VALUE / 4, 0);
        long share = inner.quantity("devices", PARTS_PER_MILLION, 500_000, 999_900, 950_000);
        String because = inner.text("because", "the pump needs that much");
        inner.finish();
        return new StudySpec.Claim(within, share, because == null ? "" : because);
    }

    private long every(long spanMillis) {
        long round = ROUND_MINUTES[ROUND_MINUTES.length - 1] * MINUTE_MILLIS;
        for (long minutes : ROUND_MINUTES) {
            if (spanMillis / (minutes * MINUTE_MILLIS) <= USUAL_MOMENTS) {
                round = minutes * MINUTE_MILLIS;
                break;
            }
        }
        long every = block.quantity("every", MILLIS, MINUTE_MILLIS, Long.MAX_VALUE / 4, round);
        if (every % MINUTE_MILLIS != 0) {
            block.valueProblem("every", "expected whole minutes such as '1 h'");
        } else if (spanMillis / every > MOST_MOMENTS) {
            block.valueProblem(
                    "every",
                    "this makes more than "
                            + MOST_MOMENTS
                            + " moments of the band; expected a longer time such as '"
                            + ScenarioWriter.time(round)
                            + "'");
        }
        return every;
    }

    private int gaugeIndex(List<Scenario> plain, String gauge) {
        int index = 0;
        for (Scenario each : plain) {
            List<String> names = each.gauges().stream().map(GaugeSpec::name).toList();
            index = names.indexOf(gauge);
            if (index < 0) {
                block.valueProblem(
                        "gauge",
                        "no gauge of the scenario is called '%s'; %s"
                                .formatted(Texts.shortened(gauge), Nearest.hint(gauge, names)));
                return 0;
            }
        }
        return index;
    }

    private static List<String> texts(List<Scenario> plain) {
        return plain.stream().map(it -> it.variant() + ScenarioWriter.digest(it)).toList();
    }

    private static String digest(List<?> parts) {
        try {
            byte[] hash =
                    MessageDigest.getInstance("SHA-256")
                            .digest(parts.toString().getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(Arrays.copyOf(hash, 8));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
