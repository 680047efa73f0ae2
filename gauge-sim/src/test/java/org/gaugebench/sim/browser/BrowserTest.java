package org.gaugebench.sim.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** Each thing that we look for in a page is found in a page that has it, and in no other. */
@ExtendWith(BrowserExtension.class)
class BrowserTest {
    @TempDir Path folder;

    @Test
    void aPageWithoutFaultIsLeftInPeace(Browser browser) throws IOException {
        browser.open(page("<p>All well</p>"));
        browser.size(390, 800);
        browser.assertNoSidewaysScroll("at 390");
        assertEquals(List.of(), browser.complaints());
        assertEquals(List.of(), browser.requests());
        assertEquals(List.of(), browser.violations());
    }

    @Test
    void aWordOnTheConsoleAndAnUncaughtErrorAreHeard(Browser browser) throws IOException {
        browser.open(
                page("<script>console.error('one'); console.warn('two'); none.three();</script>"));
        List<String> heard = browser.complaints();
        assertEquals(3, heard.size(), heard::toString);
        assertTrue(heard.toString().contains("none is not defined"), heard::toString);
        assertEquals(heard, browser.complaints());
        browser.open(page("<p>Another page</p>"));
        assertEquals(List.of(), browser.complaints());
    }

    @Test
    void everyRequestIsSeen(Browser browser) throws IOException {
        browser.open(
                page(
                        "<img alt='' src='data:image/gif;base64,R0lGODlhAQABAAAAACw='>"
                                + "<img alt='' src='http://outside.example/a.png'>"
                                + "<script>fetch('http://outside.example/b')"
                                + ".catch(e => document.title = 'refused')</script>"));
        browser.until("return document.title === 'refused'");
        assertEquals(
                List.of("http://outside.example/a.png", "http://outside.example/b"),
                browser.requests());
    }

    @Test
    void aPageThatSticksOutIsNamed(Browser browser) throws IOException {
        browser.open(page("<p id='long' style='width:391px;margin:0'>Wide</p>"));
        browser.size(1024, 700);
        browser.assertNoSidewaysScroll("at 1024");
        browser.size(390, 700);
        AssertionError error =
                assertThrows(AssertionError.class, () -> browser.assertNoSidewaysScroll("at 390"));
        assertTrue(error.getMessage().contains("p#long"), error.getMessage());
    }

    @Test
    void aPaleWordIsAViolationInTheSchemeThatHasIt(Browser browser) throws IOException {
        browser.open(
                page(
                        "<style>p { color: #000; background: #fff }"
                                + "@media (prefers-color-scheme: dark)"
                                + " { p { color: #555; background: #333 } }</style><p>Pale</p>"));
        assertEquals(List.of(), browser.violations());
        browser.scheme("dark");
        List<String> found = browser.violations();
        assertEquals(1, found.size(), found::toString);
        assertTrue(found.get(0).startsWith("color-contrast: "), found::toString);
    }

    @Test
    void keysMouseAndPlugReachThePage(Browser browser) throws IOException {
        browser.open(
                page(
                        "<button"
                            + " style='width:200px;height:100px'>B</button><output></output><script>const"
                            + " o = document.querySelector('output');for (const e of ['mousedown',"
                            + " 'mouseup', 'keydown'])"
                            + " document.querySelector('button').addEventListener(e, x =>"
                            + " o.textContent += (x.key || x.type + ' ' + Math.round(x.offsetX /"
                            + " 20)) + ';')</script>"));
        browser.drag("button", 0.1, 0.9);
        browser.press("z");
        assertEquals(
                "mousedown 1;mouseup 9;z;",
                browser.text("return document.querySelector('output').textContent"));
        browser.online(false);
        assertEquals(false, browser.ask("return navigator.onLine"));
    }

    @Test
    void aTestFindsTheBrowserAsNew(Browser browser) throws IOException {
        browser.scheme("dark");
        browser.size(500, 500);
        browser.openSecondWindow(page("<p>Second</p>").toUri());
        browser.reset();
        browser.open(page("<p>First</p>"));
        assertEquals(
                "1280 720 false",
                browser.text(
                        "return innerWidth + ' ' + innerHeight + ' '"
                                + " + matchMedia('(prefers-color-scheme: dark)').matches"));
        Path picture = browser.picture("self-test");
        assertTrue(Files.size(picture) > 1000, () -> picture + " is empty");
    }

    private Path page(String body) throws IOException {
        return Files.writeString(
                folder.resolve("page.html"),
                "<!doctype html><html lang='en'><head><meta charset='utf-8'><title>T</title>"
                        + "<meta name='viewport' content='width=device-width'></head>"
                        + "<body><main><h1>Head</h1>"
                        + body
                        + "</main></body></html>",
                StandardCharsets.UTF_8);
    }
}
