package org.gaugebench.sim.cli;

import java.io.IOException;
import java.net.URI;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;

/**
 * Shows a page in the browser of the person who sits here, by the program that each system has for
 * it. Arguments go to that program as they are, never through a shell, so no address can run one.
 */
final class BrowserOpener {
    /** A program that cannot open the page says so within this; one that runs on is at work. */
    private static final long REFUSAL_MILLIS = 1500;

    private final String system;
    private final Map<String, String> environment;
    private final Starter starter;

    /** Starts a program and answers whether it went well. */
    interface Starter {
        /**
         * Starts a program.
         *
         * @param command the program and its arguments
         * @return false where there is no such program, or it failed at once
         */
        boolean start(List<String> command);
    }

    /**
     * The opener of this machine.
     *
     * @param environment variables of the process
     */
    static BrowserOpener ofProcess(Map<String, String> environment) {
        return new BrowserOpener(
                System.getProperty("os.name", ""), environment, BrowserOpener::startProcess);
    }

    BrowserOpener(String system, Map<String, String> environment, Starter starter) {
        this.system = system.toLowerCase(Locale.ROOT);
        this.environment = environment;
        this.starter = starter;
    }

    /**
     * Opens a page; never fails.
     *
     * @param address an http, https or file address
     * @return false when nothing opened: then the caller prints the address
     */
    boolean open(URI address) {
        String scheme = address.getScheme();
        if (!List.of("http", "https", "file").contains(scheme == null ? "" : scheme)) {
            throw new IllegalArgumentException("not an address of a page: " + address);
        }
        if (!hasDesktop()) {
            return false;
        }
        for (List<String> command : commands(address.toASCIIString())) {
            if (starter.start(command)) {
                return true;
            }
        }
        return false;
    }

    /**
     * Opens a page; where a window could open and no program is there that opens one, says so:
     * otherwise somebody waits for it.
     *
     * @param address as for {@link #open}
     * @param say prints a line
     */
    void openOrTell(URI address, Consumer<String> say) {
        if (!open(address) && hasDesktop()) {
            say.accept("No browser could be opened here. Type this address into one: " + address);
        }
    }

    /**
     * Whether a window can open here. Without a display the programs below would start a browser in
     * the text terminal, over what we print.
     */
    boolean hasDesktop() {
        return isWindows() || isMac() || isSet("DISPLAY") || isSet("WAYLAND_DISPLAY");
    }

    private List<List<String>> commands(String address) {
        if (isWindows()) {
            return List.of(List.of("rundll32", "url.dll,FileProtocolHandler", address));
        }
        if (isMac()) {
            return List.of(List.of("/usr/bin/open", address));
        }
        return List.of(
                List.of("xdg-open", address),
                List.of("gio", "open", address),
                List.of("x-www-browser", address));
    }

    private boolean isWindows() {
        return system.startsWith("windows");
    }

    private boolean isMac() {
        return system.startsWith("mac");
    }

    private boolean isSet(String variable) {
        return !environment.getOrDefault(variable, "").isEmpty();
    }

    private static boolean startProcess(List<String> command) {
        try {
            // What the browser has to say goes nowhere: it would stand between our own lines.
            Process process =
                    new ProcessBuilder(command)
                            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                            .redirectError(ProcessBuilder.Redirect.DISCARD)
                            .start();
            process.getOutputStream().close();
            boolean ended = process.waitFor(REFUSAL_MILLIS, TimeUnit.MILLISECONDS);
            return !ended || process.exitValue() == 0;
        } catch (IOException e) {
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }
}
