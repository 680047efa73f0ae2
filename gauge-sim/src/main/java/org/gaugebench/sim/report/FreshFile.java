package org.gaugebench.sim.report;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * A file that appears whole or not at all: written beside its place under another name and moved
 * there by {@link #keep}. Closed without that, it leaves nothing behind, and what stood in its
 * place stands there still.
 */
public final class FreshFile implements AutoCloseable {
    /** Places for which a file is being written: two would write into one part, and lose both. */
    private static final Set<Path> TAKEN = ConcurrentHashMap.newKeySet();

    private final Path place;
    private final Path beside;
    private final Writer writer;
    private boolean done;

    /**
     * Opens the file beside its place.
     *
     * @param place where it is to appear
     * @throws IOException if its folder is missing or cannot be written, if the place is a folder,
     *     a device or a pipe, or if another fresh file is to appear there
     */
    public FreshFile(Path place) throws IOException {
        this.place = behindLinks(place.toAbsolutePath().normalize());
        Path name = this.place.getFileName();
        Path folder = this.place.getParent();
        if (name == null || folder == null || Files.isDirectory(this.place)) {
            throw new IOException("it is a folder");
        }
        if (!Files.isDirectory(folder)) {
            throw new IOException("there is no folder " + folder);
        }
        if (Files.exists(this.place) && !Files.isRegularFile(this.place)) {
            // Whoever may do everything would otherwise put a file in the place of /dev/null.
            throw new IOException("it is a device or a pipe, and no file");
        }
        if (!TAKEN.add(this.place)) {
            throw new IOException("another file of this command goes there");
        }
        beside = folder.resolve("." + name + "." + ProcessHandle.current().pid() + ".part");
        try {
            writer =
                    new BufferedWriter(
                            Files.newBufferedWriter(beside, StandardCharsets.UTF_8), 1 << 16);
        } catch (IOException e) {
            TAKEN.remove(this.place);
            throw e;
        }
    }

    /** Where a link leads to: the link stays, as it does for whoever writes through it. */
    private static Path behindLinks(Path place) throws IOException {
        if (!Files.isSymbolicLink(place)) {
            return place;
        }
        if (!Files.exists(place)) {
            throw new IOException("it is a link, and no file is behind it");
        }
        return place.toRealPath();
    }

    /** Where to write. */
    public Writer writer() {
        return writer;
    }

    /**
     * Moves the file into place.
     *
     * @throws IOException if the last bytes or the move fail
     */
    public void keep() throws IOException {
        writer.close();
        try {
            Files.move(
                    beside,
                    place,
                    StandardCopyOption.ATOMIC_MOVE,
                    StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(beside, place, StandardCopyOption.REPLACE_EXISTING);
        }
        done = true;
        TAKEN.remove(place);
    }

    @Override
    public void close() throws IOException {
        if (done) {
            return;
        }
        done = true;
        try {
            writer.close();
        } finally {
            Files.deleteIfExists(beside);
            TAKEN.remove(place);
        }
    }
}
