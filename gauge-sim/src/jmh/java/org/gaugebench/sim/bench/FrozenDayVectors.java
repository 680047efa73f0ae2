package org.gaugebench.sim.bench;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * Writes the samples and the settings of the frozen day as files, so that a port of the core can be
 * timed on the same day: {@code gauge-twin bench DIR}. No registers: nothing is checked by them.
 */
public final class FrozenDayVectors {
    private FrozenDayVectors() {}

    /**
     * Writes {@code settings.csv} and {@code vectors.csv}.
     *
     * @param args the folder, made where it does not exist
     * @throws IOException if a file cannot be written
     */
    public static void main(String[] args) throws IOException {
        Path folder = Files.createDirectories(Path.of(args[0]));
        GaugeSettings settings = FrozenDay.settings();
        try (PrintWriter file = open(folder, "settings.csv")) {
            file.print("setting,value,unit\n");
            for (Setting setting : Setting.values()) {
                file.print(setting.key() + "," + settings.get(setting));
                file.print("," + setting.unit() + "\n");
            }
        }
        try (PrintWriter file = open(folder, "vectors.csv")) {
            file.print("row,kind,word,argument,clock_ms,shunt_counts,voltage_counts,");
            file.print("temperature_millicelsius\n");
            new FrozenDay().feed(new Row(file), new Sample(), 0);
        }
    }

    private static PrintWriter open(Path folder, String name) throws IOException {
        return new PrintWriter(
                Files.newBufferedWriter(folder.resolve(name), StandardCharsets.US_ASCII));
    }

    /** A gauge that writes down what it is fed with. */
    private static final class Row implements BenchGauge {
        private final PrintWriter file;
        private long count;

        Row(PrintWriter file) {
            this.file = file;
        }

        @Override
        public void start() {
            // The port declares 70 % itself.
        }

        @Override
        public void tick(Sample sample) {
            count++;
            file.print(count + ",sample,,," + sample.clockMillis + "," + sample.shuntCounts);
            file.print("," + sample.voltageCounts + "," + sample.temperatureMillicelsius + "\n");
        }

        @Override
        public double chargeAmpHours() {
            return 0;
        }

        @Override
        public double energyOutWattHours() {
            return 0;
        }

        @Override
        public int fullCount() {
            return 0;
        }

        @Override
        public int timeToEmptyMinutes() {
            return 0;
        }
    }
}
