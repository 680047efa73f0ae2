package org.gaugebench.sim.cli;

import java.util.List;
import org.gaugebench.sim.report.PictureSeries;
import org.gaugebench.sim.scenario.Nearest;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads the name of something that a picture can show. */
final class PictureSeriesName implements ITypeConverter<PictureSeries> {
    PictureSeriesName() {}

    @Override
    public PictureSeries convert(String text) {
        String word = text.strip();
        for (PictureSeries series : PictureSeries.values()) {
            if (series.word().equals(word)) {
                return series;
            }
        }
        List<String> words = PictureSeries.words();
        String nearest = Nearest.of(word, words);
        throw new TypeConversionException(
                "a picture cannot show '%s'; %s"
                        .formatted(
                                word,
                                nearest == null
                                        ? "expected one or more of " + String.join(",", words)
                                        : "did you mean '" + nearest + "'?"));
    }
}
