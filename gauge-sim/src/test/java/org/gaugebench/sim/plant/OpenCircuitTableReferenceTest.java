package org.gaugebench.sim.plant;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.sim.scenario.Chemistry;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Published open-circuit voltages; tolerance 1e-9 V is rounding of the division into cells. */
class OpenCircuitTableReferenceTest {
    private static final double ROUNDING = 1e-9;

    /**
     * Source: the trade's table of gel and mat batteries against temperature (data set
     * lead_acid_12v of the Electrical Age 2 project), 12 V block at 100/75/50/25/0 %.
     */
    @ParameterizedTest
    @CsvSource({
        "48.9, 12.813, 12.613, 12.413, 12.013, 11.813",
        "37.8, 12.808, 12.608, 12.408, 12.008, 11.808",
        "26.7, 12.800, 12.600, 12.400, 12.000, 11.800",
        "21.1, 12.793, 12.593, 12.393, 11.993, 11.793",
        "10.0, 12.772, 12.572, 12.372, 11.972, 11.772",
        "4.4, 12.756, 12.556, 12.356, 11.956, 11.756",
        "-1.1, 12.738, 12.538, 12.338, 11.938, 11.738",
        "-17.8, 12.666, 12.466, 12.266, 11.866, 11.666",
    })
    void matBatteryStandsAtThePublishedVolts(
            double celsius, double full, double three, double half, double one, double empty) {
        OpenCircuitTable table = OpenCircuitTable.of(Chemistry.LEAD_ACID_AGM);
        OpenCircuitCurve curve = new OpenCircuitCurve(table, 6, 1, celsius);
        double[] published = {empty, one, half, three, full};
        for (int i = 0; i < published.length; i++) {
            assertEquals(published[i], curve.voltsAt(i * 0.25), ROUNDING);
        }
    }

    /** Source: the flooded half of the same table. */
    @ParameterizedTest
    @CsvSource({
        "48.9, 12.663, 12.463, 12.253, 12.073, 11.903",
        "37.8, 12.658, 12.458, 12.248, 12.068, 11.898",
        "26.7, 12.650, 12.450, 12.240, 12.060, 11.890",
        "21.1, 12.643, 12.443, 12.233, 12.053, 11.883",
        "10.0, 12.622, 12.422, 12.212, 12.032, 11.862",
        "4.4, 12.606, 12.406, 12.196, 12.016, 11.846",
        "-1.1, 12.588, 12.388, 12.178, 11.998, 11.828",
        "-17.8, 12.516, 12.316, 12.106, 11.926, 11.756",
    })
    void floodedBatteryStandsAtThePublishedVolts(
            double celsius, double full, double three, double half, double one, double empty) {
        OpenCircuitTable table = OpenCircuitTable.of(Chemistry.LEAD_ACID_FLOODED);
        OpenCircuitCurve curve = new OpenCircuitCurve(table, 6, 1, celsius);
        double[] published = {empty, one, half, three, full};
        for (int i = 0; i < published.length; i++) {
            assertEquals(published[i], curve.voltsAt(i * 0.25), ROUNDING);
        }
    }

    /** Source: Sunil, Pattipati, Balasingam, IEEE Trans. Instrum. Meas. (2025), NMC cell A. */
    @ParameterizedTest
    @CsvSource({
        "0, 2.5000", "0.0050, 2.8080", "0.0352, 3.1179", "0.0854, 3.3182", "0.1357, 3.4193",
        "0.2915, 3.5826", "0.4523, 3.6941", "0.8392, 4.0664", "0.9548, 4.1121", "1, 4.2000"
    })
    void nickelManganeseCobaltStandsAtThePublishedVolts(double soc, double volts) {
        OpenCircuitTable table = OpenCircuitTable.of(Chemistry.NMC);
        assertEquals(volts, new OpenCircuitCurve(table, 1, 1, 25).voltsAt(soc), ROUNDING);
    }

    /**
     * Another cell by another road: open-circuit voltage of Chen et al., J. Electrochem. Soc. 167
     * (2020) 080534, own computation from their half-cell fits, agrees within 45 mV from 20 to 90
     * %.
     */
    @ParameterizedTest
    @CsvSource({
        "0.2, 3.450",
        "0.3, 3.549",
        "0.4, 3.635",
        "0.5, 3.708",
        "0.6, 3.809",
        "0.7, 3.924",
        "0.8, 4.022",
        "0.9, 4.094"
    })
    void nickelManganeseCobaltAgreesWithAnotherCell(double soc, double volts) {
        OpenCircuitTable table = OpenCircuitTable.of(Chemistry.NMC);
        assertEquals(volts, new OpenCircuitCurve(table, 1, 1, 25).voltsAt(soc), 0.045);
    }

    /**
     * Source: Sunil, Pattipati, Balasingam, IEEE Trans. Instrum. Meas. (2025), LFP break points;
     * the 4S values between them follow by straight lines, given to a millivolt (so 0.5 mV).
     */
    @ParameterizedTest
    @CsvSource({
        "0, 8.0408, 1e-9",
        "0.0033, 9.6708, 1e-9",
        "0.0117, 10.9620, 1e-9",
        "0.0267, 11.7196, 1e-9",
        "0.0534, 12.3488, 1e-9",
        "0.0885, 12.7768, 1e-9",
        "0.2972, 13.1088, 1e-9",
        "0.9833, 13.4044, 1e-9",
        "0.9950, 13.6720, 1e-9",
        "1, 14.3924, 1e-9",
        "0.1, 12.795, 5e-4",
        "0.2, 12.954, 5e-4",
        "0.5, 13.196, 5e-4",
        "0.9, 13.369, 5e-4"
    })
    void ironPhosphateStandsAtThePublishedVolts(double soc, double volts, double tolerance) {
        OpenCircuitTable table = OpenCircuitTable.of(Chemistry.LIFEPO4);
        assertEquals(volts, new OpenCircuitCurve(table, 4, 1, 25).voltsAt(soc), tolerance);
    }

    @ParameterizedTest
    @EnumSource(Chemistry.class)
    void voltageRisesWithChargeAtEveryTemperature(Chemistry chemistry) {
        OpenCircuitTable table = OpenCircuitTable.of(chemistry);
        for (double celsius = -30; celsius <= 60; celsius += 0.7) {
            OpenCircuitCurve curve = new OpenCircuitCurve(table, 1, 1, celsius);
            double last = -1;
            for (int i = 0; i <= 10_000; i++) {
                double volts = curve.voltsAt(i / 10_000.0);
                assertTrue(volts > last, "rises with charge");
                last = volts;
            }
        }
    }

    @Test
    void outermostTemperatureHoldsBeyondTheTable() {
        OpenCircuitTable table = OpenCircuitTable.of(Chemistry.LEAD_ACID_AGM);
        assertEquals(
                new OpenCircuitCurve(table, 6, 1, -17.8).voltsAt(0.4),
                new OpenCircuitCurve(table, 6, 1, -40).voltsAt(0.4));
    }
}
