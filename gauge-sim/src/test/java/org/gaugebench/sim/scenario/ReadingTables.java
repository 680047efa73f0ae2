package org.gaugebench.sim.scenario;

import org.gaugebench.core.port.Register;
import org.gaugebench.sim.scenario.Expectation.Reading;

/** The tables of what can be judged, for the page on the format. */
final class ReadingTables {
    private ReadingTables() {}

    static String readings() {
        StringBuilder table =
                new StringBuilder(
                        """
                        | reading | value such as | `of: truth` | `is: not-known` |
                        |---|---|---|---|
                        """);
        for (Reading reading : Reading.values()) {
            table.append("| `").append(reading.key()).append("` | `");
            table.append(SettingUnits.of(reading).dimension().example()).append("` | ");
            table.append(
                    reading.isOfTruthAlone() ? "is of the truth itself" : yes(reading.hasTruth()));
            table.append(" | ").append(yes(reading.canBeUnknown())).append(" |\n");
        }
        return table.toString();
    }

    private static String yes(boolean yes) {
        return yes ? "yes" : "no";
    }

    static String registers() {
        StringBuilder table = new StringBuilder("| register | unit |\n|---|---|\n");
        for (Register register : Register.values()) {
            table.append("| `").append(SettingUnits.key(register)).append("` | ");
            table.append(register.unit()).append(" |\n");
        }
        return table.toString();
    }
}
