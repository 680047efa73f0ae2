package org.gaugebench.sim.scenario;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.gaugebench.sim.memory.MemoryFault;
import org.gaugebench.sim.units.RecordUnit;
import org.jspecify.annotations.Nullable;

/** Writes what {@link PowerReader} reads, where it is not as usual. */
final class PowerWriter {
    private final Lines lines;

    PowerWriter(Lines lines) {
        this.lines = lines;
    }

    void write(PowerSpec it, PowerSpec usual) {
        if (!Objects.equals(it.memory(), usual.memory())) {
            memory(it.memory());
        }
        if (it.offTime() != usual.offTime()) {
            lines.value("off-time", PowerReader.key(it.offTime()));
        }
        if (it.offTimeLimitMillis() != usual.offTimeLimitMillis()) {
            lines.quantityOrNone("off-time-limit", RecordUnit.MILLIS, it.offTimeLimitMillis(), -1);
        }
        if (it.cutLeaves() != usual.cutLeaves()) {
            lines.value("cut-leaves", PowerReader.key(it.cutLeaves()));
        }
        if (it.cutMillis() != usual.cutMillis()) {
            lines.value("cut-for", ScenarioWriter.time(it.cutMillis()));
        }
    }

    private void memory(@Nullable MemorySpec it) {
        if (it == null) {
            lines.value("memory", "none");
            return;
        }
        lines.open("memory");
        lines.value("slots", Integer.toString(it.slots()));
        lines.value(
                "slot-bytes",
                Integer.toString(it.slotBytes()),
                Integer.toString(Defaults.SLOT_BYTES));
        lines.value("endurance", endurance(it.enduranceErases()), endurance(0));
        if (!it.faults().isEmpty()) {
            lines.open("faults");
            it.faults().forEach(fault -> lines.item(fault(fault)));
            lines.close();
        }
        lines.close();
    }

    private static String endurance(int erases) {
        return erases == 0 ? "none" : Integer.toString(erases);
    }

    private static String fault(MemoryFault it) {
        List<String> pairs = new ArrayList<>();
        pairs.add("kind: " + PowerReader.key(it.kind()));
        pairs.add("slot: " + it.slot());
        pairs.add("from: " + ScenarioWriter.time(it.fromMillis()));
        if (it.toMillis() != MemoryFault.FOR_EVER) {
            pairs.add("to: " + ScenarioWriter.time(it.toMillis()));
        }
        if (it.kind() == MemoryFault.Kind.BIT_ROT) {
            pairs.add("byte: " + it.byteOffset());
            pairs.add("bits: " + it.bitMask());
        } else {
            pairs.add("after-erases: " + it.afterErases());
        }
        return "{" + String.join(", ", pairs) + "}";
    }
}
