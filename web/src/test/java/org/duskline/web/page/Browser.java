package org.duskline.web.page;

import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Playwright;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Assumptions;

/** The machine's own Chromium, driven for a test. */
final class Browser implements AutoCloseable {
    private static final Path CHROMIUM = Path.of("/usr/bin/chromium");

    private final Playwright playwright;
    private final com.microsoft.playwright.Browser browser;

    private Browser() {
        playwright = Playwright.create(
                new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
        browser = playwright
                .chromium()
                .launch(new BrowserType.LaunchOptions()
                        .setExecutablePath(CHROMIUM)
                        .setArgs(List.of(
                                "--no-sandbox",
                                "--disable-gpu",
                                "--disable-background-networking",
                                "--disable-component-update",
                                "--disable-sync",
                                "--no-first-run")));
    }

    /** Starts it, or skips the test where there is none, unless every test must run. */
    static Browser start() {
        boolean there = Files.isExecutable(CHROMIUM);
        if ("1".equals(System.getenv("DUSKLINE_REQUIRE_ALL_TESTS"))) {
            Assertions.assertTrue(there, "Chromium is needed at " + CHROMIUM + "; install the package chromium.");
        }
        Assumptions.assumeTrue(there, "No Chromium at " + CHROMIUM + ": the pages are not tested in a browser.");
        return new Browser();
    }

    com.microsoft.playwright.Browser browser() {
        return browser;
    }

    @Override
    public void close() {
        browser.close();
        playwright.close();
    }
}
