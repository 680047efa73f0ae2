package org.gaugebench.sim.live;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;

/**
 * Entries of the account book. The newest stand as they were booked; older ones are rolled into
 * days, those into months of thirty days, and those into one: it takes the same memory after ten
 * years as after ten days.
 */
final class Ledger {
    /** Entries that stand as they were booked: some two days of an ordinary system. */
    static final int BOOKED = 60;

    /** Days that stand for themselves: two months. */
    static final int DAYS = 60;

    /** Months that stand for themselves: twenty years. */
    static final int MONTHS = 240;

    private static final long DAY_MILLIS = 86_400_000;
    private static final long MONTH_MILLIS = 30 * DAY_MILLIS;

    private final int causes;
    private final Deque<Entry> booked = new ArrayDeque<>();
    private final Deque<Entry> days = new ArrayDeque<>();
    private final Deque<Entry> months = new ArrayDeque<>();
    private final Deque<Entry> before = new ArrayDeque<>();

    /**
     * Opens an empty book.
     *
     * @param causes how many causes an entry tells apart
     */
    Ledger(int causes) {
        this.causes = causes;
    }

    /** Puts in a closed entry. */
    void add(Entry entry) {
        booked.addLast(entry);
        if (booked.size() > BOOKED) {
            roll(booked.removeFirst(), days, Entry.Grain.DAY, DAY_MILLIS);
        }
        if (days.size() > DAYS) {
            roll(days.removeFirst(), months, Entry.Grain.MONTH, MONTH_MILLIS);
        }
        if (months.size() > MONTHS) {
            roll(months.removeFirst(), before, Entry.Grain.BEFORE, Long.MAX_VALUE);
        }
    }

    /** An entry belongs to the period in which it begins. */
    private void roll(Entry entry, Deque<Entry> into, Entry.Grain grain, long periodMillis) {
        Entry last = into.peekLast();
        if (last == null || last.fromMillis / periodMillis != entry.fromMillis / periodMillis) {
            last = new Entry(grain, entry.fromMillis, causes);
            into.addLast(last);
        }
        last.take(entry);
    }

    /** All entries, the oldest first. */
    List<Entry> entries() {
        List<Entry> all = new ArrayList<>(before);
        all.addAll(months);
        all.addAll(days);
        all.addAll(booked);
        return all;
    }
}
