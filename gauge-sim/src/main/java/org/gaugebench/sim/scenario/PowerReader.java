package org.gaugebench.sim.scenario;

import static org.gaugebench.sim.units.RecordUnit.MILLIS;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.sim.memory.CutPlan;
import org.gaugebench.sim.memory.MemoryFault;
import org.gaugebench.sim.memory.MemoryFault.Kind;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.nodes.Node;

/** Reads what a gauge saves into and what it knows after a time without power. */
final class PowerReader {
    static final long LONGEST_MILLIS = 3_650L * 86_400_000;
    private static final int FEWEST_SLOTS = 2;
    private static final int MOST_SLOTS = 256;
    private static final int FEWEST_BYTES = 16;
    private static final int MOST_BYTES = 4_096;
    private static final int MOST_ERASES = 1_000_000_000;
    private static final int MOST_FAULTS = 100;
    private static final int ALL = -1;

    private final Problems problems;
    private final Block gauge;

    PowerReader(Problems problems, Block gauge) {
        this.problems = problems;
        this.gauge = gauge;
    }

    /** Reads the keys in a gauge's block; what it leaves out is as usual. */
    PowerSpec read(PowerSpec usual) {
        return new PowerSpec(
                memory(usual.memory()),
                gauge.choice(
                        "off-time", List.of(OffTime.values()), PowerReader::key, usual.offTime()),
                gauge.quantityOrNone(
                        "off-time-limit", MILLIS, 1, LONGEST_MILLIS, usual.offTimeLimitMillis()),
                gauge.choice(
                        "cut-leaves",
                        List.of(CutPlan.Manner.values()),
                        PowerReader::key,
                        usual.cutLeaves()),
                gauge.quantity("cut-for", MILLIS, 0, LONGEST_MILLIS, usual.cutMillis()));
    }

    static String key(Enum<?> word) {
        return word.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private @Nullable MemorySpec memory(@Nullable MemorySpec usual) {
        if (gauge.isWord("memory", "none")) {
            return null;
        }
        if (!gauge.has("memory")) {
            return usual;
        }
        Block block = gauge.block("memory", "memory");
        block.require("slots", "slots: 8");
        int slots = (int) block.whole("slots", FEWEST_SLOTS, MOST_SLOTS, MOST_SLOTS, 8);
        int bytes =
                (int) block.whole("slot-bytes", FEWEST_BYTES, MOST_BYTES, Defaults.SLOT_BYTES, 256);
        long endurance =
                block.isWord("endurance", "none")
                        ? 0
                        : block.whole("endurance", 1, MOST_ERASES, 0, 100_000);
        List<MemoryFault> faults = new ArrayList<>();
        List<Node> items = block.list("faults", "{kind: program-error, slot: all}");
        if (items.size() > MOST_FAULTS) {
            block.problem("faults", "more than " + MOST_FAULTS + " faults");
        } else {
            for (Node item : items) {
                addFault(new Block(problems, item, "this fault"), slots, bytes, faults);
            }
        }
        block.finish();
        return new MemorySpec(slots, bytes, (int) endurance, faults);
    }

    private static void addFault(Block block, int slots, int bytes, List<MemoryFault> faults) {
        block.require("kind", "kind: program-error");
        block.require("slot", "slot: 0' or 'slot: all");
        Kind kind =
                block.choice("kind", List.of(Kind.values()), PowerReader::key, Kind.PROGRAM_ERROR);
        int slot =
                block.isWord("slot", "all") ? ALL : (int) block.whole("slot", 0, slots - 1, 0, 0);
        long from = block.quantity("from", MILLIS, 0, LONGEST_MILLIS, 0);
        long to = MemoryFault.FOR_EVER;
        int erases = 0;
        int offset = 0;
        int bits = 1;
        if (kind == Kind.BIT_ROT) {
            block.require("byte", "byte: 40");
            offset = (int) block.whole("byte", 0, bytes - 1, 0, 40);
            bits = (int) block.whole("bits", 1, 255, 1, 1);
        } else {
            to = block.quantity("to", MILLIS, 1, LONGEST_MILLIS, to);
            erases = (int) block.whole("after-erases", 0, MOST_ERASES, 0, 1_000);
            if (to <= from) {
                block.valueProblem("to", "'to' must be later than 'from'");
            }
        }
        block.finish();
        for (int i = slot == ALL ? 0 : slot; i < (slot == ALL ? slots : slot + 1); i++) {
            faults.add(new MemoryFault(kind, i, from, to, erases, offset, bits));
        }
    }
}
