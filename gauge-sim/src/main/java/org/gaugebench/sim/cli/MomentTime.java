package org.gaugebench.sim.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.gaugebench.sim.units.Quantity;
import org.gaugebench.sim.units.QuantityException;
import org.gaugebench.sim.units.RecordUnit;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a moment as reports print it, "2 d 03:12:40", or as scenarios write it, "2 d 3 h". */
final class MomentTime implements ITypeConverter<Long> {
    private static final Pattern CLOCK =
            Pattern.compile("(?:(\\d{1,6}) d )?(\\d{1,2}):([0-5]\\d):([0-5]\\d)(?:\\.(\\d{3}))?");

    MomentTime() {}

    @Override
    public Long convert(String text) {
        Matcher matcher = CLOCK.matcher(text.strip());
        if (matcher.matches()) {
            return part(matcher, 1) * 86_400_000
                    + part(matcher, 2) * 3_600_000
                    + part(matcher, 3) * 60_000
                    + part(matcher, 4) * 1_000
                    + part(matcher, 5);
        }
        try {
            return Quantity.parse(text, RecordUnit.MILLIS);
        } catch (QuantityException e) {
            throw new TypeConversionException(
                    "'" + text + "' is no moment; expected one such as '2 d 03:12:40' or '51 h'");
        }
    }

    /** Refuses what a moment does not give, and what would else be left out in silence. */
    static void check(
            @Nullable Long moment,
            boolean json,
            @Nullable Path trace,
            @Nullable Path junit,
            boolean ruleCoverage)
            throws InputException {
        List<String> others = new ArrayList<>();
        if (json) {
            others.add("--json");
        }
        if (trace != null) {
            others.add("--trace");
        }
        if (junit != null) {
            others.add("--junit");
        }
        if (ruleCoverage) {
            others.add("--rule-coverage");
        }
        if (moment != null && !others.isEmpty()) {
            throw new InputException(
                    "--at shows one moment and judges nothing; expected it without %s, or for"
                                    .formatted(String.join(" and ", others))
                            + " programs: gauge-sim explain --json --at '51 h' week.yaml");
        }
    }

    private static long part(Matcher matcher, int group) {
        String digits = matcher.group(group);
        return digits == null ? 0 : Long.parseLong(digits);
    }
}
