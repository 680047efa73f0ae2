package org.gaugebench.sim.units;

/** Kinds of quantities, each with the words and the example that messages use. */
public enum Dimension {
    /** Amps; positive flows into the battery. */
    CURRENT("a current", "4.2 A"),
    /** Volts. */
    VOLTAGE("a voltage", "14.4 V"),
    /** Ohms. */
    RESISTANCE("a resistance", "6 mOhm"),
    /** Watts. */
    POWER("a power", "30 W"),
    /** Ampere-hours. */
    CHARGE("a charge", "60 Ah"),
    /** Seconds. */
    DURATION("a time", "2 h 30 min"),
    /** Degrees Celsius. */
    TEMPERATURE("a temperature", "-10 °C"),
    /** Kelvins: how far one temperature lies from another. */
    TEMPERATURE_DIFFERENCE("a difference of temperature", "8 K"),
    /** Kelvins per watt. */
    TEMPERATURE_RISE_PER_POWER("a rise of temperature per power", "1.5 K/W"),
    /** Parts of one. */
    RATIO("a part of the whole", "92 %"),
    /** Volts per kelvin. */
    VOLTAGE_PER_TEMPERATURE("a temperature coefficient", "-24 mV/K"),
    /** Parts of one in 30 days. */
    RATIO_PER_MONTH("a loss per month", "4 %/month"),
    /** Cycles in a second. */
    FREQUENCY("a frequency", "200 Hz"),
    /** Counts of a converter. */
    COUNTS("converter counts", "1.5 counts"),
    /** Width of a converter. */
    BITS("a converter width", "20 bit");

    private final String phrase;
    private final String example;

    Dimension(String phrase, String example) {
        this.phrase = phrase;
        this.example = example;
    }

    /** The kind with its article, for messages. */
    public String phrase() {
        return phrase;
    }

    /** A text that parses as this kind. */
    public String example() {
        return example;
    }
}
