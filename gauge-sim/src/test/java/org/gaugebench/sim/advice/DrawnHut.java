package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.gaugebench.core.port.Event;
import org.gaugebench.sim.judge.RecordedEvent;
import org.gaugebench.sim.judge.RunRecorder;
import org.gaugebench.sim.logs.OwnersNote;
import org.gaugebench.sim.random.SplitMix64;
import org.gaugebench.sim.scenario.Chemistry;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.ScenarioException;
import org.gaugebench.sim.scenario.ScenarioReader;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;

/**
 * A small system and its owner's habits, all drawn from one number: battery, loads that are not
 * alike from day to day, charger, gauge, when he writes and to what he rounds. Then one cause of
 * trouble, or none, of a drawn size is planted in it.
 */
final class DrawnHut {
    private static final long DAY_MINUTES = 1_440;
    private static final int FLAT_DAYS = 34;

    /** Dark at so much shown, or so far off at a note: then he asks. */
    private static final double SEEN_PERCENT = 12;

    /** As it is told when a load is switched each day anew. */
    private static final double DAY_TO_DAY = 0.15;

    final long seed;
    final @Nullable TroubleCause plant;
    final Chemistry chemistry;
    final int volts;
    final double ampHours;
    final ShuntRating shunt;
    final double chargerAmps;
    final boolean isCore;
    final boolean notesCharged;
    final boolean notesAmpHours;
    final double rounding;
    final int[] hoursOfDay;
    final double size;
    final boolean runsFlat;
    private final SplitMix64 random;
    private final double[] loadAmps = new double[3];
    private final double[] loadHours = new double[3];
    private final List<long[]> windows = new ArrayList<>();
    private final int quietFromDay;
    private final int quietToDay;
    private final int days;

    /** Draws one. */
    DrawnHut(long seed, @Nullable TroubleCause plant) throws Exception {
        this.seed = seed;
        this.plant = plant;
        random = new SplitMix64(seed * 1_000 + (plant == null ? 999 : plant.ordinal()));
        Chemistry[] all = Chemistry.values();
        Chemistry kind = all[whole(all.length)];
        // Next to nothing is lost as heat in lithium.
        boolean lead = plant == TroubleCause.HEAT && !kind.isLeadAcid();
        chemistry = lead ? Chemistry.LEAD_ACID_FLOODED : kind;
        volts = random.nextDouble() < 0.7 ? 12 : 24;
        ampHours = Math.rint(between(30, 300));
        shunt = ShuntRating.parse(random.nextDouble() < 0.5 ? "100 A / 75 mV" : "150 A / 60 mV");
        chargerAmps = round(ampHours * between(0.12, 0.25));
        isCore = random.nextDouble() < 0.6;
        // Half a battery a month is seen only where the loads leave it the time.
        boolean leaks = plant == TroubleCause.SELF_DISCHARGE;
        double perDay = ampHours * (leaks ? between(0.025, 0.05) : between(0.05, 0.14));
        double[] shares = {between(0.2, 0.5), between(0.2, 0.5), between(0.2, 0.5)};
        double sum = shares[0] + shares[1] + shares[2];
        loadHours[0] = 24;
        loadHours[1] = 8;
        loadHours[2] = 3 + whole(4);
        for (int i = 0; i < 3; i++) {
            loadAmps[i] = round(perDay * shares[i] / sum / loadHours[i]);
        }
        // Heat adds up while nothing sets the gauge right, so there it is never charged fully.
        boolean heats = plant == TroubleCause.HEAT;
        notesCharged = random.nextDouble() < 0.7 || heats;
        notesAmpHours = random.nextDouble() < 0.4;
        rounding = new double[] {1, 1, 0.1, 2, 5}[whole(5)];
        hoursOfDay = new int[][] {{19}, {7, 19}, {8, 14, 21}, {6, 22}}[whole(4)];
        runsFlat = random.nextDouble() < 0.6 || showsWhenFlat();
        int quiet = random.nextDouble() < 0.7 ? 2 + whole(3) : 0;
        int day = 2 + whole(3);
        quietFromDay = day;
        quietToDay = day + quiet;
        day = quietToDay + 1 + whole(2);
        int charges = heats ? 6 : 2 + whole(3);
        for (int i = 0; i < charges; i++) {
            boolean full = !notesCharged || i == charges - 1 || random.nextDouble() < 0.5;
            full &= !heats;
            long from = day * DAY_MINUTES + 9 * 60;
            long length = full ? 27 * 60 : (long) (60 * between(2, 5));
            windows.add(new long[] {from, from + length});
            day += 3 + whole(3);
        }
        days = runsFlat ? day + FLAT_DAYS : day + 3;
        size = size();
    }

    /** What a count cannot show by itself: its owner only sees it when the lights go out. */
    private boolean showsWhenFlat() {
        return plant == TroubleCause.OWN_CURRENT
                || plant == TroubleCause.FULL_TOO_EARLY
                || plant == TroubleCause.SELF_DISCHARGE
                || plant == TroubleCause.HEAT;
    }

