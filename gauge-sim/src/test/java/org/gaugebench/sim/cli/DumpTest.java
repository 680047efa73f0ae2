package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.gaugebench.core.port.EstimateState;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Fault;
import org.gaugebench.core.port.RuleReason;
import org.gaugebench.core.port.RuleState;
import org.gaugebench.core.port.Trust;
import org.gaugebench.sim.device.PipeCore;
import org.gaugebench.sim.device.PlantedCore;
import org.gaugebench.sim.report.Samples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The value change dump of a run, read back by a strict reader and held against the trace. */
class DumpTest {
    private static final String GAUGE = "gauges.gauge.";

    @TempDir Path folder;
    private final FakeTerminal terminal = new FakeTerminal();
    private Path hut;
    private Path vcd;
    private Path csv;

    @BeforeEach
    void writeScenario() throws IOException {
        String night = "  - {from: 2 h, to: 3 h, set: {gauge.power: off}}\n";
        hut = Files.writeString(folder.resolve("hut.yaml"), Samples.hut() + night);
        vcd = folder.resolve("t.vcd");
        csv = folder.resolve("t.csv");
    }

    private void run(String... more) {
        String[] args = Arrays.copyOf(more, more.length + 4);
        args[more.length] = "run";
        args[more.length + 1] = "--dump";
        args[more.length + 2] = vcd.toString();
        args[more.length + 3] = hut.toString();
        String[] ordered = new String[args.length];
        System.arraycopy(args, more.length, ordered, 0, 3);
        System.arraycopy(more, 0, ordered, 3, more.length);
        ordered[args.length - 1] = args[args.length - 1];
        assertEquals(0, terminal.run(ordered), terminal.err());
    }

    @Test
    void everyTickHoldsTheFiguresOfTheTrace() throws IOException {
        run("--trace", csv.toString(), "--trace-every", "tick");
        DumpReader dump = new DumpReader(vcd);
        dump.next();
        List<String> rows = Files.readAllLines(csv);
        String[] columns = rows.get(0).split(",", -1);
        int dark = 0;
        for (String row : rows.subList(1, rows.size())) {
            Map<String, String> cells = new HashMap<>();
            String[] figures = row.split(",", -1);
            for (int i = 0; i < columns.length; i++) {
                cells.put(columns[i], figures[i]);
            }
            long millis = shifted(cells.get("time_s"), 3);
            while (dump.ahead() >= 0 && dump.ahead() <= millis) {
                dump.next();
            }
            compare(dump.now, cells, row);
            dark += dump.now.get(GAUGE + "powered") == 0 ? 1 : 0;
        }
        assertEquals(3600, dark);
        assertEquals(-1, dump.ahead());
        assertEquals(86_400_000, dump.millis());
    }

    private static Long shifted(String cell, int places) {
        if (cell.isEmpty()) {
            return null;
        }
        return new BigDecimal(cell)
                .movePointRight(places)
                .setScale(0, RoundingMode.UNNECESSARY)
                .longValueExact();
    }

    private static void compare(Map<String, Long> now, Map<String, String> row, String where) {
        same(now, "truth.current_microamps", shifted(row.get("true_current_A"), 6), where);
        same(now, "truth.voltage_microvolts", shifted(row.get("true_voltage_V"), 6), where);
        same(now, "truth.temperature_millicelsius", shifted(row.get("temperature_C"), 3), where);
        same(now, "truth.state_of_charge_ppm", shifted(row.get("true_soc_percent"), 4), where);
        // The trace rounds to a microamp-hour, 3.6e6 nC: half of it either way.
        long apart =
                now.get("truth.charge_nanocoulombs")
                        - 3_600_000 * shifted(row.get("true_charge_Ah"), 6);
        assertTrue(Math.abs(apart) <= 1_800_000, where);
        boolean powered = now.get(GAUGE + "powered") == 1;
        assertEquals(!row.get("gauge_trust").isEmpty(), powered, where);
        gauge(now, "shunt_counts", shifted(row.get("gauge_counts"), 0), where);
        gauge(now, "current_microamps", shifted(row.get("gauge_current_A"), 6), where);
        gauge(now, "voltage_microvolts", shifted(row.get("gauge_voltage_V"), 6), where);
        gauge(now, "state_of_charge_ppm", shifted(row.get("gauge_soc_percent"), 4), where);
        gauge(now, "lower_edge_ppm", shifted(row.get("gauge_lower_edge_percent"), 4), where);
        gauge(now, "upper_edge_ppm", shifted(row.get("gauge_upper_edge_percent"), 4), where);
        gauge(now, "time_to_empty_minutes", shifted(row.get("gauge_time_to_empty_min"), 0), where);
        gauge(now, "rule_held_minutes", shifted(row.get("gauge_held_min"), 0), where);
        Long charge = now.get(GAUGE + "charge_nanocoulombs");
        Long microampHours = charge == null ? null : (Long) (charge / 3_600_000);
        assertEquals(shifted(row.get("gauge_charge_Ah"), 6), microampHours, where);
        String kind = row.get("gauge_time_to_empty_kind");
        gauge(now, "time_to_empty_state", number(kind, EstimateState.values()), where);
        gauge(now, "rule_state", number(row.get("gauge_rule_state"), RuleState.values()), where);
        gauge(now, "rule_reason", number(row.get("gauge_rule_reason"), RuleReason.values()), where);
        gauge(now, "trust", number(row.get("gauge_trust"), Trust.values()), where);
        List<String> faults = List.of(row.get("gauge_faults").split(" ", -1));
        for (Fault fault : Fault.values()) {
            Long stands = powered ? (Long) (faults.contains(fault.name()) ? 1L : 0L) : null;
            gauge(now, "faults." + fault.name().toLowerCase(Locale.ROOT), stands, where);
        }
        if (!powered) {
            for (String name : List.of("voltage_counts", "low_charge_alarm")) {
                assertNull(now.get(GAUGE + name), where);
            }
        }
    }

