package org.gaugebench.sim.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import org.gaugebench.sim.judge.RunRecorder;
import org.gaugebench.sim.logs.OwnersNote;
import org.gaugebench.sim.logs.OwnersNote.Word;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.Chemistry;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.ScenarioReader;
import org.gaugebench.sim.units.ShuntRating;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * One hut on which the model was built, kept against slips: each cause is planted in a run; notes
 * are taken twice a day, in whole percents, and when the light goes out. The answer knows the
 * cause, or says which others fit as well.
 */
class PlantedTroubleTest {
    /** A whole scenario with places; apart from its use it can be read. */
    @SuppressWarnings("InlineFormatString")
    private static final String HUT =
            """
            format: 1
            title: Planted
            about: One cause.
            duration: 20 d
            tick: 1 min
            battery: {chemistry: lead-acid-agm, capacity: 100 Ah, start: 100 %%, self-discharge: %s}
            sensor: {shunt: 50 A / 75 mV, offset: %s}
            gauge: {kind: core, rest-time: 0 s, empty-voltage: 0 V, measure-capacity: off,
              measure-efficiency: off%s}
            loads:
              lamp: {current: 500 mA}
              fridge: {current: 300 mA}
            chargers:
              shore: {current-limit: 6 A, switched: off%s}
            %s
            timeline:
              - {at: 2 d, set: {shore: on}}
              - {at: 2 d 6 h, set: {shore: off}}
              - {at: 3 d 12 h, set: {shore: on}}
              - {at: %s, set: {shore: off}}
              - {at: 5 d, set: {lamp: off, fridge: off}}
              - {at: 9 d, set: {lamp: on, fridge: on}}
            """;

    private static OwnSystem system() throws Exception {
        return new OwnSystem(
                12,
                Chemistry.LEAD_ACID_AGM,
                100,
                List.of(
                        OwnWords.load("lamp: 500 mA, 24 h", 12, 1),
                        OwnWords.load("fridge: 300 mA, 24 h", 12, 1)),
                null,
                6,
                null,
                null,
                null);
    }

    private static OwnersGauge gauge() {
        return new OwnersGauge(
                OwnersGauge.SetsFull.VOLTS_AND_CURRENT,
                OwnersGauge.PastFull.STOPS,
                OwnersGauge.AfterOff.NOT_KNOWN,
                null,
                null,
                null,
                null,
                0,
                null);
    }

    /** The run that one cause spoils. */
    private static String scenario(String plant) {
        String leak = "0 %/month";
        String offset = "0 uV";
        String gauge = "";
        String charger = "";
        String wiring = "";
        String stop = "4 d 12 h";
        switch (plant) {
            // 1.5 mV an ampere: 150 uV read as 100 mA, 2.4 points a day.
            case "ZERO_UP" -> offset = "150 uV";
            case "ZERO_DOWN" -> offset = "-150 uV";
            case "OWN_CURRENT" -> wiring = "wiring: {own-supply: 100 mA}";
            case "PAST_SHUNT" -> wiring = "wiring: {past-shunt: {fridge: 100 %}}";
            case "CAPACITY_LARGE" -> gauge = ", capacity: 130 Ah";
            case "CAPACITY_SMALL" -> gauge = ", capacity: 75 Ah";
            case "FULL_TOO_EARLY" -> {
                gauge = ", absorption: 13.4 V, float-voltage: 0 V, taper: 20 %, hold: 1 min";
                stop = "3 d 18 h";
            }
            case "FULL_NEVER" -> gauge = ", absorption: 15.5 V, start: 70 %";
            case "SELF_DISCHARGE" -> leak = "50 %/month";
            case "SCALE" -> gauge = ", shunt-rated-drop: 60 mV";
            case "REVERSED" -> wiring = "wiring: {shunt: reversed}";
            default -> assertEquals("NOTHING", plant);
        }
        return String.format(Locale.ROOT, HUT, leak, offset, gauge, charger, wiring, stop);
    }