    private int whole(int many) {
        return (int) (random.nextDouble() * many);
    }

    private double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    private static double round(double amps) {
        return Math.rint(amps * 1e3) / 1e3;
    }

    private double size() {
        if (plant == null) {
            return 0;
        }
        double pointsPerDay = between(1, 3);
        double factor = random.nextDouble() < 0.5 ? between(0.65, 0.85) : between(1.2, 1.5);
        return switch (plant) {
            case ZERO_UP, ZERO_DOWN, OWN_CURRENT -> pointsPerDay / 100 * ampHours / 24;
            case CAPACITY_LARGE -> between(1.2, 1.5);
            case CAPACITY_SMALL -> between(0.65, 0.85);
            case SCALE -> factor;
            case SELF_DISCHARGE -> between(25, 50);
            case FULL_NEVER -> between(20, 45);
            default -> 1;
        };
    }

    OwnSystem system() throws Exception {
        return new OwnSystem(
                volts,
                chemistry,
                ampHours,
                List.of(load("logger", 0), load("fridge", 1), load("lamp", 2)),
                null,
                chargerAmps,
                null,
                shunt,
                null);
    }

    private OwnLoad load(String name, int i) throws Exception {
        String text =
                String.format(Locale.ROOT, "%s: %.3f A, %.0f h", name, loadAmps[i], loadHours[i]);
        return OwnWords.load(text, volts, 1);
    }

