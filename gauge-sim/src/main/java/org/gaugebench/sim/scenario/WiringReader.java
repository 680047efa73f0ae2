package org.gaugebench.sim.scenario;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.gaugebench.sim.units.QuantityFormat;
import org.gaugebench.sim.units.RecordUnit;
import org.gaugebench.sim.units.Texts;

/** Reads and writes the wiring; each key is also an address of the timeline. */
final class WiringReader {
    private static final List<String> KEYS =
            List.of(
                    "shunt",
                    "sense-leads",
                    "lug-resistance",
                    "joint-resistance",
                    "voltage-sense",
                    "own-supply",
                    "parallel-path");
    private static final String PAST = "past-shunt";

    private WiringReader() {}

    static WiringSpec read(Block block, List<String> partNames) {
        WiringSpec wiring = WiringSpec.RIGHT;
        for (String key : KEYS) {
            wiring = wiring.with(key, value(block, key, key, wiring.get(key)));
        }
        Block past = block.block(PAST, PAST);
        Map<String, Long> parts = new TreeMap<>();
        for (String name : past.names()) {
            past.has(name);
            if (partNames.contains(name)) {
                parts.put(name, value(past, name, PAST, 0));
            } else {
                past.problem(
                        name,
                        "there is no load or charger '"
                                + Texts.shortened(name)
                                + "'; "
                                + Nearest.hint(name, partNames));
            }
        }
        block.finish();
        for (Map.Entry<String, Long> part : parts.entrySet()) {
            wiring = wiring.with(PAST + "." + part.getKey(), part.getValue());
        }
        return wiring;
    }

    /** The names of the parts whose current can go past the shunt. */
    static List<String> partNames(List<ChargerSpec> chargers, List<LoadSpec> loads) {
        List<String> names = new ArrayList<>();
        loads.forEach(load -> names.add(load.name()));
        chargers.forEach(charger -> names.add(charger.name()));
        return names;
    }

    /** Every key below "wiring" that a timeline can set. */
    static List<String> addresses(Parts parts) {
        List<String> addresses = new ArrayList<>(KEYS);
        partNames(parts.chargers(), parts.loads())
                .forEach(name -> addresses.add(PAST + "." + name));
        return addresses;
    }

    /**
     * One value.
     *
     * @param blockKey as the file writes it here
     * @param key below "wiring"
     */
    static long value(Block block, String blockKey, String key, long usual) {
        return switch (key) {
            case "shunt" -> block.either(blockKey, "reversed", "right-way", usual != 0) ? 1 : 0;
            case "voltage-sense" -> block.either(blockKey, "battery", "bus", usual != 0) ? 1 : 0;
            case "sense-leads" ->
                    block.choice(
                                    blockKey,
                                    List.of(WiringSpec.Leads.values()),
                                    WiringSpec.Leads::key,
                                    WiringSpec.Leads.values()[(int) usual])
                            .ordinal();
            default -> block.quantityOrNone(blockKey, unit(key), 0, maximum(key), usual);
        };
    }

    private static RecordUnit unit(String key) {
        return switch (key) {
            case "lug-resistance", "joint-resistance" -> RecordUnit.MICROOHMS;
            case "own-supply" -> RecordUnit.MICROAMPS;
            default -> RecordUnit.PARTS_PER_MILLION;
        };
    }

    private static long maximum(String key) {
        return switch (key) {
            case "lug-resistance", "joint-resistance" -> 1_000_000;
            case "own-supply" -> 10_000_000;
            default -> Defaults.WHOLE;
        };
    }

    /** A value as the file writes it. */
    static String text(String key, long value) {
        return switch (key) {
            case "shunt" -> value != 0 ? "reversed" : "right-way";
            case "voltage-sense" -> value != 0 ? "battery" : "bus";
            case "sense-leads" -> WiringSpec.Leads.values()[(int) value].key();
            default -> value == 0 ? "none" : QuantityFormat.format(value, unit(key));
        };
    }

    /** Writes nothing for a wiring without fault. */
    static void write(WiringSpec wiring, Lines lines) {
        if (wiring.equals(WiringSpec.RIGHT)) {
            return;
        }
        lines.open("wiring");
        for (String key : KEYS) {
            lines.value(key, text(key, wiring.get(key)), text(key, WiringSpec.RIGHT.get(key)));
        }
        if (!wiring.pastShunt().isEmpty()) {
            lines.open(PAST);
            wiring.pastShunt().forEach((name, part) -> lines.value(name, text(PAST, part)));
            lines.close();
        }
        lines.close();
    }
}