    private static Long number(String name, Enum<?>[] values) {
        for (Enum<?> value : values) {
            if (value.name().equals(name)) {
                return (long) value.ordinal();
            }
        }
        return null;
    }

    private static void gauge(Map<String, Long> now, String name, Long expected, String where) {
        same(now, GAUGE + name, expected, where);
    }

    private static void same(Map<String, Long> now, String name, Long expected, String where) {
        assertTrue(now.containsKey(name), name);
        assertEquals(expected, now.get(name), () -> name + " at " + where);
    }

    @Test
    void anEventIsUpForOneTick() throws IOException {
        run();
        DumpReader dump = new DumpReader(vcd);
        String powered = GAUGE + "events." + Event.POWERED_UP.name().toLowerCase(Locale.ROOT);
        String ups = "";
        while (dump.next()) {
            if (dump.now.get(powered) == 1) {
                ups += dump.millis() + " ";
                assertEquals(dump.millis() + 1000, dump.ahead());
            }
        }
        // Power comes back between two ticks: the later one shows it.
        assertEquals("0 10801000 ", ups);
    }

    /**
     * The lamp takes it from 60 to 36 %; the low end of the band crosses 50 % before the figure.
     */
    @Test
    void theAlarmComesWithTheLowEndOfTheBand() throws IOException {
        Files.writeString(hut, Samples.hut() + "gauge: {low-charge: 50 %}\n");
        run();
        DumpReader dump = new DumpReader(vcd);
        long edge = Long.MAX_VALUE;
        long least = Long.MAX_VALUE;
        boolean isOn = false;
        while (dump.next() && !isOn) {
            isOn = dump.now.get(GAUGE + "low_charge_alarm") == 1;
            Long band = dump.now.get(GAUGE + "lower_edge_ppm");
            edge = band == null ? edge : band;
            least = isOn ? least : Math.min(least, edge);
        }
        assertTrue(isOn, "no alarm");
        assertTrue(edge <= 500_000, "at " + edge);
        // The alarm is worked out once a minute, in which an amp takes 333 ppm of 50 Ah.
        assertTrue(least > 500_000 - 2 * 333, "before it at " + least);
    }

    @Test
    void theHeaderIsComplete() throws IOException {
        run();
        assertEquals(
                List.of(
                        "$version",
                        "$comment",
                        "$timescale",
                        "$scope",
                        "$var",
                        "$upscope",
                        "$enddefinitions"),
                List.copyOf(new DumpReader(vcd).header));
        String text = Files.readString(vcd);
        assertTrue(text.contains("$comment trust: 0=UNKNOWN 1=DECLARED"), text.substring(0, 900));
    }

    @Test
    void aDumpIsTheSameEveryTimeAndChangesNothingOfTheRun() throws IOException {
        run();
        byte[] once = Files.readAllBytes(vcd);
        run();
        assertArrayEquals(once, Files.readAllBytes(vcd));
        FakeTerminal plain = new FakeTerminal();
        assertEquals(0, plain.run("run", hut.toString()));
        assertEquals(plain.out() + plain.out(), terminal.out());
    }

    /** Ticks of a program are held back and told late; a dump looks at each one all the same. */
    @Test
    void aProgramInTheCoresPlaceIsDumpedTickByTick() throws IOException {
        run();
        byte[] core = Files.readAllBytes(vcd);
        Files.delete(vcd);
        String device = CompareDeviceTest.command(PipeCore.class, "form frames", "batch 256");
        run("--device", device);
        assertArrayEquals(core, Files.readAllBytes(vcd));
    }

    @Test
    void aProgramThatBreaksOffLeavesNoHalfDump() throws IOException {
        String device = CompareDeviceTest.command(PlantedCore.class, "die", "500", "batch 64");
        int code =
                terminal.run("run", "--dump", vcd.toString(), "--device", device, hut.toString());
        assertEquals(3, code, terminal.err());
        assertTrue(terminal.out().contains("assertion failed: count is below zero"), "its words");
        try (Stream<Path> left = Files.list(folder)) {
            assertEquals(List.of(hut), left.sorted().toList());
        }
    }

    @Test
    void shouldRefuseWhatCannotBeOneDump() throws IOException {
        Path other = Files.writeString(folder.resolve("other.yaml"), Samples.hut());
        String[][] lines = {
            {"run", "--dump", vcd.toString(), hut.toString(), other.toString()},
            {"run", "--dump", vcd.toString(), "--at", "1 h", hut.toString()},
            {"run", "--dump", folder.resolve("t.csv").toString(), hut.toString()},
            {"run", "--dump", folder.resolve("missing/t.vcd").toString(), hut.toString()},
        };
        String[] says = {"one run", "ask for one of them", "day.vcd", "there is no folder"};
        for (int i = 0; i < lines.length; i++) {
            FakeTerminal refusing = new FakeTerminal();
            assertEquals(2, refusing.run(lines[i]), says[i]);
            assertEquals("", refusing.out());
            assertTrue(refusing.err().contains(says[i]), refusing.err());
        }
        try (Stream<Path> left = Files.list(folder)) {
            assertEquals(List.of(hut, other), left.sorted().toList());
        }
    }
}