    OwnersGauge gauge() {
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

    /** What its owner wrote; null where the planted cause does not come to light in the run. */
    @Nullable List<OwnersNote> notes() throws Exception {
        List<long[]> open = new ArrayList<>(windows);
        if (plant == TroubleCause.FULL_TOO_EARLY) {
            for (int i = 0; i < open.size(); i++) {
                long end = firstFull(open, open.get(i));
                if (end < 0) {
                    return null;
                }
                open.set(i, new long[] {open.get(i)[0], end});
            }
        }
        DrawnOwner owner = new DrawnOwner(this, open);
        Scenario scenario = read(open);
        RunRecorder.run(scenario, scenario.seed(), owner);
        List<OwnersNote> notes = owner.notes();
        OwnersNote last = notes.get(notes.size() - 1);
        boolean isSeen = last.word() == OwnersNote.Word.RAN_FLAT && last.percent() >= SEEN_PERCENT;
        boolean hidden = showsWhenFlat() ? !isSeen : owner.worstPoints() < SEEN_PERCENT;
        return plant != null && hidden ? null : notes;
    }

    /** When it sets itself to 100 % in a time on the charger; -1 for never or not too early. */
    private long firstFull(List<long[]> open, long[] window) throws ScenarioException {
        Scenario scenario = read(open);
        for (RecordedEvent each :
                RunRecorder.run(scenario, scenario.seed(), new Quiet()).events()) {
            long minute = each.atMillis() / 60_000;
            if (each.event() == Event.SET_TO_FULL && minute > window[0] && minute <= window[1]) {
                return each.truePartsPerMillion() < 930_000 ? minute + 1 : -1;
            }
        }
        return -1;
    }

    private static final class Quiet implements org.gaugebench.sim.rig.Observer {}

    private Scenario read(List<long[]> open) throws ScenarioException {
        return ScenarioReader.read("drawn.yaml", text(open));
    }

    /** The run as a scenario. */
    String text(List<long[]> open) {
        double scale = volts / 12.0;
        double ohms = (double) shunt.microvolts() / shunt.microamps();
        double offset =
                plant == TroubleCause.ZERO_UP ? size : plant == TroubleCause.ZERO_DOWN ? -size : 0;
        StringBuilder text = new StringBuilder();
        line(text, "format: 1");
        line(text, "title: Drawn");
        line(text, "about: One cause or none.");
        line(text, "duration: %d d", days);
        line(text, "tick: 1 min");
        line(text, "seed: %d", seed);
        line(text, "battery: {chemistry: %s, nominal-voltage: %d V,", chemistry.key(), volts);
        line(text, "  capacity: %.0f Ah, start: 100 %%%s}", ampHours, leak());
        line(text, "sensor: {shunt: %s, offset: %.0f nV}", shunt, offset * ohms * 1e9);
        line(text, "gauge: {%s}", gaugeText(scale));
        wiring(text);
        line(text, "loads:");
        line(text, "  logger: {current: %.3f A}", loadAmps[0]);
        line(text, "  fridge: {current: %.3f A, on-for: 20 min, every: 1 h}", loadAmps[1]);
        line(text, "  lamp: {current: %.3f A, switched: off}", loadAmps[2]);
        line(text, "chargers:");
        line(text, "  shore: {current-limit: %.3f A, switched: off}", chargerAmps);
        timeline(text, open);
        return text.toString();
    }

    private String leak() {
        return plant == TroubleCause.SELF_DISCHARGE
                ? String.format(Locale.ROOT, ", self-discharge: %.1f %%/month", size)
                : ", self-discharge: 0 %/month";
    }

    private String gaugeText(double scale) {
        StringBuilder text = new StringBuilder();
        boolean heats = plant == TroubleCause.HEAT;
        boolean early = plant == TroubleCause.FULL_TOO_EARLY;
        if (isCore) {
            text.append("kind: core, rest-time: 0 s, empty-voltage: 0 V, measure-capacity: off");
            text.append(", measure-efficiency: off");
            text.append(heats ? ", coulombic-efficiency: 100 %" : "");
        } else {
            String rule = early ? "full-by-voltage-only" : "strict-full-rule";
            text.append("kind: exhibit, mistakes: [").append(rule);
            text.append(heats ? "]" : ", efficiency-per-sample]");
        }
        double early12 =
                chemistry == Chemistry.NMC ? 11.9 : chemistry == Chemistry.LIFEPO4 ? 13.55 : 13.3;
        switch (plant == null ? TroubleCause.ZERO_UP : plant) {
            case CAPACITY_LARGE, CAPACITY_SMALL -> add(text, "capacity: %.1f Ah", size * ampHours);
            case FULL_TOO_EARLY -> {
                add(text, "absorption: %.2f V", early12 * scale);
                add(text, "absorption-margin: %.2f V", 0.1 * scale);
                add(text, "float-voltage: 0 V, plateau-hold: 0 s, flatness: 0 V");
                add(text, "taper: 20 %%, hold: 1 min, temperature-coefficient: 0 mV/K");
            }
            case FULL_NEVER -> {
                double high = chemistry == Chemistry.NMC ? 13.4 : 15.5;
                add(text, "absorption: %.2f V, float-voltage: 0 V", high * scale);
                add(text, "start: %.0f %%", 100 - size);
            }
            case SCALE -> add(text, "shunt-rated-current: %.3f A", shunt.microamps() / 1e6 * size);
            default -> {}
        }
        return text.toString();
    }

    private static void add(StringBuilder text, String format, Object... values) {
        text.append(", ").append(String.format(Locale.ROOT, format, values));
    }

    private void wiring(StringBuilder text) {
        switch (plant == null ? TroubleCause.ZERO_UP : plant) {
            case OWN_CURRENT -> line(text, "wiring: {own-supply: %.6f A}", size);
            case PAST_SHUNT ->
                    line(
                            text,
                            "wiring: {past-shunt: {%s: 100 %%}}",
                            seed % 2 == 0 ? "fridge" : "logger");
            case REVERSED -> line(text, "wiring: {shunt: reversed}");
            default -> {}
        }
    }

    private void timeline(StringBuilder text, List<long[]> open) {
        SplitMix64 daily = new SplitMix64(seed + 7);
        line(text, "timeline:");
        for (int day = 0; day < days; day++) {
            if (day >= quietFromDay && day < quietToDay) {
                continue;
            }
            StringBuilder set = new StringBuilder();
            String[] names = {"logger", "fridge", "lamp"};
            for (int i = 0; i < 3; i++) {
                double today = 1 + DAY_TO_DAY * (2 * daily.nextDouble() - 1);
                set.append(
                        String.format(
                                Locale.ROOT,
                                "%s%s.current: %.4f A",
                                i == 0 ? "" : ", ",
                                names[i],
                                loadAmps[i] * today));
            }
            line(text, "  - {at: %d min, set: {%s}}", day * DAY_MINUTES, set);
            long lamp = day * DAY_MINUTES + 18 * 60;
            line(
                    text,
                    "  - {from: %d min, to: %.0f min, set: {lamp: on}}",
                    lamp,
                    Math.min(lamp + loadHours[2] * 60, (day + 1.0) * DAY_MINUTES - 1));
        }
        if (quietToDay > quietFromDay) {
            line(
                    text,
                    "  - {from: %d min, to: %d min, set: {logger: off, fridge: off}}",
                    quietFromDay * DAY_MINUTES,
                    quietToDay * DAY_MINUTES);
        }
        for (long[] each : open) {
            line(text, "  - {from: %d min, to: %d min, set: {shore: on}}", each[0], each[1]);
        }
    }

    /** Whether all is switched off or on again at that minute. */
    boolean isSwitched(long minute) {
        return quietToDay > quietFromDay
                && (minute == quietFromDay * DAY_MINUTES || minute == quietToDay * DAY_MINUTES);
    }

    boolean isQuiet(long fromMinute, long toMinute) {
        return quietToDay > quietFromDay
                && fromMinute >= quietFromDay * DAY_MINUTES
                && toMinute <= quietToDay * DAY_MINUTES;
    }

    private static void line(StringBuilder text, String format, Object... values) {
        text.append(String.format(Locale.ROOT, format, values)).append('\n');
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "%d %s %.0f Ah %d V, %s, rounds to %.1f, %d a day, quiet %d d, %s%s%s size %.3f",
                seed,
                chemistry.key(),
                ampHours,
                volts,
                isCore ? "core" : "exhibit",
                rounding,
                hoursOfDay.length,
                quietToDay - quietFromDay,
                notesCharged ? "Ah in, " : "",
                notesAmpHours ? "Ah left, " : "",
                runsFlat ? "runs flat," : "",
                size);
    }
}
