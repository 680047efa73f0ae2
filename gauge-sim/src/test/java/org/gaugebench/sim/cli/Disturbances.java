package org.gaugebench.sim.cli;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.gaugebench.sim.scenario.Mistake;

/**
 * What can be made different about any scenario: its truth, its sensor, its wiring, each of its
 * gauges, its timeline. Some do not apply or are refused by the reader; those say nothing.
 */
final class Disturbances {
    private static final Pattern PATH = Pattern.compile("\\.");
    private static final Pattern AMOUNT = Pattern.compile("(-?[0-9.]+)( .*)");

    private Disturbances() {}

    /** All that could be done to this scenario, the coarse ones first. */
    static List<Disturbance> of(Map<String, Object> scenario) {
        List<Disturbance> all = new ArrayList<>();
        gauges(scenario, all);
        for (String[] key : DisturbedKeys.ALONE) {
            for (int i = 1; i < key.length; i++) {
                all.add(set(key[0], key[i]));
            }
        }
        all.add(scaled("battery.capacity", "0.5"));
        all.add(scaled("battery.capacity", "2"));
        timeline(scenario, all);
        things(scenario, all);
        return all;
    }

    private static void things(Map<String, Object> scenario, List<Disturbance> all) {
        for (String kind : List.of("loads", "chargers")) {
            for (String name : map(scenario, kind).keySet()) {
                String path = kind + '.' + name;
                all.add(set(path + ".switched", "off"));
                all.add(set(path + ".switched", "on"));
                for (String amount : List.of("current", "power", "absorption", "float")) {
                    all.add(scaled(path + '.' + amount, "1.2"));
                    all.add(scaled(path + '.' + amount, "0.5"));
                }
                for (String trait :
                        List.of(
                                "pulse-width",
                                "ripple",
                                "inrush",
                                "sun",
                                "equalizing",
                                "runs-for",
                                "cable-resistance",
                                "meter-error",
                                "on-for",
                                "every")) {
                    all.add(without(path, trait));
                }
                all.add(set("wiring.past-shunt." + name, "100 %"));
                all.add(set("wiring.past-shunt." + name, "none"));
            }
        }
    }

    private static void gauges(Map<String, Object> scenario, List<Disturbance> all) {
        gauge("gauge", map(scenario, "gauge"), all);
        int index = 0;
        for (Object beside : list(scenario, "beside")) {
            @SuppressWarnings("unchecked")
            Map<String, Object> map = (Map<String, Object>) beside;
            gauge("beside." + index++, map, all);
        }
    }

