package org.gaugebench.sim.report;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/**
 * A file that appears whole or not at all: written beside its place under another name and moved
 * there by {@link #keep}. Closed without that, it leaves nothing behind, and what stood in its
 * place stands there still.
 */
public final class FreshFile implements AutoCloseable {
    private final Path place;
    private final Path beside;
    private final Writer writer;

    /**
     * Opens the file beside its place.
     *
     * @param place where it is to appear
     * @throws IOException if its folder is missing or cannot be written, or the place is a folder
     */
    public FreshFile(Path place) throws IOException {
        this.place = place.toAbsolutePath();
        Path name = this.place.getFileName();
        Path folder = this.place.getParent();
        if (name == null || folder == null || Files.isDirectory(this.place)) {
            throw new IOException("it is a folder");
        }
        if (!Files.isDirectory(folder)) {
            throw new IOException("there is no folder " + folder);
        }
        beside = folder.resolve("." + name + "." + ProcessHandle.current().pid() + ".part");
        writer =
                new BufferedWriter(
                        Files.newBufferedWriter(beside, StandardCharsets.UTF_8), 1 << 16);
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
    }

    @Override
    public void close() throws IOException {
        try {
            writer.close();
        } finally {
            Files.deleteIfExists(beside);
        }
    }
}
