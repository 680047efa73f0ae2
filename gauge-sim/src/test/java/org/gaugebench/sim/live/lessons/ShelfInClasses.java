package org.gaugebench.sim.live.lessons;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.stream.Stream;
import org.gaugebench.house.TopLevelRule;

/**
 * The lessons' scenarios lie in the jar because Maven copies them. A build without Maven has them
 * copied here, each time, so that it never tests an old one.
 */
public final class ShelfInClasses {
    private ShelfInClasses() {}

    public static void copy() {
        Path shelf = TopLevelRule.projectRoot().resolve("scenarios");
        try {
            Path classes =
                    Path.of(
                            Lesson.class
                                    .getProtectionDomain()
                                    .getCodeSource()
                                    .getLocation()
                                    .toURI());
            for (String folder : List.of("teaching", "teaching/pictures")) {
                Files.createDirectories(classes.resolve(folder));
                try (Stream<Path> files = Files.list(shelf.resolve(folder))) {
                    for (Path file : files.filter(it -> isShipped(it)).toList()) {
                        Files.copy(
                                file,
                                classes.resolve(folder).resolve(file.getFileName().toString()),
                                StandardCopyOption.REPLACE_EXISTING);
                    }
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    private static boolean isShipped(Path file) {
        return file.getFileName().toString().matches("\\d\\d-.*\\.(yaml|svg)");
    }
}