    /** An owner with a pencil, at 7 and at 19 o'clock, and when the light goes out. */
    private static final class Pencil implements Observer {
        private final boolean early;
        private final List<OwnersNote> notes = new ArrayList<>();
        private boolean flat;

        Pencil(boolean early) {
            this.early = early;
        }

        @Override
        public void onStart(Rig rig) {
            write(rig, Word.CHARGER_FINISHED);
        }

        @Override
        public void onMoment(Rig rig) {
            double hours = rig.timeMillis() / 3.6e6;
            if (flat || hours == 0) {
                return;
            }
            flat = rig.truth().stateOfCharge() <= 0.002;
            if (flat) {
                write(rig, Word.RAN_FLAT);
            } else if (rig.timeMillis() % 43_200_000 == 0 && (hours != 96 || early)) {
                if (hours > 120 && hours <= 216) {
                    write(rig, Word.NOTHING);
                } else if (hours == 108 && !early) {
                    write(rig, Word.CHARGER_FINISHED);
                } else {
                    boolean set = early && (hours == 60 || hours == 96);
                    write(rig, set ? Word.SET_TO_100 : null);
                }
            }
        }

        private void write(Rig rig, Word word) {
            double hours = rig.timeMillis() / 3.6e6;
            // 6 h of 6 A on the third day; afterwards the word says it.
            Double charged = null;
            if (hours == 60) {
                charged = 36.0;
            } else if (hours == 96) {
                charged = 36.0;
            }
            long ppm = rig.lanes().get(0).read().stateOfChargePartsPerMillion;
            notes.add(new OwnersNote(hours, StrictMath.rint(ppm / 1e4), null, charged, null, word));
        }
    }

    static List<OwnersNote> notes(String plant) throws Exception {
        Scenario scenario = ScenarioReader.read("planted.yaml", scenario(plant));
        Pencil pencil = new Pencil(plant.equals("FULL_TOO_EARLY"));
        RunRecorder.run(scenario, scenario.seed(), pencil);
        return pencil.notes;
    }

    /**
     * Beside each plant what fits as well, because percents alone cannot tell them apart. Heat is
     * not here: one charge of 36 Ah counted 8 % too high is less than two days of a battery whose
     * loads are not alike; {@link HeldOutTroubleTest} has huts in which it shows.
     */
    @ParameterizedTest
    @CsvSource({
        "ZERO_UP,",
        "ZERO_DOWN,",
        "OWN_CURRENT, SELF_DISCHARGE",
        "PAST_SHUNT,",
        "CAPACITY_LARGE, SCALE",
        "CAPACITY_SMALL, SCALE",
        "FULL_TOO_EARLY, CAPACITY_LARGE OWN_CURRENT PAST_SHUNT SCALE SELF_DISCHARGE",
        "FULL_NEVER,",
        "SELF_DISCHARGE, OWN_CURRENT PAST_SHUNT",
        "SCALE, CAPACITY_SMALL",
        "REVERSED,"
    })
    void aPlantedCauseIsFound(TroubleCause plant, String alike) throws Exception {
        List<OwnersNote> notes = notes(plant.name());
        ShuntRating shunt = ShuntRating.parse("50 A / 75 mV");
        List<NotesSymptom.Fit> fits =
                NotesSymptom.fits(NotesSymptom.model(notes, system(), gauge(), shunt), gauge());
        Set<String> found = new TreeSet<>();
        for (NotesSymptom.Fit each : fits) {
            if (each.misfit() <= fits.get(0).misfit() + 9) {
                found.add(each.cause().name());
            }
        }
        SymptomResult result = NotesSymptom.of(notes, system(), gauge(), shunt);
        Set<String> expected = new TreeSet<>(List.of(plant.name()));
        if (alike != null) {
            expected.addAll(List.of(alike.split(" ")));
        }
        assertEquals(expected, found, fits.toString());
        assertTrue(result.answer().contains(plant.words()), result.answer());
    }
}
