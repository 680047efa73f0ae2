package org.gaugebench.sim.cli;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.advice.OwnSystem;
import org.gaugebench.sim.advice.SettingsTold;
import org.gaugebench.sim.advice.TypedSettings;
import org.gaugebench.sim.units.CapacityRating;
import org.gaugebench.sim.units.Quantity;
import org.gaugebench.sim.units.RecordUnit;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** What is typed into a gauge, as options; each may be left out or be {@code not-known}. */
final class SettingOptions {
    @Option(
            names = "--typed-chemistry",
            paramLabel = "WORD",
            description = "what kind of battery the gauge is told, such as lead-acid-agm")
    private @Nullable String chemistry;

    @Option(
            names = "--typed-capacity",
            paramLabel = "CHARGE",
            description = "amp-hours that the gauge is told, such as \"50 Ah\"")
    private @Nullable String capacity;

    @Option(
            names = "--typed-shunt",
            paramLabel = "RATING",
            description = "shunt that the gauge is told, such as \"100 A / 75 mV\"")
    private @Nullable String shunt;

    @Option(
            names = "--full-volts",
            paramLabel = "VOLTAGE",
            description = "from which the gauge looks for full, such as \"14.2 V\"; 0 V for never")
    private @Nullable String fullVolts;

    @Option(
            names = "--full-amps",
            paramLabel = "CURRENT",
            description = "to which the current must have fallen, such as \"2 A\" or \"2 %%\"")
    private @Nullable String fullAmps;

    @Option(
            names = "--full-minutes",
            paramLabel = "TIME",
            description = "for how long, such as \"30 min\"")
    private @Nullable String fullMinutes;

    @Option(
            names = "--kept-back",
            paramLabel = "PERCENT",
            description = "charge at which its hours read zero, such as \"50 %%\"")
    private @Nullable String keptBack;

    @Option(
            names = "--charger-volts",
            paramLabel = "VOLTAGE",
            description = "highest steady volts of a charger, such as \"14.4 V\"; may be repeated")
    private List<String> chargerVolts = new ArrayList<>();

    /** Whether anything is told. */
    boolean isAnyTold() {
        return !typed().equals(TypedSettings.NOTHING);
    }

    /** Asks for what is missing; an empty answer stands for "not known". */
    void ask(Questions questions) throws InputException {
        if (chargerVolts.isEmpty()) {
            String volts =
                    questions.ask(
                            "Highest steady volts of the chargers, or empty",
                            "14.4 V",
                            it -> Quantity.parse(it, RecordUnit.MICROVOLTS));
            if (volts != null) {
                chargerVolts.add(volts);
            }
        }
        if (capacity == null) {
            capacity =
                    questions.ask(
                            "Amp-hours typed into the gauge, or empty",
                            "100 Ah",
                            it -> CapacityRating.parse(it, RecordUnit.MILLIAMP_HOURS));
        }
        if (fullVolts == null) {
            fullVolts =
                    questions.ask(
                            "Volts from which it looks for full, or empty",
                            "14.2 V",
                            it -> Quantity.parse(it, RecordUnit.MILLIVOLTS));
        }
        if (fullAmps == null) {
            fullAmps =
                    questions.ask(
                            "Current to which it must have fallen, or empty",
                            "2 A or 2 %",
                            TypedSettings::fullAmps);
        }
        if (fullMinutes == null) {
            fullMinutes =
                    questions.ask(
                            "For how long, or empty",
                            "30 min",
                            it -> Quantity.parse(it, RecordUnit.MINUTES));
        }
    }

    /**
     * The settings.
     *
     * @throws InputException with every message, if something is wrong
     */
    SettingsTold settings(OwnSystem system) throws InputException {
        List<String> wrong = new ArrayList<>();
        SettingsTold settings =
                typed().read(
                                new QuantityArguments(wrong),
                                system.ampHours(),
                                system.nominalVolts());
        if (!wrong.isEmpty()) {
            throw new InputException(String.join(System.lineSeparator(), wrong));
        }
        return settings;
    }

    private TypedSettings typed() {
        return new TypedSettings(
                chemistry,
                capacity,
                shunt,
                fullVolts,
                fullAmps,
                fullMinutes,
                keptBack,
                chargerVolts);
    }
}
