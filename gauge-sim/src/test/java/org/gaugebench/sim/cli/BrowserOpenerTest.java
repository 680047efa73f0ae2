package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Which program is asked to show a page, and with which arguments. */
class BrowserOpenerTest {
    private static final URI PAGE = URI.create("http://127.0.0.1:8080/?key=a&b=%22c");
    private static final Map<String, String> DESKTOP = Map.of("WAYLAND_DISPLAY", "wayland-0");

    private final List<List<String>> started = new ArrayList<>();

    @Test
    void eachSystemHasItsOwnProgramAndTheAddressIsOneArgument() {
        String address = PAGE.toString();
        assertEquals(List.of(List.of("xdg-open", address)), openOn("Linux"));
        assertEquals(List.of(List.of("/usr/bin/open", address)), openOn("Mac OS X"));
        assertEquals(
                List.of(List.of("rundll32", "url.dll,FileProtocolHandler", address)),
                openOn("Windows 11"));
    }

    @Test
    void theNextProgramIsAskedWhereOneFails() {
        BrowserOpener opener =
                new BrowserOpener(
                        "Linux",
                        DESKTOP,
                        command -> {
                            started.add(command);
                            return started.size() == 3;
                        });
        assertTrue(opener.open(PAGE));
        assertEquals(
                List.of("xdg-open", "gio", "x-www-browser"),
                started.stream().map(each -> each.get(0)).toList());
    }

    @Test
    void nothingIsStartedWhereNoWindowCanOpen() {
        BrowserOpener opener = new BrowserOpener("Linux", Map.of("DISPLAY", ""), started::add);
        assertFalse(opener.open(PAGE));
        assertEquals(List.of(), started);
    }

    @Test
    void saysThatNothingOpenedWhenEveryProgramFails() {
        assertFalse(new BrowserOpener("Linux", DESKTOP, command -> false).open(PAGE));
    }

    @Test
    void aPersonIsToldWhenAWindowCouldOpenAndNoneDid() {
        List<String> said = new ArrayList<>();
        new BrowserOpener("Linux", DESKTOP, command -> false).openOrTell(PAGE, said::add);
        assertEquals(
                List.of("No browser could be opened here. Type this address into one: " + PAGE),
                said);
        said.clear();
        new BrowserOpener("Linux", DESKTOP, command -> true).openOrTell(PAGE, said::add);
        new BrowserOpener("Linux", Map.of(), command -> false).openOrTell(PAGE, said::add);
        assertEquals(List.of(), said);
    }

    @Test
    void refusesWhatIsNoPage() {
        BrowserOpener opener = new BrowserOpener("Linux", DESKTOP, started::add);
        for (String wrong : List.of("javascript:alert(1)", "ms-settings:x", "no-scheme")) {
            URI address = URI.create(wrong);
            assertThrows(IllegalArgumentException.class, () -> opener.open(address), wrong);
        }
        assertEquals(List.of(), started);
    }

    private List<List<String>> openOn(String system) {
        started.clear();
        assertTrue(new BrowserOpener(system, DESKTOP, started::add).open(PAGE));
        return List.copyOf(started);
    }
}
