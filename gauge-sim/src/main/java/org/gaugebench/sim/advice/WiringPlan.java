package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.List;

/**
 * What is joined to what in an owner's system: the model behind the wiring drawing. The drawing
 * shows nothing that is not in here, so that what holds here holds on paper.
 *
 * @param parts in the order in which they are drawn
 * @param wires each from one part to another
 */
public record WiringPlan(List<Part> parts, List<Wire> wires) {
    /** Keeps its own lists. */
    public WiringPlan {
        parts = List.copyOf(parts);
        wires = List.copyOf(wires);
    }

    /** What a part is. */
    public enum Kind {
        /** The battery's positive post. */
        POSITIVE_POST,
        /** The battery's negative post. */
        NEGATIVE_POST,
        /** The shunt's bolt towards the battery. */
        SHUNT_BATTERY_SIDE,
        /** The shunt's bolt towards everything else. */
        SHUNT_LOAD_SIDE,
        /** The fuse at the positive post. */
        MAIN_FUSE,
        /** Parts the battery from everything. */
        SWITCH,
        /** Where everything's positive ends. */
        POSITIVE_RAIL,
        /** Where everything's negative ends. */
        NEGATIVE_RAIL,
        /** The fuse of one load, charger or inverter. */
        FUSE,
        /** Draws. */
        LOAD,
        /** Makes mains voltage; what is plugged into it stands in its name. */
        INVERTER,
        /** Charges from the mains. */
        MAINS_CHARGER,
        /** Charges from a solar panel. */
        SOLAR_CHARGER,
        /** Charges from something else. */
        CHARGER,
        /** The one earth. */
        EARTH,
        /** The gauge. */
        GAUGE,
        /** The small fuse of the gauge's supply wire. */
        GAUGE_FUSE
    }

    /** What a wire is for. */
    public enum Use {
        /** Carries what is drawn and charged. */
        CABLE,
        /** Feeds the gauge. */
        SUPPLY,
        /** Only measures: on the shunt's own small screws. */
        SENSE
    }

    /**
     * A part.
     *
     * @param kind what it is
     * @param id short, unique in the plan
     * @param name as the owner calls it
     */
    public record Part(Kind kind, String id, String name) {
        /** Whether it stands on a rung between the rails and has a negative. */
        public boolean isUser() {
            return switch (kind) {
                case LOAD, INVERTER, MAINS_CHARGER, SOLAR_CHARGER, CHARGER -> true;
                default -> false;
            };
        }
    }

    /**
     * A wire.
     *
     * @param from id of a part
     * @param to id of another
     * @param use what it is for
     */
    public record Wire(String from, String to, Use use) {}

    /** What charges, as it is drawn. */
    public enum Source {
        /** The mains, a shore line or a generator. */
        MAINS,
        /** A solar panel with its charge controller. */
        SOLAR,
        /** Anything else. */
        OTHER;

        private Kind kind() {
            return switch (this) {
                case MAINS -> Kind.MAINS_CHARGER;
                case SOLAR -> Kind.SOLAR_CHARGER;
                case OTHER -> Kind.CHARGER;
            };
        }

        private String words() {
            return switch (this) {
                case MAINS -> "charger (mains)";
                case SOLAR -> "charger (solar)";
                case OTHER -> "charger";
            };
        }
    }

    /**
     * The system wired as it should be.
     *
     * @param system as it was told
     * @param sources what charges; one of {@link Source#OTHER} stands for a charger that nobody
     *     named
     * @param isEarthed whether the negative rail has an earth
     */
    public static WiringPlan of(OwnSystem system, List<Source> sources, boolean isEarthed) {
        return new Builder(system, sources, isEarthed).plan("");
    }

    /** The same with one negative on the battery's own post; a mistake, to be shown as one. */
    public static WiringPlan withMistake(
            OwnSystem system, List<Source> sources, boolean isEarthed, String wrongId) {
        return new Builder(system, sources, isEarthed).plan(wrongId);
    }

