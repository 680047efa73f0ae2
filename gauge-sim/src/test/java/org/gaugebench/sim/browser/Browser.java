package org.gaugebench.sim.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/**
 * A headless Chromium with what our tests ask of it. Every test gets it fresh: one window, light,
 * 1280 by 720, online, nothing in its logs.
 */
public final class Browser {
    /** Long enough for a loaded machine; a page that needs it is broken, not slow. */
    private static final Duration PATIENCE = Duration.ofSeconds(20);

    /** Held, since loggers that nobody holds forget their level. */
    private static final Logger SELENIUM = Logger.getLogger("org.openqa.selenium");

    private static final Path PICTURES = Path.of("target", "screenshots");

    private static final double MILLIMETRES_PER_INCH = 25.4;

    private final ChromeDriver driver;
    private final PageLog log;
    private final String firstWindow;

    /** There is no browser here, or it does not start; the message says which. */
    static final class MissingException extends Exception {
        private static final long serialVersionUID = 1;

        MissingException(String message) {
            super(message);
        }
    }

    private Browser(ChromeDriver driver) {
        this.driver = driver;
        this.log = new PageLog(driver.manage().logs());
        this.firstWindow = driver.getWindowHandle();
    }

    static Browser start() throws MissingException {
        // It warns that it does not know this Chromium's own protocol; we use none of its classes.
        SELENIUM.setLevel(Level.SEVERE);
        ChromeOptions options = new ChromeOptions();
        options.setBinary(ChromiumFiles.browser().toFile());
        options.addArguments(
                "--headless=new",
                "--disable-gpu",
                "--disable-dev-shm-usage",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-default-apps",
                "--disable-sync",
                "--no-first-run",
                "--hide-scrollbars",
                "--force-device-scale-factor=1",
                // The world outside does not exist, so that no test can lean on it.
                "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1, EXCLUDE localhost");
        if ("root".equals(System.getProperty("user.name"))) {
            // Chromium refuses to run as root with its sandbox.
            options.addArguments("--no-sandbox");
        }
        LoggingPreferences wanted = new LoggingPreferences();
        wanted.enable(LogType.BROWSER, Level.ALL);
        wanted.enable(LogType.PERFORMANCE, Level.ALL);
        options.setCapability(ChromeOptions.LOGGING_PREFS, wanted);
        // With both files named, Selenium looks for none and fetches none.
        ChromeDriverService service =
                new ChromeDriverService.Builder()
                        .usingDriverExecutable(ChromiumFiles.driver().toFile())
                        .usingAnyFreePort()
                        .withSilent(true)
                        .build();
        try {
            return new Browser(new ChromeDriver(service, options));
        } catch (WebDriverException e) {
            service.stop();
            throw new MissingException("Chromium does not start: " + e.getRawMessage());
        }
    }

    void close() {
        driver.quit();
    }

    /** As every test finds it. */
    void reset() {
        for (String window : driver.getWindowHandles()) {
            if (!window.equals(firstWindow)) {
                driver.switchTo().window(window).close();
            }
        }
        driver.switchTo().window(firstWindow);
        driver.get("about:blank");
        online(true);
        size(1280, 720);
        scheme("light");
        log.forget();
    }

    // ---- What a person does

    /** Opens a page and waits until the page says of itself that it is ready, if it ever does. */
    public void open(URI address) {
        log.forget();
        driver.get(address.toString());
    }

    /** Opens a file from disk. */
    public void open(Path file) {
        open(file.toAbsolutePath().toUri());
    }

    /** A second window; it becomes the one that everything else is about. */
    public String openSecondWindow(URI address) {
        driver.switchTo().newWindow(WindowType.TAB);
        driver.get(address.toString());
        return driver.getWindowHandle();
    }

    /** The window that {@link #open} used. */
    public void toFirstWindow() {
        driver.switchTo().window(firstWindow);
    }

    /** A window that the page has opened; it becomes the one that everything else is about. */
    public void toNewWindow() {
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (driver.getWindowHandles().size() < 2) {
            if (System.nanoTime() > end) {
                throw new AssertionError("no window was opened; " + log.complaints());
            }
            rest();
        }
        for (String window : driver.getWindowHandles()) {
            if (!window.equals(firstWindow)) {
                driver.switchTo().window(window);
            }
        }
    }

    /** Loads the page again. */
    public void reload() {
        driver.navigate().refresh();
    }

    /** Clicks the one element that the selector finds, in the middle of the window. */
    public void click(String selector) {
        WebElement element = find(selector);
        ask("arguments[0].scrollIntoView({block: 'center'})", element);
        element.click();
    }

    /** Presses keys, as they come from a keyboard, at whatever has the focus. */
    public void press(CharSequence... keys) {
        new Actions(driver).sendKeys(keys).perform();
    }

    /** Presses the tabulator so many times. */
    public void tab(int times) {
        for (int i = 0; i < times; i++) {
            press(Keys.TAB);
        }
    }

    /** Moves the mouse to a part of an element's width and height, from 0 to 1. */
    public void hover(String selector, double across, double down) {
        to(new Actions(driver), find(selector), across, down).perform();
    }

    /** Drags from one part of an element to another, at half its height. */
    public void drag(String selector, double from, double to) {
        WebElement element = find(selector);
        Actions actions = to(new Actions(driver), element, from, 0.5).clickAndHold();
        actions = to(actions, element, (from + to) / 2, 0.5);
        to(actions, element, to, 0.5).release().perform();
    }

    private static Actions to(Actions actions, WebElement element, double across, double down) {
        Dimension size = element.getSize();
        // Selenium counts from the middle.
        int x = (int) Math.round((across - 0.5) * (size.width - 2));
        int y = (int) Math.round((down - 0.5) * (size.height - 2));
        return actions.moveToElement(element, x, y);
    }

