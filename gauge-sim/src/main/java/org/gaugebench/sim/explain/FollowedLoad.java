package org.gaugebench.sim.explain;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/** The load filter followed beside the core, written from arithmetic.md 11 and rule T1. */
final class FollowedLoad {
    private static final int SLOT_MILLIS = 5_000;
    private static final int HEAVIER_SLOTS = 9;
    private static final int LIGHTER_SLOTS = 36;
    private static final int RETURN_SLOTS = 9;
    private static final int REMEMBERED_SLOTS = 720;
    private static final int ENVELOPE_MINUTES = 60;
    private static final long MARGIN_MILLIS = 500 * 3_600_000L;

    private final int averagingMinutes;
    private final long marginMicroamps;
    private final Deque<Long> means = new ArrayDeque<>();
    private final List<Long> envelope = new ArrayList<>();
    private int lookBack = ENVELOPE_MINUTES;
    private long slotNanocoulombs;
    private long slotMillis;
    private boolean anySlot;
    private long fastQ8;
    private long fastBeforeQ8;
    private long lastSlotMean;
    private boolean seeded;
    private boolean mixed;
    private int heavier;
    private int lighter;
    private long meanBefore;
    private int minutesBefore;
    private int remembered;
    private int returning;
    private long rememberedMean;
    private int rememberedMinutes;
    private long rememberedLow;
    private long rememberedHigh;

    FollowedLoad(GaugeSettings settings) {
        averagingMinutes = (int) settings.get(Setting.AVERAGING_TIME);
        long capacity = new RuleLimits(settings).capacity().whole();
        marginMicroamps = Math.max(1, capacity / MARGIN_MILLIS);
    }

    void add(long microamps, long millis) {
        long left = millis;
        while (left >= SLOT_MILLIS - slotMillis) {
            long part = SLOT_MILLIS - slotMillis;
            long mean = (slotNanocoulombs + microamps * part) / SLOT_MILLIS;
            left -= part;
            dropSlot();
            closeSlot(mean);
        }
        slotNanocoulombs += microamps * left;
        slotMillis += left;
    }

    void dropSlot() {
        slotNanocoulombs = 0;
        slotMillis = 0;
    }

    private void closeSlot(long mean) {
        lastSlotMean = mean;
        fastBeforeQ8 = anySlot ? fastQ8 : mean << 8;
        anySlot = true;
        fastQ8 = fastBeforeQ8 + ((((mean << 8) - fastBeforeQ8) * 9) >> 5);
        if (seeded && !cameBack()) {
            watch();
        }
    }

    private boolean cameBack() {
        if (remembered == 0) {
            return false;
        }
        remembered--;
        long fast = fastQ8 >> 8;
        boolean inside = fast >= rememberedLow && fast <= rememberedHigh;
        returning = inside ? returning + 1 : 0;
        if (returning == RETURN_SLOTS) {
            restart();
            for (int i = 0; i < rememberedMinutes; i++) {
                push(rememberedMean);
            }
            endOneOff();
            return true;
        }
        if (remembered == 0) {
            endOneOff();
        }
        return inside;
    }

    private void endOneOff() {
        remembered = 0;
        returning = 0;
        heavier = 0;
        lighter = 0;
        lookBack = ENVELOPE_MINUTES;
    }

    private void watch() {
        long fast = fastQ8 >> 8;
        boolean below = fast < low();
        boolean above = fast > high();
        if ((below || above) && heavier + lighter == 0) {
            meanBefore = mean().whole();
            minutesBefore = Math.max(1, means.size());
        }
        heavier = below ? heavier + 1 : 0;
        lighter = above ? lighter + 1 : 0;
        if (heavier == HEAVIER_SLOTS || lighter == LIGHTER_SLOTS) {
            takeOver(fast);
        }
    }

    private void takeOver(long fast) {
        if (remembered == 0) {
            remembered = REMEMBERED_SLOTS;
            rememberedMean = meanBefore;
            rememberedMinutes = minutesBefore;
            rememberedLow = low();
            rememberedHigh = high();
            lookBack = 0;
        }
        widen(fast);
        heavier = 0;
        lighter = 0;
        returning = 0;
        restart();
    }

    private void restart() {
        means.clear();
        mixed = true;
    }

    private void push(long mean) {
        if (means.size() == averagingMinutes) {
            means.removeFirst();
        }
        means.addLast(mean);
    }

    private void widen(long level) {
        envelope.add(level);
        if (envelope.size() > ENVELOPE_MINUTES) {
            envelope.remove(0);
        }
        lookBack = Math.min(lookBack + 1, ENVELOPE_MINUTES);
    }

    void closeMinute(long mean) {
        boolean leftOut = mixed;
        mixed = false;
        if (leftOut) {
            return;
        }
        push(mean);
        if (!seeded || heavier + lighter == 0) {
            widen(mean);
        }
        seeded = true;
    }

    private List<Long> looked() {
        int count = Math.min(envelope.size(), lookBack);
        return envelope.subList(envelope.size() - count, envelope.size());
    }

    private Expression edge(long level, int sign) {
        Expression quarter = Expression.of(level).abs().right(2);
        Expression of = Expression.of(level);
        return sign < 0
                ? of.minus(quarter).minus(marginMicroamps)
                : of.plus(quarter).plus(marginMicroamps);
    }

    Expression lowEdge() {
        return edge(looked().stream().mapToLong(Long::longValue).min().orElse(0), -1);
    }

    Expression highEdge() {
        return edge(looked().stream().mapToLong(Long::longValue).max().orElse(0), 1);
    }

    private long low() {
        return lowEdge().whole();
    }

    private long high() {
        return highEdge().whole();
    }

    boolean isSeeded() {
        return seeded;
    }

    boolean anySlot() {
        return anySlot;
    }

    /** The step of the fast pole at the last whole slot. */
    Expression fastStep() {
        Expression difference = Expression.of(lastSlotMean).times(256).minus(fastBeforeQ8);
        return Expression.of(fastBeforeQ8).plus(difference.times(9).right(5));
    }

    long fastQ8() {
        return fastQ8;
    }

    int minutes() {
        return means.size();
    }

    long sum() {
        return means.stream().mapToLong(Long::longValue).sum();
    }

    /** The filtered current in uA. */
    Expression mean() {
        return means.isEmpty()
                ? Expression.of(fastQ8).half(256)
                : Expression.of(sum()).half(means.size());
    }

    /** The same in uA/256, as its register holds it. */
    Expression meanQ8() {
        return means.isEmpty()
                ? Expression.of(fastQ8)
                : Expression.of(sum()).times(256).over(means.size());
    }

    int outsideSlots() {
        return heavier + lighter;
    }

    boolean isHeavier() {
        return heavier > 0;
    }

    int rememberedSlots() {
        return remembered;
    }
}
