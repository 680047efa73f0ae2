package org.gaugebench.sim.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.RuleReason;
import org.gaugebench.core.port.RuleState;
import org.gaugebench.core.port.StateStore;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.PageSection;
import org.gaugebench.sim.device.CoreDevice;
import org.gaugebench.sim.device.exhibits.ExhibitGauge;
import org.gaugebench.sim.logs.SharedLogs;
import org.gaugebench.sim.scenario.Mistake;
import org.junit.jupiter.api.Test;

/** The full-charge rule against measured recharges, and against a charge that was none. */
class MeasuredFullChargeTest {
    private static final Path PAGE = Path.of("docs", "models.md");
    private static final double NANOCOULOMBS_PER_AMP_HOUR = 3.6e12;

    /** The rests between the three cycles lie around these minutes. */
    private static final int[] CYCLE_ENDS_MINUTES = {1_400, 2_815, 4_376};

    private static final List<String> RECHARGES = List.of("first", "second", "third");

    /** One recharge, as the rule saw it. */
    private static final class Recharge {
        int fulls;
        long fullMillis;
        long returnedAtFull;
        RuleReason proof = RuleReason.NO_MINUTE_YET;
        long removed;
        long returned;
        long longestHold;
        String atThreshold = "";
        String atEnd = "";
    }

    private static List<Recharge> recharges(int taperPartsPerMillion) {
        LogDrive drive =
                new LogDrive(
                        SharedLogs.read(
                                "leadacid-17ah-solar-hub/battery1_cycles_3A_2.5A_2A_60s.csv", true),
                        5);
        // As the record's own notes have it: 17 Ah, absorption about 14.5 V, float about 13.6 V.
        GaugeSettings settings =
                drive.settings(17)
                        .set(Setting.ABSORPTION, 14_500)
                        .set(Setting.FLOAT_VOLTAGE, 13_600)
                        .set(Setting.TAPER, taperPartsPerMillion)
                        .build();
        List<Event> events = new ArrayList<>();
        CoreDevice gauge =
                new CoreDevice(settings, StateStore.NONE, (event, at, value) -> events.add(event));
        List<Recharge> all = new ArrayList<>(List.of(new Recharge()));
        long[] before = new long[2];
        drive.run(
                gauge,
                100,
                (millis, registers) -> {
                    long minutes = millis / LogDrive.MILLIS_PER_MINUTE;
                    if (minutes >= CYCLE_ENDS_MINUTES[all.size() - 1]) {
                        before[0] = registers.get(Register.OUT_NANOCOULOMBS);
                        before[1] = registers.get(Register.IN_NANOCOULOMBS);
                        all.add(new Recharge());
                    }
                    Recharge now = all.get(all.size() - 1);
                    now.removed = registers.get(Register.OUT_NANOCOULOMBS) - before[0];
                    now.returned = registers.get(Register.IN_NANOCOULOMBS) - before[1];
                    look(now, millis, registers);
                    if (events.remove(Event.SET_TO_FULL)) {
                        now.fulls++;
                        now.fullMillis = millis;
                        now.returnedAtFull = now.returned;
                        now.proof = reason(registers);
                    }
                });
        return all;
    }

    private static void look(Recharge now, long millis, Registers registers) {
        now.longestHold = Math.max(now.longestHold, registers.get(Register.RULE_HELD_MINUTES));
        if (millis % LogDrive.MILLIS_PER_MINUTE == 0) {
            now.atEnd = standing(registers);
            boolean atThreshold =
                    registers.get(Register.VOLTAGE_MICROVOLTS)
                            >= registers.get(Register.RULE_THRESHOLD_MICROVOLTS);
            if (atThreshold) {
                now.atThreshold = standing(registers);
            }
        }
    }

    private static RuleReason reason(Registers registers) {
        return RuleReason.values()[(int) registers.get(Register.RULE_REASON)];
    }

    /** State and reason with their codes. */
    private static String standing(Registers registers) {
        RuleState state = RuleState.values()[(int) registers.get(Register.RULE_STATE)];
        return FullChargeRun.key(state)
                + " ("
                + state.ordinal()
                + "), "
                + FullChargeRun.key(reason(registers))
                + " ("
                + reason(registers).ordinal()
                + ")";
    }

