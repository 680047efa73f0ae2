package org.gaugebench.sim.advice;

/** Why a gauge's figure leaves the truth, with the check by a meter that tells it from others. */
public enum TroubleCause {
    /** Counts up when nothing flows. */
    ZERO_UP(
            "zero error, upward",
            "all loads and chargers off for 24 h: amp-hours shown must not rise",
            "an-offset-that-nobody-took-out"),
    /** Counts down when nothing flows. */
    ZERO_DOWN(
            "zero error, downward",
            "all loads and chargers off for 24 h: amp-hours shown must not fall",
            "floor-instead-of-round"),
    /** Its supply wire goes past the shunt. */
    OWN_CURRENT(
            "the gauge's own current is not counted",
            "a meter in the gauge's supply wire, on the milliamp range",
            "the-gauges-own-supply"),
    /** A load on the battery's own post. */
    PAST_SHUNT(
            "a load does not go through the shunt",
            "a clamp on the battery's post, loads on: more than the gauge shows",
            "a-fridge-past-the-shunt"),
    /** Efficiency taken as 100 %. */
    HEAT(
            "charge lost as heat while charging is not counted",
            "charge from half to full: amp-hours in, less those that come out again",
            "no-loss-on-charge"),
    /** More typed in than there is. */
    CAPACITY_LARGE(
            "more amp-hours typed in than the battery holds",
            "from full to flat: count the amp-hours, hold them against what is typed in",
            "capacity-typed-too-large"),
    /** Less typed in than there is. */
    CAPACITY_SMALL(
            "fewer amp-hours typed in than the battery holds",
            "from full to flat: count the amp-hours, hold them against what is typed in",
            "more-battery-than-was-told"),
    /** 100 % before the charger is done. */
    FULL_TOO_EARLY(
            "it sets itself to 100 % too early",
            "a clamp on the charger's wire as it jumps to 100 %: the current must be small",
            "a-taper-set-too-high"),
    /** Threshold above the charger. */
    FULL_NEVER(
            "it never sets itself to 100 %",
            "volts at the battery while the charger ends: below what the gauge waits for?",
            "a-threshold-above-the-charger"),
    /** Inside the battery. */
    SELF_DISCHARGE(
            "charge leaks away inside the battery",
            "charge fully, take a wire off for a month, and charge again: the amp-hours in",
            "half-a-year-of-lead"),
    /** Every current wrong by one factor. */
    SCALE(
            "another shunt rating typed in than is printed on the shunt",
            "a clamp beside the gauge at one large current",
            "another-shunt-than-was-entered"),
    /** In is out. */
    REVERSED(
            "the shunt is the other way round",
            "switch one load on: the current shown must be negative",
            "the-shunt-the-other-way-round"),
    /** Shows no smaller current. */
    SMALLEST_STEP(
            "small currents are not counted",
            "one lamp of known current on over night: amp-hours shown against amps times hours",
            "a-load-below-one-step"),
    /** No more fits in the field. */
    HOURS_FULL(
            "the time is longer than the display can show",
            "switch on a large load: the hours must fall within minutes",
            "hours-that-saturate"),
    /** Takes a start for a full battery. */
    STARTS_FULL(
            "it takes every start for a full battery",
            "its supply off for a minute at about half: it shows 100 % again",
            "full-because-it-was-switched-on"),
    /** Memory lost. */
    FORGETS(
            "it keeps nothing when its supply is off",
            "its supply off for a minute at about half: the figure is gone",
            "a-cut-in-the-middle-of-a-save"),
    /** Lights go out on a dip. */
    VOLTS_DIP(
            "a bad joint or a heavy load pulls the volts down, and there is charge left",
            "volts on the battery's posts and at the load while it goes dark",
            "a-bad-joint-and-a-voltage-at-the-bus"),
    /** Holds less than printed. */
    AGED(
            "the battery holds less than it did",
            "from full to flat: count the amp-hours, hold them against what is printed",
            "lights-out-at-a-third");

    private final String words;
    private final String check;
    private final String scenario;

    TroubleCause(String words, String check, String scenario) {
        this.words = words;
        this.check = check;
        this.scenario = scenario;
    }

    /** What it is. */
    public String words() {
        return words;
    }

    /** What to measure. */
    public String check() {
        return check;
    }

    /** The shelf's scenario that shows it, a file's name without ending. */
    public String scenario() {
        return scenario;
    }
}
