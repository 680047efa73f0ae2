package org.gaugebench.core;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.statistics.Statistics;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.saved.SavedField;
import org.gaugebench.core.saved.SavedState;
import org.gaugebench.core.saved.SavedStateCodec;
import org.gaugebench.core.saved.SettingsMark;
import org.gaugebench.core.saved.SlotHeader;
import org.gaugebench.core.saved.States;
import org.gaugebench.core.saved.StrictStore;
import org.gaugebench.core.settings.ChemistryPreset;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * M7: whatever a record with a right check word says, no call after it throws, no figure leaves its
 * range, and what the gauge itself writes then is a record that it takes.
 */
class AnyRecordProperties {
    private static final long[] ANY_WIDTH = {
        Long.MIN_VALUE, Long.MAX_VALUE, Integer.MIN_VALUE, Integer.MAX_VALUE, 1L << 62, -1, 0, 1
    };

    @Provide
    static Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    /**
     * A state with fields at an end of their range, within it, or beyond: one beyond is enough for
     * the record to be refused, so most states have none.
     */
    private static SavedState drawn(Random random, int beyondPercent) {
        SavedState state = States.filled(random.nextLong());
        for (SavedField field : SavedField.values()) {
            int choice = random.nextInt(100);
            if (choice < beyondPercent) {
                field.set(state, narrowed(field, ANY_WIDTH[random.nextInt(ANY_WIDTH.length)]));
            } else if (choice < 40) {
                field.set(state, near(random, field.lowest(), 1));
            } else if (choice < 70) {
                field.set(state, near(random, field.highest(), -1));
            }
        }
        if (beyondPercent == 0) {
            state.chargeNanocoulombs =
                    Math.min(state.chargeNanocoulombs, state.capacityNanocoulombs);
        }
        return state;
    }

    private static long narrowed(SavedField field, long value) {
        int spare = 64 - 8 * field.sizeBytes();
        return value << spare >> spare;
    }

    private static long near(Random random, long end, int inward) {
        return random.nextInt(3) > 0 ? end : end + (long) inward * random.nextInt(2);
    }

    private static GaugeSettings settings(Random random) {
        ChemistryPreset[] presets = ChemistryPreset.values();
        GaugeSettings.Builder builder = presets[random.nextInt(presets.length)].builder(12_000);
        for (Setting setting :
                List.of(
                        Setting.CAPACITY,
                        Setting.SHUNT_OFFSET,
                        Setting.SELF_DISCHARGE,
                        Setting.OFF_CURRENT_BOUND,
                        Setting.OWN_SUPPLY)) {
            switch (random.nextInt(3)) {
                case 0 -> builder.set(setting, setting.minimum());
                case 1 -> builder.set(setting, setting.maximum());
                default -> {
                    // as usual
                }
            }
        }
        return builder.set(Setting.QUIET_TIME, 0).set(Setting.HOLD, 2).build();
    }

    private static SettingsMark mark(GaugeSettings settings, boolean isSame) {
        return new SettingsMark(
                isSame ? settings.fingerprint() : ~settings.fingerprint(),
                (int) settings.get(Setting.CHEMISTRY),
                (int) settings.get(Setting.NOMINAL_VOLTAGE));
    }

    /** Half a day of a life: minutes of all kinds, commands, edits and power cuts. */
    private static void live(
            Random random, GaugeSettings first, StrictStore store, SavedState state) {
        GaugeSettings settings = first;
        GaugeFixture gauge = restarted(random, settings, store, state.voltageMicrovolts);
        for (int step = 0; step < 60; step++) {
            switch (random.nextInt(12)) {
                case 0 -> gauge.gauge.command(command(random), random.nextInt(1_000_001));
                case 1 -> {
                    settings =
                            settings.toBuilder()
                                    .set(Setting.CAPACITY, random.nextBoolean() ? 100 : 10_000_000)
                                    .build();
                    gauge.gauge.changeSettings(settings);
                }
                case 2 -> gauge = restarted(random, settings, store, 0);
                default -> {
                    gauge.volts((random.nextInt(80) * 60 + 10_200) << random.nextInt(2));
                    int counts = random.nextInt();
                    gauge.ticks(6, counts >> random.nextInt(32), 1 << random.nextInt(17));
                }
            }
            gauge.register(Register.CHARGE_NANOCOULOMBS);
            RegisterRanges.check(gauge.registers);
            gauge.read();
            checkRecords(store);
        }
    }

    private static Command command(Random random) {
        Command[] commands = Command.values();
        return commands[random.nextInt(commands.length)];
    }

    private static GaugeFixture restarted(
            Random random, GaugeSettings settings, StrictStore store, int microvolts) {
        OffTime[] known = OffTime.values();
        long off = random.nextInt(4) == 0 ? Long.MAX_VALUE : random.nextInt();
        GaugeFixture gauge =
                new GaugeFixture(settings, store, off, known[random.nextInt(known.length)]);
        gauge.volts(microvolts / 1_000);
        return gauge;
    }

    /** What stands in the memory and was written by the gauge is what a gauge takes. */
    private static void checkRecords(StrictStore store) {
        SlotHeader header = new SlotHeader();
        for (int slot = 0; slot < store.cells.length - 1; slot++) {
            SavedStateCodec.inspect(store.cells[slot], header);
            assertTrue(
                    !header.isValid() || SavedStateCodec.isPlausible(store.cells[slot]),
                    "a record that the gauge would refuse");
        }
    }

    private static StrictStore storeWith(GaugeSettings settings, boolean isSame, SavedState state) {
        StrictStore store = new StrictStore(3, 256);
        byte[] record = new SavedStateCodec().encode(state, 1, mark(settings, isSame));
        System.arraycopy(record, 0, store.cells[2], 0, record.length);
        return store;
    }

    @Property(tries = 2_000)
    void anyFiguresWithinTheirRangesAreTakenAndStayThere(@ForAll("seeds") long seed) {
        Random random = new Random(seed);
        GaugeSettings settings = settings(random);
        SavedState state = drawn(random, 0);
        StrictStore store = storeWith(settings, random.nextBoolean(), state);
        GaugeFixture gauge = new GaugeFixture(settings, store, 0, OffTime.EXACT);
        assertEquals(1, gauge.times(Event.RESTORED));
        live(random, settings, store, state);
    }

    @Property(tries = 2_000)
    void anyFiguresAtAllDoNoHarm(@ForAll("seeds") long seed) {
        Random random = new Random(seed);
        GaugeSettings settings = settings(random);
        SavedState state = drawn(random, 1 + random.nextInt(3));
        StrictStore store = storeWith(settings, random.nextBoolean(), state);
        boolean isTaken = SavedStateCodec.isPlausible(store.cells[2]);
        Statistics.label("taken")
                .collect(isTaken)
                .coverage(c -> c.check(true).percentage(p -> p > 5 && p < 95));
        GaugeFixture gauge = new GaugeFixture(settings, store, 0, OffTime.EXACT);
        assertEquals(isTaken ? 1 : 0, gauge.times(Event.RESTORED));
        live(random, settings, store, state);
    }
}
