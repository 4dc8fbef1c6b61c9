package org.duskline.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser.NewContextOptions;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.duskline.collector.testing.Needs;
import org.duskline.web.page.InventedLine.Mood;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A long night's sheet on paper, as a browser prints it and poppler reads it. */
class PrintedSheetTest {
    private static final Pattern PAGES = Pattern.compile("(?m)^Pages:\\s+(\\d+)$");

    @TempDir
    Path folder;

    @RegisterExtension
    static final Browser BROWSER = new Browser();

    private BrowserContext context;
    private Pages pages;
    private Page page;

    @BeforeEach
    void open() {
        pages = InventedParts.pages(new InventedLine(Mood.OVERWHELMED));
        context = BROWSER.window(
                new NewContextOptions().setColorScheme(ColorScheme.DARK).setViewportSize(390, 844));
        page = context.newPage();
        page.navigate("http://127.0.0.1:" + pages.start("127.0.0.1", 0) + "/");
    }

    @AfterEach
    void close() {
        if (context != null) {
            context.close();
            pages.stop();
        }
    }

    @ParameterizedTest
    @CsvSource({"A4", "Letter"})
    void fourteen_traps_with_hour_weight_and_place_stand_on_one_page(String paper) throws Exception {
        Path sheet = printed(paper);
        Matcher count = PAGES.matcher(read("pdfinfo", sheet.toString()));
        assertThat(count.find()).isTrue();
        assertThat(count.group(1)).isEqualTo("1");

        String text = read("pdftotext", "-layout", sheet.toString(), "-");
        assertThat(text).contains("14 traps to close tonight", "Closed at", "To lift", "Local law");
        assertThat(text.split("close from", -1)).as("each trap has its hour").hasSize(InventedEvening.MANY + 1);
        assertThat(text.split("46\\.9\\d+° N", -1)).as("and its place").hasSize(InventedEvening.MANY + 1);
    }

    @Test
    void what_only_a_screen_can_do_is_not_printed() throws Exception {
        assertThat(read("pdftotext", printed("A4").toString(), "-"))
                .doesNotContain("Way there", "Its story", "As plain text", "Answer");
    }

    private Path printed(String paper) {
        Path sheet = folder.resolve("sheet.pdf");
        page.pdf(new Page.PdfOptions().setFormat(paper).setPrintBackground(true).setPath(sheet));
        return sheet;
    }

    private String read(String program, String... arguments) throws Exception {
        String[] command = new String[arguments.length + 1];
        command[0] = Needs.program(program).toString();
        System.arraycopy(arguments, 0, command, 1, arguments.length);
        Path said = Files.createTempFile(folder, "said", ".txt");
        Process process =
                new ProcessBuilder(command).redirectOutput(said.toFile()).start();
        assertThat(process.waitFor()).isZero();
        return Files.readString(said, StandardCharsets.UTF_8);
    }
}
