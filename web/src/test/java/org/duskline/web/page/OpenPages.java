package org.duskline.web.page;

import com.microsoft.playwright.Browser.NewContextOptions;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.util.ArrayList;
import java.util.List;
import org.duskline.analyzer.finding.Finding;
import org.duskline.web.page.InventedLine.Mood;

/** The invented line's pages, open in a window of a real browser, and what the browser complained about. */
final class OpenPages implements AutoCloseable {
    private final List<String> complaints = new ArrayList<>();
    private final InventedLine line;
    private final Pages pages;
    private final BrowserContext window;
    private final Page page;
    private final String root;

    /**
     * Serves them and opens a window.
     *
     * @param width of the window; below 500 it is a phone's, which is touched
     */
    OpenPages(Browser browser, Mood mood, int width, int height, ColorScheme light) {
        line = new InventedLine(mood);
        pages = InventedParts.pages(line);
        root = "http://127.0.0.1:" + pages.start("127.0.0.1", 0);
        window = browser.window(new NewContextOptions()
                .setViewportSize(width, height)
                .setHasTouch(width < 500)
                .setColorScheme(light));
        page = window.newPage();
        page.onPageError(complaints::add);
        page.onConsoleMessage(message -> {
            if (message.type().equals("error") && !message.text().contains("404")) {
                complaints.add(message.text());
            }
        });
    }

    /** Goes to a page and waits until its curve, if it has one, is drawn. */
    void visit(String path) {
        page.navigate(root + path);
        if (page.locator("#curve").count() > 0) {
            page.waitForSelector("#curve[data-drawn][data-busy=false]");
        }
    }

    /** A finding is made and told to every open page. */
    void finds(Finding finding) {
        line.find(finding);
        pages.announce(new News.Found(finding));
    }

    Page page() {
        return page;
    }

    String root() {
        return root;
    }

    List<String> complaints() {
        return complaints;
    }

    @Override
    public void close() {
        window.close();
        pages.stop();
    }
}
