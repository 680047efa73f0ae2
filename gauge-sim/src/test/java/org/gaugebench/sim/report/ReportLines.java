package org.gaugebench.sim.report;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Base64;
import java.util.Map;
import java.util.TreeMap;

/** Reads back what a report packed, with nothing of the code that packed it. */
final class ReportLines {
    /** Stands for a gap. */
    static final long GAP = Long.MIN_VALUE;

    private ReportLines() {}

    /** The object in a page. */
    static JsonNode data(String page) {
        String begin = "<script type=\"application/json\" id=\"run\">";
        int from = page.indexOf(begin) + begin.length();
        try {
            return new ObjectMapper()
                    .readTree(page.substring(from, page.indexOf("</script>", from)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Values by tick, in the channel's own unit. */
    static Map<Long, Long> line(JsonNode packed) {
        return line(packed.get("points").asText(), packed.get("step").asLong());
    }

    static Map<Long, Long> line(String points, long step) {
        Map<Long, Long> line = new TreeMap<>();
        byte[] bytes = Base64.getDecoder().decode(points);
        int[] at = {0};
        long tick = 0;
        long value = 0;
        while (at[0] < bytes.length) {
            long first = number(bytes, at);
            tick += first / 2;
            if (first % 2 == 1) {
                line.put(tick, GAP);
                continue;
            }
            long odd = number(bytes, at);
            value += odd % 2 == 0 ? odd / 2 : -(odd + 1) / 2;
            line.put(tick, value * step);
        }
        return line;
    }

    private static long number(byte[] bytes, int[] at) {
        long number = 0;
        for (int shift = 0; ; shift += 7) {
            byte next = bytes[at[0]++];
            number |= (long) (next & 0x7F) << shift;
            if (next >= 0) {
                return number;
            }
        }
    }
}
