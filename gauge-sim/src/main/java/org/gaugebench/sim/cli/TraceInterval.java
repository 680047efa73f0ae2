package org.gaugebench.sim.cli;

import java.math.BigDecimal;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads the interval of a trace: "tick", "10 s", "1 min", "1 h". */
final class TraceInterval implements ITypeConverter<Long> {
    private static final Pattern LENGTH = Pattern.compile("(\\d{1,9}(?:\\.\\d{1,3})?) *([a-z]+)");
    private static final Map<String, Long> UNIT_MILLIS =
            Map.of("ms", 1L, "s", 1_000L, "min", 60_000L, "h", 3_600_000L, "d", 86_400_000L);

    TraceInterval() {}

    @Override
    public Long convert(String text) {
        if (text.equals("tick")) {
            return 0L;
        }
        Matcher matcher = LENGTH.matcher(text.strip());
        Long unit = matcher.matches() ? UNIT_MILLIS.get(matcher.group(2)) : null;
        if (unit == null) {
            throw wrong(text);
        }
        long millis =
                new BigDecimal(matcher.group(1)).multiply(BigDecimal.valueOf(unit)).longValue();
        if (millis == 0) {
            throw wrong(text);
        }
        return millis;
    }

    private static TypeConversionException wrong(String text) {
        return new TypeConversionException(
                "'" + text + "' is no interval; expected one such as '10 s', '1 min' or 'tick'");
    }
}