    private static void gauge(String path, Map<String, Object> gauge, List<Disturbance> all) {
        Object kind = gauge.get("kind");
        all.add(scaled(path + ".capacity", "0.5"));
        all.add(scaled(path + ".capacity", "2"));
        if (!"plain-counter".equals(kind)) {
            all.add(kind(path, "plain-counter", List.of()));
        }
        if (!"core".equals(kind)) {
            all.add(kind(path, "core", List.of()));
        }
        for (Mistake mistake : Mistake.values()) {
            all.add(kind(path, "exhibit", withBase(mistake.key())));
        }
        for (Object mistake : list(gauge, "mistakes")) {
            List<Object> fewer = new ArrayList<>(list(gauge, "mistakes"));
            fewer.remove(mistake);
            all.add(kind(path, fewer.isEmpty() ? "plain-counter" : "exhibit", fewer));
        }
        for (String[] key : DisturbedKeys.SETTINGS) {
            for (int i = 1; i < key.length; i++) {
                all.add(set(path + '.' + key[0], key[i]));
            }
        }
        all.add(
                together(
                        path + " believes everything",
                        set(path + ".absorption", "12 V"),
                        set(path + ".empty-voltage", "0 V"),
                        set(path + ".float-voltage", "0 V"),
                        set(path + ".absorption-margin", "0 V"),
                        set(path + ".temperature-coefficient", "0 mV/K"),
                        set(path + ".taper", "20 %"),
                        set(path + ".hold", "1 min"),
                        set(path + ".flatness", "0 V"),
                        set(path + ".quiet-time", "0 s"),
                        set(path + ".offset-bound", "1 uA"),
                        set(path + ".rearm-discharge", "0.1 %")));
        all.add(
                together(
                        path + " trusts a resting voltage",
                        set(path + ".rest-time", "1 h"),
                        set(path + ".rest-voltage-bound", "1 mV"),
                        set(path + ".declared-residual", "50 %"),
                        set(path + ".offset-bound", "1 A"),
                        set(path + ".quiet-time", "0 s")));
        all.add(
                together(
                        path + " takes any voltage for empty",
                        set(path + ".empty-voltage", "13.4 V"),
                        set(path + ".empty-current", "100 %"),
                        set(path + ".declared-residual", "50 %"),
                        set(path + ".quiet-time", "0 s")));
        all.add(set(path + ".clock.error", "20 %"));
        all.add(set(path + ".clock.error", "0 %"));
        all.add(set(path + ".cut-leaves", "silently-not-written"));
        all.add(set(path + ".memory", new LinkedHashMap<>(Map.of("slots", 4))));
        all.add(without(path + ".memory", "faults"));
        all.add(
                new Disturbance(
                        path + " has a memory that never worked",
                        tree -> {
                            Map<String, Object> memory = at(tree, path + ".memory");
                            if (memory == null) {
                                return false;
                            }
                            for (Object fault : list(memory, "faults")) {
                                @SuppressWarnings("unchecked")
                                Map<String, Object> map = (Map<String, Object>) fault;
                                map.remove("from");
                            }
                            return true;
                        }));
        all.add(
                together(
                        path + " takes any sag for empty",
                        kind(path, "exhibit", List.of("empty-by-volts-alone")),
                        set(path + ".empty-voltage", "13.2 V")));
        all.add(
                together(
                        path + " takes any voltage for empty, and is sure",
                        set("battery.temperature", "20 °C"),
                        set("battery.surroundings", "none"),
                        set(path + ".empty-voltage", "13.4 V"),
                        set(path + ".empty-current", "100 %"),
                        set(path + ".capacity", "10000 Ah @ 20 h"),
                        set(path + ".declared-residual", "0 %"),
                        set(path + ".quiet-time", "0 s")));
        all.add(
                together(
                        path + " takes any voltage for full",
                        kind(path, "exhibit", List.of("full-by-voltage-only")),
                        set(path + ".absorption", "12 V"),
                        set(path + ".empty-voltage", "0 V"),
                        set(path + ".float-voltage", "0 V")));
    }

    /** Some mistakes are only made beside another one. */
    private static List<String> withBase(String mistake) {
        return switch (mistake) {
            case "no-rearm" -> List.of("full-by-voltage-only", mistake);
            case "filter-seeded-with-zero" -> List.of("hours-single-pole-3-min", mistake);
            case "minutes-16-bit", "hours-clamped-as-measured" -> List.of("hours-instant", mistake);
            default -> List.of(mistake);
        };
    }

    private static Disturbance kind(String path, String kind, List<?> mistakes) {
        return new Disturbance(
                path + " is a " + kind + " " + mistakes,
                scenario -> {
                    Map<String, Object> gauge = at(scenario, path);
                    if (gauge == null) {
                        return false;
                    }
                    gauge.put("kind", kind);
                    gauge.remove("mistakes");
                    if (!mistakes.isEmpty()) {
                        gauge.put("mistakes", new ArrayList<>(mistakes));
                        if (mistakes.toString().matches(".*(start-at-full|voltage-guess).*")) {
                            gauge.remove("start");
                        }
                    } else if (!gauge.containsKey("start")) {
                        gauge.put("start", "50 %");
                    }
                    return true;
                });
    }

    private static void timeline(Map<String, Object> scenario, List<Disturbance> all) {
        List<Object> steps = list(scenario, "timeline");
        if (!steps.isEmpty()) {
            all.add(
                    new Disturbance(
                            "no timeline",
                            tree -> {
                                tree.remove("timeline");
                                return true;
                            }));
        }
        TreeSet<String> keys = new TreeSet<>();
        for (Object step : steps) {
            @SuppressWarnings("unchecked")
            Map<String, Object> map = (Map<String, Object>) step;
            keys.addAll(map.containsKey("set") ? map(map, "set").keySet() : List.of("command"));
        }
        for (String key : keys) {
            all.add(
                    new Disturbance(
                            "nothing sets " + key,
                            tree -> {
                                list(tree, "timeline").removeIf(step -> concerns(step, key));
                                return true;
                            }));
        }
        List<String> extras = new ArrayList<>();
        for (Object beside : list(scenario, "beside")) {
            @SuppressWarnings("unchecked")
            Map<String, Object> map = (Map<String, Object>) beside;
            extras.add(map.get("name") + ".chemistry=nmc");
        }
        extras.addAll(
                List.of(
                        "sensor.samples=stuck",
                        "sensor.samples=missing",
                        "isolator=open",
                        "gauge.power=off",
                        "gauge.declare=100 %",
                        "gauge.declare=0 %",
                        "protection=open",
                        "gauge.clock=stopped",
                        "gauge.clock-jump=1 d"));
        for (String extra : extras) {
            for (String when : List.of("1 s", "1 h", "1 d")) {
                all.add(step(when, extra));
            }
        }
    }

