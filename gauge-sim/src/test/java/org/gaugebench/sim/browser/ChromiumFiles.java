package org.gaugebench.sim.browser;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Where Chromium and its driver lie on this machine. Nothing is ever fetched. */
final class ChromiumFiles {
    private static final List<String> BROWSERS =
            List.of("chromium", "chromium-browser", "google-chrome", "chrome");
    private static final List<String> DRIVERS = List.of("chromedriver");

    /** Some packages leave the driver beside the browser's own files (from memory). */
    private static final List<String> DRIVER_FOLDERS =
            List.of("/usr/lib/chromium", "/usr/lib/chromium-browser");

    private ChromiumFiles() {}

    static Path browser() throws Browser.MissingException {
        return find(BROWSERS).orElseThrow(() -> missing("Chromium"));
    }

    static Path driver() throws Browser.MissingException {
        return find(DRIVERS).orElseThrow(() -> missing("Chromium's driver (chromedriver)"));
    }

    private static Browser.MissingException missing(String what) {
        return new Browser.MissingException(
                what
                        + " is not on PATH; on Debian 'apt-get install chromium chromium-driver'"
                        + " brings both");
    }

    private static Optional<Path> find(List<String> names) {
        List<String> folders = new ArrayList<>();
        for (String folder :
                System.getenv().getOrDefault("PATH", "").split(File.pathSeparator, -1)) {
            if (!folder.isEmpty()) {
                folders.add(folder);
            }
        }
        folders.addAll(DRIVER_FOLDERS);
        for (String name : names) {
            for (String folder : folders) {
                if (Files.isExecutable(Path.of(folder, name))) {
                    return Optional.of(Path.of(folder, name));
                }
            }
        }
        return Optional.empty();
    }
}
