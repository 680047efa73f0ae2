package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.gaugebench.sim.logs.OwnersNote;
import org.jspecify.annotations.Nullable;

/** How the answer to notes stands on drawn huts; run by hand it prints a table. */
final class TroubleTable {
    private TroubleTable() {}

    /** How well an answer did. */
    enum Verdict {
        /** The planted cause alone, or rightly nothing. */
        RIGHT,
        /** The planted cause is among those that cannot be told apart. */
        ALIKE,
        /** Another cause, or trouble where there is none. */
        WRONG,
        /** Nothing wrong, where something is. */
        MISSED,
        /** None of the twelve explains it. */
        UNEXPLAINED,
        /** The planted cause does not come to light in this run. */
        NOT_PLANTED
    }

    record Row(DrawnHut hut, Verdict verdict, int alike, String answer) {}

    static Row row(long seed, @Nullable TroubleCause plant) throws Exception {
        DrawnHut hut = new DrawnHut(seed, plant);
        List<OwnersNote> notes = hut.notes();
        if (notes == null) {
            return new Row(hut, Verdict.NOT_PLANTED, 0, "");
        }
        SymptomResult result = NotesSymptom.of(notes, hut.system(), hut.gauge(), hut.shunt);
        String answer = result.answer();
        Verdict verdict;
        int alike = result.alike().size();
        if (answer.startsWith("Nothing")) {
            verdict = plant == null ? Verdict.RIGHT : Verdict.MISSED;
        } else if (plant == null || !result.alike().contains(plant)) {
            verdict = answer.startsWith("None") ? Verdict.UNEXPLAINED : Verdict.WRONG;
        } else if (answer.startsWith("None")) {
            verdict = Verdict.UNEXPLAINED;
        } else {
            verdict = alike == 1 ? Verdict.RIGHT : Verdict.ALIKE;
        }
        return new Row(hut, verdict, alike, answer);
    }

    /** {@code FROM TO [CAUSE...]}: seeds, and causes to be shown in full. */
    public static void main(String[] args) throws Exception {
        long from = Long.parseLong(args[0]);
        long to = Long.parseLong(args[1]);
        List<TroubleCause> plants = new ArrayList<>(NotesSymptom.TWELVE);
        plants.add(0, null);
        for (TroubleCause plant : plants) {
            int[] counts = new int[Verdict.values().length];
            int sizes = 0;
            StringBuilder bad = new StringBuilder();
            for (long seed = from; seed <= to; seed++) {
                Row row = row(seed, plant);
                counts[row.verdict().ordinal()]++;
                sizes += row.alike();
                boolean right = row.verdict() == Verdict.RIGHT || row.verdict() == Verdict.ALIKE;
                boolean full = args.length > 2 && (plant + "").matches(args[2]);
                if (full || (!right && row.verdict() != Verdict.NOT_PLANTED)) {
                    bad.append("   ").append(row.verdict()).append(' ').append(row.hut());
                    bad.append("\n      ").append(row.answer()).append('\n');
                }
            }
            StringBuilder line = new StringBuilder(String.format(Locale.ROOT, "%-16s", plant));
            for (Verdict each : Verdict.values()) {
                line.append(String.format(Locale.ROOT, " %s %2d", each, counts[each.ordinal()]));
            }
            System.out.println(
                    line + String.format(Locale.ROOT, "  mean %.1f", sizes / (to - from + 1.0)));
            System.out.print(bad);
        }
    }
}