    private static boolean concerns(Object step, String key) {
        @SuppressWarnings("unchecked")
        Map<String, Object> map = (Map<String, Object>) step;
        return map.containsKey(key) || map(map, "set").containsKey(key);
    }

    private static Disturbance step(String when, String setting) {
        int sign = setting.indexOf('=');
        String key = setting.substring(0, sign);
        String value = setting.substring(sign + 1);
        return new Disturbance(
                setting + " at " + when,
                tree -> {
                    Map<String, Object> step = new LinkedHashMap<>();
                    step.put("at", when);
                    step.put("set", new LinkedHashMap<>(Map.of(key, value)));
                    List<Object> steps = new ArrayList<>(list(tree, "timeline"));
                    steps.add(step);
                    tree.put("timeline", steps);
                    return true;
                });
    }

    private static Disturbance set(String path, Object value) {
        return new Disturbance(
                path + ": " + value,
                tree -> {
                    int dot = path.lastIndexOf('.');
                    Map<String, Object> block = dot < 0 ? tree : at(tree, path.substring(0, dot));
                    if (block == null || value.equals(block.get(path.substring(dot + 1)))) {
                        return false;
                    }
                    block.put(path.substring(dot + 1), value);
                    return true;
                });
    }

    /** Several at once, for claims that one change alone does not reach. */
    private static Disturbance together(String name, Disturbance... parts) {
        return new Disturbance(
                name,
                tree -> {
                    boolean changed = false;
                    for (Disturbance part : parts) {
                        changed |= part.edit().change(tree);
                    }
                    return changed;
                });
    }

    private static Disturbance without(String path, String key) {
        return new Disturbance(
                path + " without " + key,
                tree -> {
                    Map<String, Object> block = at(tree, path);
                    if (block == null || block.remove(key) == null) {
                        return false;
                    }
                    if (key.equals("on-for") || key.equals("every")) {
                        block.remove("every");
                        block.remove("on-for");
                    }
                    return true;
                });
    }

    private static Disturbance scaled(String path, String factor) {
        return new Disturbance(
                path + " times " + factor,
                tree -> {
                    int dot = path.lastIndexOf('.');
                    Map<String, Object> block = at(tree, path.substring(0, dot));
                    Object old = block == null ? null : block.get(path.substring(dot + 1));
                    Matcher matcher = AMOUNT.matcher(String.valueOf(old));
                    if (old == null || !matcher.matches()) {
                        return false;
                    }
                    BigDecimal amount =
                            new BigDecimal(matcher.group(1)).multiply(new BigDecimal(factor));
                    block.put(
                            path.substring(dot + 1),
                            amount.stripTrailingZeros().toPlainString() + matcher.group(2));
                    return true;
                });
    }

    /** The block at a path, made where it is missing; null where something else stands there. */
    private static Map<String, Object> at(Map<String, Object> tree, String path) {
        Object here = tree;
        for (String key : PATH.split(path, -1)) {
            if (here instanceof List<?> items) {
                here = items.get(Integer.parseInt(key));
            } else if (here instanceof Map<?, ?>) {
                @SuppressWarnings("unchecked")
                Map<String, Object> map = (Map<String, Object>) here;
                here = map.computeIfAbsent(key, k -> new LinkedHashMap<String, Object>());
            } else {
                return null;
            }
        }
        @SuppressWarnings("unchecked")
        Map<String, Object> found = here instanceof Map ? (Map<String, Object>) here : null;
        return found;
    }

    @SuppressWarnings("unchecked")
    private static Map<String, Object> map(Map<String, Object> tree, String key) {
        return tree.get(key) instanceof Map ? (Map<String, Object>) tree.get(key) : Map.of();
    }

    @SuppressWarnings("unchecked")
    private static List<Object> list(Map<String, Object> tree, String key) {
        return tree.get(key) instanceof List ? (List<Object>) tree.get(key) : new ArrayList<>();
    }
}
