package org.gaugebench.sim.live.form;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.gaugebench.sim.advice.OwnChange;
import org.gaugebench.sim.advice.OwnersGauge;
import org.gaugebench.sim.advice.Seen;
import org.gaugebench.sim.scenario.Chemistry;
import org.jspecify.annotations.Nullable;

/**
 * The fields of the page that stand once, in the page's order. Each may be left empty, which says
 * "not known". A number without a unit takes the unit that stands beside the field.
 */
enum FormField {
    VOLTAGE(Group.BATTERY, List.of("12 V", "24 V", "36 V", "48 V")),
    CHEMISTRY(Group.BATTERY, keys(Chemistry.values(), Chemistry::key)),
    CAPACITY(Group.BATTERY, "Ah", "100"),
    RATE(Group.BATTERY, List.of("20 h", "10 h", "5 h", "100 h")),
    USABLE(Group.BATTERY, "%", "50"),
    COLDEST(Group.BATTERY, "°C", "5"),
    INVERTER_WATTS(Group.INVERTER, "W", "1000"),
    INVERTER_SURGE(Group.INVERTER, "W", "2000"),
    INVERTER_EFFICIENCY(Group.INVERTER, "%", "88"),
    SHUNT(Group.SHUNT, "", "100 A / 75 mV"),
    ADC(Group.SHUNT, "", "20 bit, 100 mV"),
    SETS_FULL(Group.GAUGE, words(OwnersGauge.SetsFull.values())),
    PAST_FULL(Group.GAUGE, words(OwnersGauge.PastFull.values())),
    AFTER_OFF(Group.GAUGE, words(OwnersGauge.AfterOff.values())),
    SMALLEST_AMPS(Group.GAUGE, "A", "0.1"),
    SMALLEST_AMP_HOURS(Group.GAUGE, "Ah", "0.1"),
    LONGEST_HOURS(Group.GAUGE, "h", "99"),
    OWN_CURRENT(Group.GAUGE, "mA", "12"),
    ZERO_ERROR(Group.GAUGE, "mA", "5"),
    PAST_SHUNT(Group.GAUGE, "mA", "20"),
    EFFICIENCY_SET(Group.SETTINGS, "%", "95"),
    TYPED_CHEMISTRY(Group.SETTINGS, keys(Chemistry.values(), Chemistry::key)),
    TYPED_CAPACITY(Group.SETTINGS, "Ah", "100"),
    TYPED_SHUNT(Group.SETTINGS, "", "100 A / 75 mV"),
    FULL_VOLTS(Group.SETTINGS, "V", "14.2"),
    FULL_AMPS(Group.SETTINGS, "A", "2"),
    FULL_MINUTES(Group.SETTINGS, "min", "30"),
    KEPT_BACK(Group.SETTINGS, "%", "50"),
    SEEN(Group.SYMPTOM, keys(Seen.values(), Seen::key)),
    CHANGED(Group.CHANGE, words(OwnChange.What.values())),
    CHANGED_AMOUNT(Group.CHANGE, "", "8 weeks"),
    SHOWN(Group.CHANGE, "%", "70"),
    NAME(Group.PAPER, "", "the hut at the end of the pier"),
    EARTH(Group.PAPER, List.of("yes", "no"));

    /** Where on the page. */
    enum Group {
        BATTERY,
        INVERTER,
        SHUNT,
        GAUGE,
        SETTINGS,
        SYMPTOM,
        CHANGE,
        PAPER
    }

    private static final String NOT_KNOWN = "not-known";

    private final Group group;
    private final String unit;
    private final String example;

    // Never handed out to be changed: List.of refuses it.
    @SuppressWarnings("ImmutableEnumChecker")
    private final List<String> choices;

    FormField(Group group, List<String> choices) {
        this.group = group;
        this.unit = "";
        this.example = "";
        this.choices = choices;
    }

    FormField(Group group, String unit, String example) {
        this.group = group;
        this.unit = unit;
        this.example = example;
        this.choices = List.of();
    }

    private static <E> List<String> keys(E[] values, Function<E, String> key) {
        return Arrays.stream(values).map(key).toList();
    }

    private static List<String> words(Enum<?>[] values) {
        return Arrays.stream(values)
                .map(each -> each.name().toLowerCase(Locale.ROOT).replace('_', '-'))
                .filter(each -> !each.equals(NOT_KNOWN))
                .toList();
    }

    Group group() {
        return group;
    }

    /** As the option of the command line, without its dashes. */
    String key() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Taken where a number stands alone; may be empty. */
    String unit() {
        return unit;
    }

    /** A text that it takes. */
    String example() {
        return example;
    }

    /** What can be chosen; empty where it is typed. */
    List<String> choices() {
        return choices;
    }

    /** The field of a key, or null. */
    static @Nullable FormField of(String key) {
        for (FormField each : values()) {
            if (each.key().equals(key)) {
                return each;
            }
        }
        return null;
    }

    /** The key of the words of one choice. */
    String wordOf(String choice) {
        String plain = choice.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
        // Both ask for the same kinds.
        String stem = this == TYPED_CHEMISTRY ? CHEMISTRY.key() : key();
        return "sys-" + stem + "-" + plain;
    }
}
