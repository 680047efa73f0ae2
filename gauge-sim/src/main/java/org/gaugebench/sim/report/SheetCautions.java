package org.gaugebench.sim.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.gaugebench.sim.advice.OwnSystem;
import org.gaugebench.sim.advice.SizingResult;
import org.gaugebench.sim.advice.SystemDangers;

/** What can hurt somebody or spoil a battery, with this system's own figures. */
final class SheetCautions {
    private SheetCautions() {}

    /** For the hands: before a tool is taken up. */
    static List<String> before(OwnSystem system) {
        SystemDangers danger = SystemDangers.of(system);
        List<String> lines = new ArrayList<>();
        lines.add(
                text(
                        "Rings, watch and chain off. Insulated tools. This battery holds %.0f Wh"
                            + " and can give about %.0f A into a spanner across its posts (%.1f V"
                            + " over %.1f milliohms; two in parallel give twice that).",
                        danger.wattHours(),
                        danger.shortAmps(),
                        danger.shortVolts(),
                        danger.milliohms()));
        lines.add("Negative off first, and on last.");
        lines.add("The gauge's fused supply wire goes on last of all, and comes off first.");
        lines.add(
                "Nothing may bridge the posts or stand proud of them: no tool, no strand of a"
                        + " cable, no screw. Cover them.");
        lines.add(
                "Never a meter's amp range across a battery: its leads are then a short circuit."
                        + " Amps by a clamp, or with the meter in a thin wire behind its fuse.");
        if (system.nominalVolts() >= 48) {
            lines.add(
                    "A 48 V battery on charge comes near 60 V: treat it as a voltage that can hurt,"
                            + " and ask what your local code says of it.");
        }
        return lines;
    }

    /** For the wires. */
    static List<String> wires(OwnSystem system, SizingResult sizing) {
        SystemDangers danger = SystemDangers.of(system);
        List<String> lines = new ArrayList<>();
        lines.add(
                text(
                        "The main fuse stands at the positive post, as near as can be (boats:"
                            + " within 7 in, farther only in a sheath). It is rated for the cable,"
                            + " and must be able to break more than the %.0f A above. A second"
                            + " battery in parallel adds to that; each has a fuse of its own.",
                        danger.shortAmps()));
        lines.add(
                "One cable only on the battery's side of the shunt. Every load, every charger and"
                        + " every earth ends on the other side; no second earth on the battery's"
                        + " side. With a starter motor the engine block is such an earth, and a"
                        + " data plug of another thing may be one.");
        lines.add(
                "The thin pair ends on the shunt's own small screws, never on its large bolts; it"
                        + " is twisted, both ends are of one metal, and each thin wire has a small"
                        + " fuse near where it begins (1 A is usual; common practice, no source).");
        lines.add(
                "A shunt in the positive cable instead has every thin wire live: fuse both, and let"
                        + " no bare end touch metal.");
        lines.add(
                text(
                        "The shunt stays at or below two thirds of its rating for hours (here %.1f"
                            + " A flow at most), and its peak (%.1f A) at or below the rating. It"
                            + " begins to drift at about 80 °C and is spoilt at about 140 °C. Let"
                            + " it stand in free air.",
                        sizing.steadyAmps(), sizing.peakAmps()));
        lines.add(
                text(
                        "Tighten to the maker's torque, and again after a week: each milliohm in a"
                                + " joint is %.1f W of heat at %.1f A, and 10 W at 100 A.",
                        sizing.steadyAmps() * sizing.steadyAmps() / 1e3, sizing.steadyAmps()));
        lines.add(
                "Never join batteries of two kinds or two ages in parallel. Let their volts be"
                        + " alike before you join them.");
        return lines;
    }

    /** For this kind of battery. */
    static List<String> battery(OwnSystem system) {
        SystemDangers danger = SystemDangers.of(system);
        List<String> lines = new ArrayList<>();
        if (system.chemistry().isLeadAcid()) {
            lines.add(
                    text(
                            "No sealed enclosure, and no electronics beside it: on charge it gives"
                                + " off hydrogen, which explodes from 4 %% in air. This one asks"
                                + " for about %.1f m³ of fresh air an hour (0.05 x cells x gassing"
                                + " current). No sparks.",
                            danger.airCubicMetresPerHour()));
            lines.add("A lead-acid battery that stays low for weeks is spoilt: charge it at once.");
        } else {
            lines.add(
                    "It needs a protection circuit that can part it from everything. A gauge is"
                            + " none; its relay must not be the only thing that switches off.");
            lines.add("No charging below 0 °C of the cells. A small current is no remedy.");
            lines.add(
                    "When the protection parts the battery, an alternator loses its load in an"
                            + " instant: it and what is on the wires must stand that.");
        }
        return lines;
    }

    /** For the figure. */
    static List<String> figure() {
        return List.of(
                "The percentage protects nothing. "
                        + Cautions.NO_PROTECTION
                        + " That holds for a bilge pump, for medical things and for heating.",
                Cautions.DEFER);
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