    /** A part by its id. */
    public Part part(String id) {
        return parts.stream()
                .filter(it -> it.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no part " + id));
    }

    /** The wires of one use that end at the first part of a kind. */
    public List<Wire> at(Kind kind, Use use) {
        String id =
                parts.stream().filter(it -> it.kind() == kind).map(Part::id).findFirst().orElse("");
        return wires.stream()
                .filter(it -> it.use() == use)
                .filter(it -> it.from().equals(id) || it.to().equals(id))
                .toList();
    }

    /** What is wrong with it, in plain words; empty if every current goes through the shunt. */
    public List<String> faults() {
        List<String> faults = new ArrayList<>();
        int atPost =
                at(Kind.NEGATIVE_POST, Use.CABLE).size()
                        + at(Kind.NEGATIVE_POST, Use.SUPPLY).size();
        if (atPost != 1) {
            faults.add(atPost + " wires on the battery's negative post; there must be one");
        }
        if (at(Kind.SHUNT_BATTERY_SIDE, Use.CABLE).size() != 1
                || !at(Kind.SHUNT_BATTERY_SIDE, Use.SUPPLY).isEmpty()) {
            faults.add("more than one cable on the battery's side of the shunt");
        }
        for (Part each : parts) {
            boolean needs = each.isUser() || each.kind() == Kind.EARTH;
            if (needs && !isJoined(each.id(), "negative-rail")) {
                faults.add(each.name() + ": its negative is not on the load side of the shunt");
            }
            if (each.isUser() && !isJoined(each.id(), "fuse-" + each.id())) {
                faults.add(each.name() + ": it has no fuse");
            }
        }
        return faults;
    }

    private boolean isJoined(String one, String other) {
        return wires.stream()
                .anyMatch(
                        it ->
                                (it.from().equals(one) && it.to().equals(other))
                                        || (it.from().equals(other) && it.to().equals(one)));
    }

    private static final class Builder {
        private final OwnSystem system;
        private final List<Source> sources;
        private final boolean isEarthed;
        private final List<Part> parts = new ArrayList<>();
        private final List<Wire> wires = new ArrayList<>();

        Builder(OwnSystem system, List<Source> sources, boolean isEarthed) {
            this.system = system;
            this.sources = sources;
            this.isEarthed = isEarthed;
        }

        WiringPlan plan(String wrongId) {
            part(Kind.POSITIVE_POST, "positive-post", "battery +");
            part(Kind.NEGATIVE_POST, "negative-post", "battery -");
            part(Kind.MAIN_FUSE, "main-fuse", "main fuse");
            part(Kind.SWITCH, "switch", "battery switch");
            part(Kind.SHUNT_BATTERY_SIDE, "shunt-battery-side", "shunt, battery side");
            part(Kind.SHUNT_LOAD_SIDE, "shunt-load-side", "shunt, load side");
            part(Kind.POSITIVE_RAIL, "positive-rail", "positive rail");
            part(Kind.NEGATIVE_RAIL, "negative-rail", "negative rail");
            part(Kind.GAUGE_FUSE, "gauge-fuse", "gauge fuse");
            part(Kind.GAUGE, "gauge", "gauge");
            cable("positive-post", "main-fuse");
            cable("main-fuse", "switch");
            cable("switch", "positive-rail");
            cable("negative-post", "shunt-battery-side");
            cable("shunt-load-side", "negative-rail");
            wires.add(new Wire("positive-post", "gauge-fuse", Use.SUPPLY));
            wires.add(new Wire("gauge-fuse", "gauge", Use.SUPPLY));
            wires.add(new Wire("gauge", "shunt-load-side", Use.SUPPLY));
            wires.add(new Wire("gauge", "shunt-battery-side", Use.SENSE));
            wires.add(new Wire("gauge", "shunt-load-side", Use.SENSE));
            users(wrongId);
            if (isEarthed) {
                part(Kind.EARTH, "earth", "earth");
                wires.add(new Wire("negative-rail", "earth", Use.CABLE));
            }
            return new WiringPlan(parts, wires);
        }

        private void users(String wrongId) {
            int number = 1;
            StringBuilder plugged = new StringBuilder();
            for (OwnLoad each : system.loads()) {
                if (each.byInverter()) {
                    plugged.append(plugged.isEmpty() ? "" : ", ").append(each.name());
                } else {
                    user(Kind.LOAD, "load-" + number, each.name(), wrongId);
                    number++;
                }
            }
            if (system.inverter() != null) {
                String name = plugged.isEmpty() ? "inverter" : "inverter: " + plugged;
                user(Kind.INVERTER, "inverter", name, wrongId);
            }
            number = 1;
            for (Source each : sources) {
                user(each.kind(), "charger-" + number, each.words(), wrongId);
                number++;
            }
        }

        private void user(Kind kind, String id, String name, String wrongId) {
            part(kind, id, name);
            part(Kind.FUSE, "fuse-" + id, "fuse");
            cable("positive-rail", "fuse-" + id);
            cable("fuse-" + id, id);
            cable(id, id.equals(wrongId) ? "negative-post" : "negative-rail");
        }

        private void part(Kind kind, String id, String name) {
            parts.add(new Part(kind, id, name));
        }

        private void cable(String from, String to) {
            wires.add(new Wire(from, to, Use.CABLE));
        }
    }
}
