package org.gaugebench.sim.live;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** How figures are rounded for the page. */
class JsonTest {
    private static String band(double lower, double upper) {
        return Json.object(json -> Json.band(json, lower, upper, 1e3));
    }

    /** The last step of the gauge, a part in a million, still makes a band reach further. */
    @Test
    void aBandIsRoundedOutwardAndAnEdgeOnAPlaceStays() {
        assertEquals("{\"lower\":95.999,\"upper\":97.001}", band(95.9999, 97.0001));
        assertEquals("{\"lower\":96.53,\"upper\":100.0}", band(96.53, 100));
        // 0.29 times a thousand is 290, and 1.001 times a thousand a little less than 1001.
        assertEquals("{\"lower\":0.29,\"upper\":1.001}", band(0.29, 1.001));
        assertEquals("{\"lower\":null,\"upper\":null}", band(Double.NaN, Double.NaN));
    }
}
