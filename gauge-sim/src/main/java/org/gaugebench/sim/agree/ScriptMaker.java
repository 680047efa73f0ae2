package org.gaugebench.sim.agree;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.memory.CutPlan.Manner;
import org.gaugebench.sim.memory.MemoryFault;
import org.gaugebench.sim.random.SeedTree;

/**
 * Draws a script: some settings, a memory that may be faulty, and days of charging, discharging,
 * resting, noise, nonsense, commands, changes and lost power, told by the counts of converters.
 */
final class ScriptMaker {
    private static final int MOST_SLOTS = 8;

    /** Cycles that can be measured take half a script; most scripts shall have more in them. */
    private static final int MEASURING_ONCE_IN = 4;

    /** Of the times at which power comes: what a life before has saved shall mostly count. */
    private static final int FORGED_ONCE_IN = 6;

    /** The core's record fits, see saved-state.md; a smaller slot has to be refused alike. */
    private static final int[] SLOT_BYTES = {256, 256, 256, 512, 64};

    private static final int[] PACE_MILLIS = {
        1, 10, 100, 250, 1_000, 1_000, 1_000, 5_000, 20_000, 60_000
    };
    private static final Command[] COMMANDS = Command.values();

    private final Dice dice;
    private final SettingsDraw draw;
    private final List<Step> steps = new ArrayList<>();
    private final int most;
    private final boolean isMeasuring;
    private GaugeSettings settings;
    private Feeder feeder;

    private ScriptMaker(long seed, int ticks) {
        dice = new Dice(seed);
        draw = new SettingsDraw(dice);
        most = ticks;
        isMeasuring = dice.once(MEASURING_ONCE_IN);
        settings = isMeasuring ? draw.measuring() : draw.first();
        feeder = new Feeder(dice, settings, dice.between(Integer.MIN_VALUE, Integer.MAX_VALUE));
    }

    /**
     * Draws a script.
     *
     * @param seed of a whole list of scripts
     * @param number of this one in the list
     * @param ticks that it has at least
     */
    static Script draw(long seed, long number, int ticks) {
        return new ScriptMaker(new SeedTree(seed).seedOf("agree/" + number), ticks).script();
    }

    private Script script() {
        GaugeSettings first = settings;
        boolean has = !dice.once(4);
        int slots = has ? dice.between(2, MOST_SLOTS) : 0;
        int slotBytes = has ? dice.of(SLOT_BYTES) : 0;
        List<MemoryFault> faults = has ? faults(slots) : List.of();
        steps.add(new Step.Power(OffTime.EXACT, 0));
        if (isMeasuring) {
            steps.add(new Step.Tell(Command.DECLARE_STATE_OF_CHARGE, 900_000));
        } else if (!dice.once(3)) {
            steps.add(new Step.Tell(Command.DECLARE_STATE_OF_CHARGE, dice.between(0, 1_000_000)));
        }
        int fed = isMeasuring ? measuredCycles() : 0;
        while (fed < most) {
            feeder.begin(dice.of(Feeder.Phase.values()));
            int pace = dice.of(PACE_MILLIS);
            // Hours at a slow pace, minutes at a fast one: rules need both.
            int ticks = Math.min(most - fed, dice.between(1, pace >= 20_000 ? 400 : 2_000));
            for (int i = 0; i < ticks; i++) {
                steps.add(feeder.tick(pace));
            }
            fed += ticks;
            if (dice.once(8)) {
                fed += cycle();
            }
            between(slots);
        }
        return new Script(first, slots, slotBytes, dice.between(0, 1_000_000), faults, steps);
    }

    private int measuredCycles() {
        int efficiencyPermille = (int) settings.get(Setting.COULOMBIC_EFFICIENCY) / 1_000;
        return MeasuredCycles.add(dice, efficiencyPermille, feeder, steps);
    }

    /** From full to empty and to full again, with a rest: what measures and corrects needs it. */
    private int cycle() {
        Feeder.Phase[] phases = {
            Feeder.Phase.BULK,
            dice.once(2) ? Feeder.Phase.PLATEAU : Feeder.Phase.ABSORPTION,
            Feeder.Phase.REST,
            Feeder.Phase.DISCHARGE,
            Feeder.Phase.DEEP_DISCHARGE,
            Feeder.Phase.REST,
            Feeder.Phase.BULK,
            dice.once(3) ? Feeder.Phase.FLOAT : Feeder.Phase.ABSORPTION
        };
        int fed = 0;
        for (Feeder.Phase phase : phases) {
            feeder.beginCalm(phase);
            int ticks = dice.between(60, 250);
            for (int i = 0; i < ticks; i++) {
                steps.add(feeder.tick(60_000));
            }
            fed += ticks;
        }
        return fed;
    }

    private List<MemoryFault> faults(int slots) {
        List<MemoryFault> faults = new ArrayList<>();
        if (!dice.once(3)) {
            return faults;
        }
        MemoryFault.Kind[] kinds = {
            MemoryFault.Kind.PROGRAM_ERROR,
            MemoryFault.Kind.ERASE_ERROR,
            MemoryFault.Kind.READ_ERROR,
            MemoryFault.Kind.PROGRAM_SILENT,
            MemoryFault.Kind.ERASE_SILENT
        };
        int count = dice.between(1, 2);
        for (int i = 0; i < count; i++) {
            int slot = dice.between(0, slots - 1);
            faults.add(
                    dice.once(3)
                            ? MemoryFault.wearOut(slot, dice.between(1, 20))
                            : MemoryFault.always(dice.of(kinds), slot));
        }
        return faults;
    }

    /** What happens between two phases: mostly nothing. */
    private void between(int slots) {
        switch (dice.between(0, 11)) {
            case 0 -> steps.add(new Step.Tell(dice.of(COMMANDS), argument()));
            case 1 -> {
                settings = draw.changed(settings);
                steps.add(new Step.Change(settings));
                feeder = feeder.with(settings);
            }
            case 2 -> power(slots);
            case 3 -> {
                if (slots > 0) {
                    steps.add(new Step.CutAt(dice.between(1, 4), dice.of(Manner.values())));
                }
            }
            case 4 -> {
                if (dice.once(2)) {
                    steps.add(new Step.Tell(Command.DECLARE_STATE_OF_CHARGE, 1_000_000));
                }
            }
            default -> {
                // the phases themselves are enough
            }
        }
        // A cut may have taken the power long ago; nothing more would be seen.
        if (dice.once(6)) {
            power(slots);
        }
    }

    private long argument() {
        return switch (dice.between(0, 4)) {
            case 0 -> dice.between(-10, 1_000_010);
            case 1 -> dice.of(0, 1_000_000, -1, 1_000_001);
            case 2 -> dice.between(-20_000_000L, 20_000_000L);
            case 3 -> settings.get(Setting.SHUNT_RATED_CURRENT) * dice.between(-1_200L, 1_200L);
            default -> dice.between(0, 1_000_000);
        };
    }

    private void power(int slots) {
        if (slots > 0 && dice.once(FORGED_ONCE_IN)) {
            steps.add(Forger.draw(dice, settings, slots));
        }
        OffTime known = dice.of(OffTime.values());
        long off = known == OffTime.UNKNOWN ? 0 : dice.ofAnySize(400L * 86_400_000);
        steps.add(new Step.Power(known, off));
        feeder.restart(dice.once(2) ? 0 : dice.between(Integer.MIN_VALUE, Integer.MAX_VALUE));
    }
}
