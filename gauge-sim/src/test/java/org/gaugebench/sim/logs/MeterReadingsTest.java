package org.gaugebench.sim.logs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class MeterReadingsTest {
    @TempDir private Path folder;

    private List<MeterReading> read(String text) throws IOException, LogException {
        return MeterReadings.read(
                Files.writeString(folder.resolve("checks.csv"), text), "checks.csv");
    }

    private String refusal(String text) {
        return String.valueOf(
                assertThrows(LogException.class, () -> read(text), text).getMessage());
    }

    @Test
    void figuresComeInAmpsVoltsHoursAndAmpHours() throws Exception {
        assertEquals(
                List.of(
                        new MeterReading(MeterCheck.ZERO_TEST, 24, -0.1),
                        new MeterReading(MeterCheck.OWN_CURRENT, 0.012, 0),
                        new MeterReading(MeterCheck.VOLTS_UNDER_LOAD, 12.41, 12.3),
                        new MeterReading(MeterCheck.CAPACITY_TEST, 0, 92)),
                read(
                        """
                        \uFEFFCheck;Meter;Gauge
                        zero-test;1 d;-100 mAh
                        own-current;12 mA;
                        scale-small;;
                        volts-under-load;12.41 V;12300 mV
                        capacity-test;;92 Ah
                        """));
    }

    @ParameterizedTest
    @EnumSource
    void theExamplesOfEachCheckRead(MeterCheck check) throws Exception {
        List<MeterReading> read =
                read(
                        "check,meter,gauge\n"
                                + check.key()
                                + ","
                                + check.meterExample()
                                + ","
                                + check.gaugeExample()
                                + "\n");
        assertEquals(check, read.get(0).check());
    }

    /** Each with its line, its column and an example. */
    @Test
    void everythingWrongIsToldWithItsPlace() {
        String text =
                """
                check,meter,gauge
                zero-test,24,-1.1 Ah
                own-current,120 mA,3 A
                scale-at-tea,0 A,0.40 A
                scale-small,-2.1 V,0 A
                scale-working,-2.1 A,0 A,7
                capacity-test,,70 Ah
                capacity-test,,70 Ah
                volts-under-load,0 V,12 V
                scale-at-rest,0 A,
                """;
        List<String> lines = refusal(text).lines().toList();
        String[] expected = {
            "checks.csv:2:11: expected a time such as 2 h 30 min, but found '24'",
            "checks.csv:3:20: 'own-current' has no figure in this column; expected an empty cell",
            "checks.csv:4:1: no such check 'scale-at-tea'; expected one of zero-test, own-current",
            "checks.csv:5:13: expected a current such as 4.2 A, but found '-2.1 V'",
            "checks.csv:6:26: a cell too many; expected three, such as scale-working",
            "checks.csv:8:1: 'capacity-test' is there twice; expected it once",
            "checks.csv:9:18: '0 V' cannot be; expected for instance 12.41 V",
            "checks.csv:10:19: expected a current such as 4.2 A, but there is nothing",
        };
        assertEquals(expected.length, lines.size(), lines.toString());
        for (int i = 0; i < expected.length; i++) {
            assertTrue(lines.get(i).startsWith(expected[i]), lines.get(i));
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "check,meter\n",
                "meter,check,gauge\nzero-test,24 h,0 Ah\n",
                "check,meter,gauge\n",
                "check,meter,gauge\nzero-test,,\n",
                "check,meter,gauge\n\"zero-test,24 h,0 Ah\n"
            })
    void aFileThatSaysNothingIsRefusedWithAnExample(String text) {
        String message = refusal(text);
        assertTrue(message.startsWith("checks.csv:"), message);
        assertTrue(message.contains("check,meter,gauge") || message.contains("zero-test"), message);
    }

    @Test
    void aFolderAndAMissingFileAreRefused() {
        assertThrows(LogException.class, () -> MeterReadings.read(folder, "folder"));
        assertThrows(
                LogException.class, () -> MeterReadings.read(folder.resolve("none.csv"), "none"));
    }
}