    // ---- How the page is looked at

    /** Size of the part of the window that shows the page, in pixels. */
    public void size(int width, int height) {
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", false));
    }

    /** "light" or "dark", as the system asks for it. */
    public void scheme(String name) {
        media("", Map.of("name", "prefers-color-scheme", "value", name));
    }

    /** As on paper. */
    public void print() {
        media("print", Map.of("name", "prefers-color-scheme", "value", "light"));
    }

    /**
     * How many sheets of paper the page takes; the page's own wish for a size of paper is not
     * heard.
     *
     * @param widthMillimetres of the paper
     * @param heightMillimetres of the paper
     */
    public long sheetsOfPaper(double widthMillimetres, double heightMillimetres) {
        Map<String, Object> printed =
                driver.executeCdpCommand(
                        "Page.printToPDF",
                        Map.of(
                                "paperWidth", widthMillimetres / MILLIMETRES_PER_INCH,
                                "paperHeight", heightMillimetres / MILLIMETRES_PER_INCH,
                                "printBackground", true));
        byte[] pdf = Base64.getDecoder().decode((String) printed.get("data"));
        // One dictionary a page, of this type; the tree above them is of the type Pages.
        Matcher page =
                Pattern.compile("/Type\\s*/Page\\b")
                        .matcher(new String(pdf, StandardCharsets.ISO_8859_1));
        return page.results().count();
    }

    private void media(String medium, Map<String, Object> feature) {
        driver.executeCdpCommand(
                "Emulation.setEmulatedMedia",
                Map.of("media", medium, "features", List.of(feature)));
    }

    /** Pulls the network plug, or puts it back in. */
    public void online(boolean isOnline) {
        driver.executeCdpCommand("Network.enable", Map.of());
        driver.executeCdpCommand(
                "Network.emulateNetworkConditions",
                Map.of(
                        "offline",
                        !isOnline,
                        "latency",
                        0,
                        "downloadThroughput",
                        -1,
                        "uploadThroughput",
                        -1));
    }

    /** Lets downloads land in a folder. */
    public void downloadTo(Path folder) {
        driver.executeCdpCommand(
                "Browser.setDownloadBehavior",
                Map.of("behavior", "allow", "downloadPath", folder.toAbsolutePath().toString()));
    }

    // ---- What there is to see

    /** The one element that the selector finds; waits for it. */
    public WebElement find(String selector) {
        until("return document.querySelector('" + selector.replace("'", "\\'") + "') !== null");
        return driver.findElement(By.cssSelector(selector));
    }

    /** What a script in the page answers. */
    public Object ask(String script, Object... arguments) {
        return driver.executeScript(script, arguments);
    }

    /** The same, for a number. */
    public double number(String script, Object... arguments) {
        if (ask(script, arguments) instanceof Number number) {
            return number.doubleValue();
        }
        throw new AssertionError("no number: " + script);
    }

    /** The same, for a text. */
    public String text(String script, Object... arguments) {
        return String.valueOf(ask(script, arguments));
    }

    /** Waits until a script answers true; fails after a while, with the script. */
    public void until(String script, Object... arguments) {
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (!Boolean.TRUE.equals(ask(script, arguments))) {
            if (System.nanoTime() > end) {
                throw new AssertionError("never true: " + script + "; " + log.complaints());
            }
            rest();
        }
    }

    private static void rest() {
        try {
            Thread.sleep(20);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError("interrupted while waiting for the page", e);
        }
    }

    /** What the page, its scripts and the browser complained about since it was opened. */
    public List<String> complaints() {
        return log.complaints();
    }

    /** Addresses that the page asked for since it was opened, besides itself. */
    public List<String> requests() {
        return log.requests();
    }

    /** Fails where the page is wider than the window, and names what sticks out. */
    public void assertNoSidewaysScroll(String when) {
        assertEquals(
                "none",
                text(TestResource.text("sideways.js")),
                "wider than the window, " + when + ": the page scrolls sideways");
    }

    /** Violations of accessibility that axe finds, one line each: rule, what it wants, where. */
    public List<String> violations() {
        if (!Boolean.TRUE.equals(ask("return typeof window.axe === 'object'"))) {
            ask(TestResource.text("/axe.min.js"));
        }
        Object found = driver.executeAsyncScript(TestResource.text("axe-run.js"));
        List<String> lines = new ArrayList<>();
        if (found instanceof List<?> list) {
            list.forEach(line -> lines.add(String.valueOf(line)));
        } else {
            throw new AssertionError("axe did not answer: " + found);
        }
        return lines;
    }

    /** Keeps a picture of the window in target/screenshots. */
    public Path picture(String name) {
        return picture(name, false);
    }

    /** Keeps a picture of the whole page, as long as it is. */
    public Path wholePicture(String name) {
        return picture(name, true);
    }

    /** The page as a browser prints it, on paper of so many inches. */
    public byte[] pdf(double widthInches, double heightInches) {
        Map<String, Object> printed =
                driver.executeCdpCommand(
                        "Page.printToPDF",
                        Map.of("paperWidth", widthInches, "paperHeight", heightInches));
        return Base64.getDecoder().decode(String.valueOf(printed.get("data")));
    }

    private Path picture(String name, boolean isWhole) {
        Map<String, Object> shot =
                driver.executeCdpCommand(
                        "Page.captureScreenshot",
                        Map.of("format", "png", "captureBeyondViewport", isWhole));
        try {
            Files.createDirectories(PICTURES);
            byte[] bytes = Base64.getDecoder().decode(String.valueOf(shot.get("data")));
            return Files.write(PICTURES.resolve(name + ".png"), bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