    @Test
    void threePercentProvesEachRechargeOnceAndTwoPercentNone() throws IOException {
        StringBuilder table = new StringBuilder();
        table.append(
                "| taper | recharge | set to full | put back by then | longest hold, min"
                        + " | last at the threshold | at the end |\n");
        table.append("|---|---|---|---|---|---|---|\n");
        List<String> failures = new ArrayList<>();
        for (int percent : new int[] {3, 2}) {
            List<Recharge> all = recharges(percent * 10_000);
            assertEquals(RECHARGES.size(), all.size(), "cycles in the log");
            for (int i = 0; i < all.size(); i++) {
                Recharge one = all.get(i);
                table.append(row(percent, i, one));
                RuleReason proof =
                        percent == 3 ? RuleReason.PROVEN_BY_TAPER : RuleReason.NO_MINUTE_YET;
                if (one.fulls != (percent == 3 ? 1 : 0) || one.proof != proof) {
                    failures.add(row(percent, i, one));
                }
            }
        }
        System.out.println(table);
        assertEquals(List.of(), failures);
        PageSection.check(PAGE, "measured recharges", table.toString());
    }

    private static String row(int percent, int index, Recharge one) {
        String putBack =
                one.fulls == 0
                        ? "-"
                        : String.format(
                                Locale.ROOT,
                                "%.2f of %.2f Ah",
                                one.returnedAtFull / NANOCOULOMBS_PER_AMP_HOUR,
                                one.removed / NANOCOULOMBS_PER_AMP_HOUR);
        String when =
                one.fulls == 0
                        ? "never"
                        : String.format(
                                Locale.ROOT, "%d x, at %.2f h", one.fulls, one.fullMillis / 3.6e6);
        return String.format(
                Locale.ROOT,
                "| %d %% | %s | %s | %s | %d | %s | %s |%n",
                percent,
                RECHARGES.get(index),
                when,
                putBack,
                one.longestHold,
                one.atThreshold,
                one.atEnd);
    }

    /**
     * Nine minutes behind an alternator, at absorption voltage for the last six with the current
     * falling. The bank's size is not known, so every size is tried.
     */
    @Test
    void nineMinutesOfAlternatorAreNoFullCharge() throws IOException {
        LogDrive drive =
                new LogDrive(
                        SharedLogs.read("boat-12v-alternator/engine_charge_9min.csv", true), 300);
        StringBuilder table = new StringBuilder();
        table.append("| bank | loose rule | ours | ours without quiet time, at the end |\n");
        table.append("|---|---|---|---|\n");
        int looseFrom = 0;
        for (int ampHours = 100; ampHours <= 3_000; ampHours += 50) {
            GaugeSettings usual = drive.settings(ampHours).build();
            GaugeSettings awake = drive.settings(ampHours).set(Setting.QUIET_TIME, 0).build();
            List<Event> loose = new ArrayList<>();
            drive.run(
                    new ExhibitGauge(
                            usual,
                            EnumSet.of(Mistake.LOOSE_FULL_RULE),
                            1_000,
                            StateStore.NONE,
                            (event, at, value) -> loose.add(event)),
                    50,
                    ReplayListener.NONE);
            List<Event> ours = new ArrayList<>();
            String[] last = new String[1];
            for (GaugeSettings settings : List.of(usual, awake)) {
                drive.run(
                        new CoreDevice(
                                settings, StateStore.NONE, (event, at, value) -> ours.add(event)),
                        50,
                        (millis, registers) -> last[0] = standing(registers));
            }
            boolean looseFires = loose.contains(Event.SET_TO_FULL);
            if (looseFires && looseFrom == 0) {
                looseFrom = ampHours;
            }
            assertEquals(looseFrom != 0, looseFires, ampHours + " Ah: the loose rule");
            assertEquals(false, ours.contains(Event.SET_TO_FULL), ampHours + " Ah: ours");
            if (ampHours % 400 == 0 || ampHours == looseFrom) {
                table.append(
                        String.format(
                                Locale.ROOT,
                                "| %d Ah | %s | waits | %s |%n",
                                ampHours,
                                looseFires ? "full" : "waits",
                                last[0]));
            }
        }
        System.out.println(table);
        assertEquals(true, looseFrom > 0, "the loose rule never fired");
        PageSection.check(PAGE, "measured alternator", table.toString());
    }
}
