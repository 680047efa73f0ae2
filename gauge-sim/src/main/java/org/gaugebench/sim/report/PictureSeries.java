package org.gaugebench.sim.report;

import java.util.Arrays;
import java.util.List;
import org.gaugebench.core.port.EstimateState;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Sample;
import org.gaugebench.sim.plant.TrueTimeToEmpty;
import org.gaugebench.sim.plant.Truth;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Rig;

/** What a picture can show over time: its name, its unit, and where truth and gauge have it. */
public enum PictureSeries {
    /** True and shown state of charge, in millionths, with the gauge's band. */
    STATE_OF_CHARGE("state-of-charge", "state of charge, %", 4, 1_000, true),
    /** True and shown charge, in microampere-hours, with the gauge's band. */
    CHARGE("charge", "charge, Ah", 6, 10_000, true),
    /** Shown less true state of charge, in millionths. */
    ERROR("error", "error of the state of charge (shown less true), points", 4, 1_000, true),
    /** The same with the edges of the gauge's band, less the truth too: a fan about zero. */
    ERROR_WITH_BAND(
            "error-with-band", "error and error band (both less true), points", 4, 1_000, true),
    /** Current in microamperes, positive into the battery. */
    CURRENT("current", "current, A (positive: into the battery)", 6, 1_000, false),
    /** Voltage in microvolts. */
    VOLTAGE("voltage", "voltage, V", 6, 10_000, false),
    /** Time to empty in thousandths of an hour; true: as the scenario goes on. */
    TIME_TO_EMPTY("time-to-empty", "time to empty, hours", 3, 10, true),
    /** Temperature in thousandths of a degree Celsius. */
    TEMPERATURE("temperature", "temperature, °C", 3, 1_000, false),
    /** The error of the state of charge split by cause, in millionths; from a run of its own. */
    CAUSES("causes", "where the error comes from, points", 4, 1_000, true);

    /** Stands where there is no value. */
    static final long NONE = Long.MIN_VALUE;

    /** What a picture shows unless the user says otherwise. */
    public static final List<PictureSeries> USUAL = List.of(STATE_OF_CHARGE, CURRENT, VOLTAGE);

    private static final long NANOCOULOMBS_PER_MICROAMP_HOUR = 3_600_000;
    private static final long MILLIHOURS_PER_MINUTE_TIMES_60 = 1_000;
    private static final long MILLIS_PER_MILLIHOUR = 3_600;

    private final String word;
    private final String heading;
    private final int shift;
    private final long smallestStep;
    private final boolean tall;

    PictureSeries(String word, String heading, int shift, long smallestStep, boolean tall) {
        this.word = word;
        this.heading = heading;
        this.shift = shift;
        this.smallestStep = smallestStep;
        this.tall = tall;
    }

    /** Its name on the command line. */
    public String word() {
        return word;
    }

    /** All names, in order. */
    public static List<String> words() {
        return Arrays.stream(values()).map(PictureSeries::word).toList();
    }

    /** What stands over it, with the unit. */
    String heading() {
        return heading;
    }

    /** Decimal places between the whole numbers kept here and the unit shown. */
    int shift() {
        return shift;
    }

    /** Smallest distance of two ruled lines, so that noise alone does not fill a strip. */
    long smallestStep() {
        return smallestStep;
    }

    /** Whether it needs more height than a strip. */
    boolean isTall() {
        return tall;
    }

    /** Whether the gauge's error band belongs to it. */
    boolean hasBand() {
        return this == STATE_OF_CHARGE || this == CHARGE || this == ERROR_WITH_BAND;
    }

    /** What is really so, or {@link #NONE}. */
    long truth(Rig rig) {
        Truth truth = rig.truth();
        return switch (this) {
            case STATE_OF_CHARGE -> millionths(truth.stateOfCharge());
            case CHARGE -> millionths(truth.chargeAmpHours());
            case ERROR, ERROR_WITH_BAND -> 0;
            case CAUSES -> NONE;
            case CURRENT -> millionths(truth.meanCurrentAmps());
            case VOLTAGE -> millionths(truth.voltageVolts());
            case TEMPERATURE -> StrictMath.round(truth.temperatureCelsius() * 1e3);
            case TIME_TO_EMPTY -> {
                long millis = rig.outlook().millisAsItGoes();
                yield millis == TrueTimeToEmpty.NEVER ? NONE : millis / MILLIS_PER_MILLIHOUR;
            }
        };
    }

    /** What the gauge shows, or {@link #NONE}. */
    long shown(Lane lane, Readout readout, Rig rig) {
        boolean known = readout.stateOfChargePartsPerMillion != Readout.NOT_KNOWN;
        if (!lane.hasPower()) {
            return NONE;
        }
        return switch (this) {
            case STATE_OF_CHARGE -> known ? readout.stateOfChargePartsPerMillion : NONE;
            case CHARGE ->
                    known ? readout.remainingNanocoulombs / NANOCOULOMBS_PER_MICROAMP_HOUR : NONE;
            case ERROR, ERROR_WITH_BAND ->
                    known
                            ? readout.stateOfChargePartsPerMillion
                                    - millionths(rig.truth().stateOfCharge())
                            : NONE;
            case CAUSES -> NONE;
            case CURRENT -> readout.currentMicroamps;
            case VOLTAGE -> readout.voltageMicrovolts;
            case TEMPERATURE ->
                    readout.temperatureMillicelsius == Sample.TEMPERATURE_ABSENT
                            ? NONE
                            : readout.temperatureMillicelsius;
            case TIME_TO_EMPTY ->
                    readout.timeToEmptyState == EstimateState.ESTIMATE
                                    || readout.timeToEmptyState == EstimateState.MORE_THAN
                            ? readout.timeToEmptyMinutes * MILLIHOURS_PER_MINUTE_TIMES_60 / 60
                            : NONE;
        };
    }

    /** An edge of the band in this series' unit, or {@link #NONE}. */
    long edge(Readout readout, int edgePartsPerMillion, Rig rig) {
        if (readout.bandUnknown) {
            return NONE;
        }
        return switch (this) {
            case STATE_OF_CHARGE -> edgePartsPerMillion;
            case CHARGE ->
                    readout.fullChargeNanocoulombs
                            / 1_000_000
                            * edgePartsPerMillion
                            / NANOCOULOMBS_PER_MICROAMP_HOUR;
            case ERROR_WITH_BAND -> edgePartsPerMillion - millionths(rig.truth().stateOfCharge());
            case ERROR, CURRENT, VOLTAGE, TIME_TO_EMPTY, TEMPERATURE, CAUSES -> NONE;
        };
    }

    /** Whether the truth is the line of zero. */
    boolean isError() {
        return this == ERROR || this == ERROR_WITH_BAND;
    }

    private static long millionths(double value) {
        return StrictMath.round(value * 1e6);
    }
}
