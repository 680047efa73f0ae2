package org.gaugebench.sim.scenario;

import static org.gaugebench.sim.units.RecordUnit.MICROAMPS;
import static org.gaugebench.sim.units.RecordUnit.MICROAMP_HOURS;
import static org.gaugebench.sim.units.RecordUnit.MICROVOLTS;
import static org.gaugebench.sim.units.RecordUnit.MILLIS;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.units.Texts;
import org.snakeyaml.engine.v2.nodes.Node;

/** Reads the top level of a scenario and hands each part to its reader. */
final class FileReader {
    private static final long LATEST = Long.MAX_VALUE / 4;
    private static final long MOST_TICKS = 2_000_000_000;
    private static final long LONGEST_TICK_MILLIS = 60_000;
    private static final int LONGEST_TITLE = 200;
    private static final int LONGEST_ABOUT = 20_000;
    private static final int MOST_PARTS = 100;
    private static final Set<String> RESERVED =
            Set.of(
                    "isolator",
                    "protection",
                    "battery",
                    "sensor",
                    "gauge",
                    "truth",
                    "wiring",
                    "none");

    private final Problems problems;
    private final String fileName;
    private final ProfileFolder folder;
    private final Set<String> names = new HashSet<>();

    FileReader(Problems problems, String fileName, ProfileFolder folder) {
        this.problems = problems;
        this.fileName = fileName;
        this.folder = folder;
    }

    Scenario read(Node root) {
        Block file = new Block(problems, root, "the scenario");
        readFormat(file);
        file.require("title", "title: A week in the tide-gauge hut");
        file.require("duration", "duration: 7 d");
        file.require("battery", "battery: {chemistry: lead-acid-agm, capacity: 60 Ah}");
        file.require("sensor", "sensor: {shunt: 100 A / 75 mV}");
        String title = limitedText(file, "title", "A week in the tide-gauge hut", LONGEST_TITLE);
        String about = limitedText(file, "about", "What it shows.", LONGEST_ABOUT);
        Marks marks = new MarksReader(problems, file).read();
        long seed = file.whole("seed", -LATEST, LATEST, Defaults.SEED, 1);
        long tick = file.quantity("tick", MILLIS, 1, LONGEST_TICK_MILLIS, Defaults.TICK_MILLIS);
        long duration = readDuration(file, tick);
        Block batteryBlock = required(file, "battery");
        BatterySpec battery = file.has("battery") ? BatteryReader.read(batteryBlock) : standIn();
        Block sensorBlock = required(file, "sensor");
        SensorSpec sensor =
                file.has("sensor")
                        ? SensorReader.read(sensorBlock, folder)
                        : Defaults.sensor(100_000_000, 75_000);
        List<GaugeSpec> gauges = readGauges(file, batteryBlock, battery, sensorBlock, sensor);
        List<ChargerSpec> chargers = new ArrayList<>();
        Block chargerBlock = file.block("chargers", "chargers");
        for (String name : newNames(chargerBlock, "charger")) {
            Block block = chargerBlock.block(name, "charger '" + name + "'");
            chargers.add(ChargerReader.read(block, name, battery, tick, folder));
        }
        List<LoadSpec> loads = new ArrayList<>();
        Block loadBlock = file.block("loads", "loads");
        for (String name : newNames(loadBlock, "load")) {
            Block block = loadBlock.block(name, "load '" + name + "'");
            loads.add(LoadReader.read(block, name, battery, folder));
        }
        WiringSpec wiring =
                WiringReader.read(
                        file.block("wiring", "wiring"), WiringReader.partNames(chargers, loads));
        Parts parts = new Parts(battery, sensor, gauges, chargers, loads, wiring);
        List<Change> changes =
                new TimelineReader(problems, duration, parts)
                        .read(file.list("timeline", "{at: 2 h, set: {lamp: on}}"));
        List<Expectation> expectations =
                new ExpectationReader(problems, duration, gauges)
                        .read(
                                file.list(
                                        "expect",
                                        "{at: 7 d, reading: state-of-charge, within: 2 %,"
                                                + " of: truth}"));
        // Read before this, by PartReader and VaryReader.
        file.hasAny(PartReader.KEY, VaryReader.VARY, VaryReader.SEEDS);
        file.finish();
        return new Scenario(
                fileName,
                "",
                title,
                about,
                marks,
                seed,
                duration,
                tick,
                battery,
                sensor,
                gauges,
                List.copyOf(chargers),
                List.copyOf(loads),
                wiring,
                changes,
                expectations);
    }

    private static BatterySpec standIn() {
        return Defaults.battery(
                Chemistry.LEAD_ACID_AGM, Defaults.NOMINAL_VOLTS, 100 * Defaults.AMP_HOUR);
    }

    /** A block that has to be there; its absence is reported once, not again for its keys. */
    private static Block required(Block file, String key) {
        return file.block(key, key);
    }

