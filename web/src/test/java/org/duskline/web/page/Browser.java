package org.duskline.web.page;

import com.microsoft.playwright.Browser.NewContextOptions;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.options.ServiceWorkerPolicy;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.duskline.collector.testing.Needs;
import org.junit.jupiter.api.extension.AfterAllCallback;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/**
 * The machine's own Chromium, one for all tests of a class; registered with {@code @RegisterExtension} in a static field.
 * The class is skipped where there is none, unless every test must run.
 */
final class Browser implements BeforeAllCallback, AfterAllCallback {
    private Playwright playwright;
    private com.microsoft.playwright.Browser browser;

    @Override
    public void beforeAll(ExtensionContext tests) {
        start(Needs.program("chromium"));
    }

    private void start(Path chromium) {
        playwright = Playwright.create(
                new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
        browser = playwright
                .chromium()
                .launch(new BrowserType.LaunchOptions()
                        .setExecutablePath(chromium)
                        .setArgs(List.of(
                                "--no-sandbox",
                                "--disable-gpu",
                                "--disable-background-networking",
                                "--disable-component-update",
                                "--disable-sync",
                                "--no-first-run")));
    }

    /** A window of its own, with nothing remembered. */
    BrowserContext window(NewContextOptions options) {
        return browser.newContext(options);
    }

    /** A phone that keeps pages for when there is no reception. */
    BrowserContext phone() {
        return window(new NewContextOptions()
                .setViewportSize(390, 844)
                .setHasTouch(true)
                .setServiceWorkers(ServiceWorkerPolicy.ALLOW));
    }

    @Override
    public void afterAll(ExtensionContext tests) {
        if (playwright != null) {
            browser.close();
            playwright.close();
        }
    }
}
