package org.gaugebench.sim.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * One of several equal parts of a list, so that several machines share it: of four parts, the
 * second takes the 2nd, 6th, 10th ... Together the parts are the list, none twice.
 *
 * @param index 1 to count
 * @param count how many parts
 */
record Shard(int index, int count) {
    private static final Pattern TEXT = Pattern.compile("(\\d{1,6})/(\\d{1,6})");

    /** Reads "2/4". */
    static final class Text implements ITypeConverter<Shard> {
        Text() {}

        @Override
        public Shard convert(String text) {
            Matcher matcher = TEXT.matcher(text.strip());
            if (matcher.matches()) {
                int index = Integer.parseInt(matcher.group(1));
                int count = Integer.parseInt(matcher.group(2));
                if (index >= 1 && index <= count) {
                    return new Shard(index, count);
                }
            }
            throw new TypeConversionException(
                    "'" + text + "' is no part; expected one such as 2/4, the second of four");
        }
    }

    /** This part of a list, in its order. */
    <T> List<T> of(List<T> all) {
        List<T> ours = new ArrayList<>();
        for (int i = index - 1; i < all.size(); i += count) {
            ours.add(all.get(i));
        }
        return ours;
    }

    @Override
    public String toString() {
        return index + "/" + count;
    }
}
