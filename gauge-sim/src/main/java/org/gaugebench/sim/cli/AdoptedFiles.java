package org.gaugebench.sim.cli;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.gaugebench.sim.adopt.Adoption;

/**
 * A scenario and its table, written whole in a folder of their own beside their place and moved
 * there by {@link #keep}. Closed without that, they leave nothing behind.
 */
final class AdoptedFiles implements AutoCloseable {
    private final Path folder;
    private final Path beside;
    private final String name;

    /** Writes both, to be looked at before they are kept. */
    AdoptedFiles(Path folder, String name, Adoption adoption) throws IOException {
        this.folder = folder;
        this.name = name;
        Files.createDirectories(folder);
        beside = Files.createTempDirectory(folder, ".adopt-");
        boolean whole = false;
        try {
            try (Writer table =
                    new BufferedWriter(
                            Files.newBufferedWriter(table(beside), StandardCharsets.UTF_8),
                            1 << 16)) {
                adoption.writeTable(table);
            }
            Files.writeString(scenario(), adoption.scenario());
            whole = true;
        } finally {
            if (!whole) {
                close();
            }
        }
    }

    /** The scenario where it stands for now. */
    Path scenario() {
        return scenario(beside);
    }

    private Path scenario(Path place) {
        return place.resolve(name + ".yaml");
    }

    private Path table(Path place) {
        return place.resolve(name + ".csv");
    }

    /** Where the scenario comes to stand. */
    static Path scenarioPlace(Path folder, String name) {
        return folder.resolve(name + ".yaml");
    }

    /** Where its table comes to stand. */
    static Path tablePlace(Path folder, String name) {
        return folder.resolve(name + ".csv");
    }

    /** Moves both into place, the table first: a scenario is never there without it. */
    void keep() throws IOException {
        move(table(beside), table(folder));
        move(scenario(), scenario(folder));
    }

    private static void move(Path from, Path to) throws IOException {
        try {
            Files.move(
                    from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    @Override
    public void close() throws IOException {
        Files.deleteIfExists(table(beside));
        Files.deleteIfExists(scenario());
        Files.deleteIfExists(beside);
    }
}
