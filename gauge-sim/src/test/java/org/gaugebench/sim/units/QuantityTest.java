package org.gaugebench.sim.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Quantities as people write them, and what is refused. */
class QuantityTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "4.2 A;MICROAMPS;4200000",
                "250 mA;MICROAMPS;250000",
                "-0.5A;MILLIAMPS;-500",
                "+0.2 %;PARTS_PER_MILLION;2000",
                "92 %;PARTS_PER_MILLION;920000",
                "500 ppm;PARTS_PER_MILLION;500",
                "60 Ah;MICROAMP_HOURS;60000000",
                "2 h 30 min;MILLIS;9000000",
                "1.5 d;MILLIS;129600000",
                "500 ms;MILLIS;500",
                "1 d 2 h 3 min 4 s 5 ms;MILLIS;93784005",
                "90 min;MINUTES;90",
                "14.4 V;MICROVOLTS;14400000",
                "-10 °C;MILLICELSIUS;-10000",
                "-10 C;MILLICELSIUS;-10000",
                "6 mOhm;MICROOHMS;6000",
                "6 mΩ;MICROOHMS;6000",
                "6 m\u2126;MICROOHMS;6000",
                "8 Ohm;MICROOHMS;8000000",
                "30 W;MICROWATTS;30000000",
                "1.5 uV;NANOVOLTS;1500",
                "1.5 µV;NANOVOLTS;1500",
                "1.5 μV;NANOVOLTS;1500",
                "3 nV;NANOVOLTS;3",
                "-24 mV/K;MICROVOLTS_PER_KELVIN;-24000",
                "\u221224 mV / K;MICROVOLTS_PER_KELVIN;-24000",
                "4 %/month;PARTS_PER_MILLION_PER_MONTH;40000",
                "4 % / month;PARTS_PER_MILLION_PER_MONTH;40000",
                "1.5 counts;COUNTS_Q8;384",
                "20 bit;BITS;20",
                "9223372036854.775807 A;MICROAMPS;9223372036854775807"
            })
    void shouldReadExactly(String text, RecordUnit unit, long steps) throws QuantityException {
        assertEquals(steps, Quantity.parse(text, unit));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "'';MICROAMPS;expected a current such as 4.2 A, but there is nothing",
                "4.2;MICROAMPS;expected a current such as 4.2 A, but found '4.2' without a unit",
                "4.2 V;MICROAMPS;expected a current such as 4.2 A, but found '4.2 V', which is a"
                        + " voltage",
                "4 ma;MICROAMPS;expected a current such as 4.2 A, but found '4 ma'@ there is no"
                        + " unit 'ma' here, did you mean 'mA'?",
                "4 amps;MICROAMPS;expected a current such as 4.2 A, but found '4 amps'@ there is"
                        + " no unit 'amps' here",
                "4,2 A;MICROAMPS;expected a current such as 4.2 A, but found '4,2 A'@ the decimal"
                        + " sign is a point",
                "1e3 A;MICROAMPS;expected a current such as 4.2 A, but found '1e3 A'@ there is no"
                        + " unit 'e' here",
                "NaN;MICROAMPS;expected a current such as 4.2 A, but found 'NaN'",
                "1 A 2 mA;MICROAMPS;expected a current such as 4.2 A, but found '1 A 2 mA', which"
                        + " is several",
                "30 min 2 h;MILLIS;expected a time such as 2 h 30 min, but found '30 min 2 h'@"
                        + " each part is smaller than the last",
                "-2 h 30 min;MILLIS;expected a time such as 2 h 30 min, but found '-2 h 30 min'@"
                        + " a sum of parts takes no sign",
                "4.2000001 A;MICROAMPS;4.2000001 A is finer than 1 uA, the smallest step here",
                "90 s;MINUTES;90 s is finer than 1 min, the smallest step here",
                "9223372036854.775808 A;MICROAMPS;9223372036854.775808 A is too large"
            })
    void shouldRefuseAndSayWhatWasExpected(String text, RecordUnit unit, String message) {
        QuantityException refusal =
                assertThrows(QuantityException.class, () -> Quantity.parse(text, unit));
        assertEquals(message.replace('@', ';'), refusal.getMessage());
    }

    @Test
    void shouldNotReadANumberLongerThanEighteenDigits() {
        assertThrows(
                QuantityException.class,
                () -> Quantity.parse("0".repeat(19) + "1 A", RecordUnit.MICROAMPS));
        assertThrows(
                QuantityException.class,
                () -> Quantity.parse("9".repeat(1_000_000) + " A", RecordUnit.MICROAMPS));
    }

    @Test
    void everyExampleOfAMessageIsItselfReadable() throws QuantityException {
        for (Dimension dimension : Dimension.values()) {
            Quantity.parse(dimension.example(), dimension);
        }
        ShuntRating.parse(ShuntRating.EXAMPLE);
        ConverterRange.parse(ConverterRange.EXAMPLE.replace("\"", ""));
        CapacityRating.parse(CapacityRating.EXAMPLE, RecordUnit.MICROAMP_HOURS);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "250000;MICROAMPS;250 mA",
                "4200000;MICROAMPS;4.2 A",
                "-1;MICROAMPS;-1 uA",
                "0;MICROVOLTS;0 V",
                "0;MILLIS;0 s",
                "9000000;MILLIS;2 h 30 min",
                "604800000;MILLIS;7 d",
                "1000;PARTS_PER_MILLION;0.1 %",
                "-24000;MICROVOLTS_PER_KELVIN;-24 mV/K",
                "-10000;MILLICELSIUS;-10 °C",
                "-1;COUNTS_Q8;-0.00390625 counts"
            })
    void shouldWriteAsPeopleDo(long steps, RecordUnit unit, String text) {
        assertEquals(text, QuantityFormat.format(steps, unit));
    }
}
