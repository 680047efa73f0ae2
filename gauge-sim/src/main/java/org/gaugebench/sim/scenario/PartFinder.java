package org.gaugebench.sim.scenario;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * Finds the file of a part: in the folder {@code parts} beside the scenario, then in that of each
 * folder above, then among the parts built into this program, so that a copied scenario still runs.
 */
final class PartFinder {
    private static final String FOLDER = "parts";
    private static final String ENDING = ".yaml";

    /** Names have no dot, so none of them leads out of the folder. */
    private static final String NAME = "[a-z0-9][a-z0-9-]{0,60}(/[a-z0-9][a-z0-9-]{0,60}){0,4}";

    private final @Nullable Path folder;
    private final boolean relative;

    /**
     * Prepares to look.
     *
     * @param file the scenario, or null for a text without a place: only what is built in is found
     */
    PartFinder(@Nullable Path file) {
        this.folder = file == null ? null : file.toAbsolutePath().normalize().getParent();
        this.relative = file != null && !file.isAbsolute();
    }

    /** A part as found: no record, because records compare arrays by identity. */
    static final class Found {
        private final String file;
        private final byte[] bytes;

        private Found(String file, byte[] bytes) {
            this.file = file;
            this.bytes = bytes;
        }

        /** For messages. */
        String file() {
            return file;
        }

        /** Its content, one byte more than allowed where it is too large. */
        byte[] bytes() {
            return bytes;
        }
    }

    static boolean isName(String name) {
        return name.matches(NAME);
    }

    /**
     * Looks for a part.
     *
     * @param name of the right form
     * @return null where there is none
     * @throws IOException if a file is there and cannot be read, or lies elsewhere by a link
     */
    @Nullable Found find(String name) throws IOException {
        for (Path place = folder; place != null; place = place.getParent()) {
            Path parts = place.resolve(FOLDER);
            Path file = parts.resolve(name + ENDING);
            if (Files.isRegularFile(file)) {
                if (!file.toRealPath().startsWith(parts.toRealPath())) {
                    throw new IOException("it leads out of the folder parts");
                }
                try (InputStream in = Files.newInputStream(file)) {
                    return new Found(shown(file), in.readNBytes(ScenarioReader.LARGEST_BYTES + 1));
                }
            }
        }
        String resource = "/" + FOLDER + "/" + name + ENDING;
        try (InputStream in = PartFinder.class.getResourceAsStream(resource)) {
            return in == null
                    ? null
                    : new Found(
                            "built-in:" + FOLDER + "/" + name + ENDING,
                            in.readNBytes(ScenarioReader.LARGEST_BYTES + 1));
        }
    }

    private String shown(Path file) {
        if (!relative) {
            return file.toString();
        }
        return Path.of("").toAbsolutePath().relativize(file).toString();
    }
}