    private void readFormat(Block file) {
        file.require("format", "format: 1");
        String format = file.text("format", "1");
        if (format != null && !format.equals("1")) {
            file.valueProblem(
                    "format",
                    "this program reads format 1, but the file says '"
                            + Texts.shortened(format)
                            + "'; expected 'format: 1'");
        }
    }

    private static String limitedText(Block file, String key, String example, int longest) {
        String text = file.text(key, example);
        if (text == null) {
            return "";
        }
        if (text.length() > longest) {
            file.valueProblem(key, "'" + key + "' is longer than " + longest + " characters");
        }
        if (key.equals("title") && (text.isBlank() || text.contains("\n"))) {
            file.valueProblem(key, "expected one line such as 'title: " + example + "'");
        }
        return text;
    }

    private long readDuration(Block file, long tick) {
        long unknown = TimelineReader.UNKNOWN_DURATION;
        long duration = file.quantity("duration", MILLIS, 1, LATEST - 1, unknown);
        if (duration == unknown) {
            return unknown;
        }
        if (duration % tick != 0) {
            file.valueProblem(
                    "duration", "'duration' must be a whole number of ticks of " + tick + " ms");
        } else if (duration / tick > MOST_TICKS) {
            file.valueProblem(
                    "duration",
                    "'duration' must be at most 2000000000 ticks, but is "
                            + duration / tick
                            + "; take a shorter time or a longer 'tick'");
            return unknown;
        }
        return duration;
    }

    private List<GaugeSpec> readGauges(
            Block file, Block batteryBlock, BatterySpec battery, Block sensorBlock, SensorSpec s) {
        Block block = file.block("gauge", "gauge");
        GaugeReader reader =
                new GaugeReader(
                        problems, block, setting -> origin(setting, batteryBlock, sensorBlock));
        GaugeSpec first =
                reader.read(
                        GaugeReader.FIRST,
                        Defaults.settings(battery, s),
                        battery,
                        s,
                        PowerSpec.USUAL,
                        ClockSpec.USUAL);
        reader.refuseCut(Setting.SHUNT_RATED_CURRENT, s.shuntRatedMicroamps(), MICROAMPS);
        reader.refuseCut(Setting.VOLTAGE_FULL_SCALE, s.voltageFullScaleMicrovolts(), MICROVOLTS);
        reader.refuseCut(Setting.CAPACITY, battery.capacityMicroampHours(), MICROAMP_HOURS);
        List<GaugeSpec> gauges = new ArrayList<>();
        gauges.add(first);
        Map<Setting, Long> usual = new EnumMap<>(Setting.class);
        for (Setting setting : Setting.values()) {
            usual.put(setting, first.settings().get(setting));
        }
        for (Node node : file.list("beside", "{name: plain, kind: plain-counter}")) {
            Block beside = new Block(problems, node, "this gauge beside");
            beside.require("name", "name: plain");
            String name = beside.text("name", "plain");
            if (name != null) {
                checkName(beside, "name", name);
            }
            gauges.add(
                    new GaugeReader(problems, beside, setting -> beside.mark())
                            .read(
                                    name == null ? "" : name,
                                    usual,
                                    battery,
                                    s,
                                    first.power(),
                                    first.clock()));
            checkNumber(file, "beside", gauges.size());
        }
        return List.copyOf(gauges);
    }

    private static SourceMark origin(Setting setting, Block battery, Block sensor) {
        return switch (setting) {
            case SHUNT_RATED_CURRENT, SHUNT_RATED_DROP -> sensor.markOf("shunt");
            case SHUNT_CONVERTER_BITS, SHUNT_FULL_SCALE -> sensor.markOf("converter");
            case VOLTAGE_CONVERTER_BITS, VOLTAGE_FULL_SCALE -> sensor.markOf("voltage-converter");
            case CAPACITY -> battery.markOf("capacity");
            default -> battery.markOf("nominal-voltage");
        };
    }

    private List<String> newNames(Block block, String kind) {
        List<String> found = block.names();
        for (String name : found) {
            checkName(block, name, name);
        }
        checkNumber(block, found.isEmpty() ? kind : found.get(found.size() - 1), found.size());
        return found;
    }

    private static void checkNumber(Block block, String key, int number) {
        if (number == MOST_PARTS + 1) {
            block.problem(key, "more than " + MOST_PARTS + " parts of one kind");
        }
    }

    private void checkName(Block block, String key, String name) {
        if (!name.matches("[a-z][a-z0-9-]{0,30}")) {
            block.problem(
                    key,
                    "a name is lower-case letters, digits and hyphens, at most 31, such as"
                            + " 'lamp-2'; found '"
                            + Texts.shortened(name)
                            + "'");
        } else if (RESERVED.contains(name)) {
            block.problem(key, "the name '" + name + "' is taken by the scenario itself");
        } else if (!names.add(name)) {
            block.problem(key, "the name '" + name + "' stands for another part already");
        }
    }
}
