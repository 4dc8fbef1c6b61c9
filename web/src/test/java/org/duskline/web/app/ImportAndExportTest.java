package org.duskline.web.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ImportAndExportTest {
    private static final String HEADING =
            "time (UTC),received (UTC),node,in (count),out (count),weight (kg),load (count),"
                    + "weight-sd (kg),cell (Cel),box (Cel),rh (%RH),battery (V),boot (count),seq (count),marks";

    @TempDir
    Path folder;

    @Test
    void a_recorded_season_is_counted_up_and_comes_out_again_as_a_table() throws Exception {
        Session session = imported(RecordedSeason.plain(folder));
        assertThat(session.exit()).isEqualTo(Exit.DONE);
        assertThat(session.out()).isEmpty();
        assertThat(session.err())
                .contains(
                        "5 messages, 2 samples stored, 1 repeats.",
                        "1 messages could not be decoded",
                        "1 lines were no messages",
                        "season.jsonl:6")
                .doesNotContain("\tat ");

        Session export = export("--trap", "Mill Race");
        assertThat(export.exit()).isEqualTo(Exit.DONE);
        assertThat(export.out()).isEqualToNormalizingNewlines(HEADING + """

                        2026-05-12T10:00:00Z,2026-05-12T10:00:00.250Z,n07,1204,,8.125,,,21.5,,,,,,
                        2026-05-12T10:01:00Z,2026-05-12T10:01:00Z,n07,1206,,8.13,,,,,,,,,
                        """);
    }

    @Test
    void a_season_imported_twice_is_stored_once() throws Exception {
        imported(RecordedSeason.plain(folder));
        Session again = imported(RecordedSeason.compressed(folder));
        assertThat(again.exit()).isEqualTo(Exit.DONE);
        assertThat(again.err()).contains("0 samples stored, 3 repeats.");
        assertThat(export("--trap", "Mill Race").out().lines()).hasSize(3);
    }

    @Test
    void a_stretch_is_cut_out_by_the_clock_at_the_trap() throws Exception {
        imported(RecordedSeason.plain(folder));
        assertThat(export("--trap", "Mill Race", "--from", "2026-05-12T12:01").out())
                .doesNotContain("1204")
                .contains("1206");
        assertThat(export("--trap", "Mill Race", "--to", "2026-05-12T10:01:00Z").out())
                .contains("1204")
                .doesNotContain("1206");
        assertThat(export("--trap", "Mill Race", "--from", "2026-05-13").out().lines())
                .hasSize(1);

        Session wrong = export("--trap", "Mill Race", "--from", "yesterday");
        assertThat(wrong.exit()).isEqualTo(Exit.ASKED_WRONGLY);
        assertThat(wrong.err()).contains("\"yesterday\" is no moment", "2026-05-12");
    }

    @Test
    void a_mistyped_trap_gets_the_nearest_one() throws Exception {
        imported(RecordedSeason.plain(folder));
        Session session = export("--trap", "Mil Race");
        assertThat(session.exit()).isEqualTo(Exit.ASKED_WRONGLY);
        assertThat(session.err()).contains("The line has no trap named \"Mil Race\"", "Did you mean \"Mill Race\"?");
        assertThat(session.out()).isEmpty();
    }

    @Test
    void findings_of_a_quiet_trap_are_no_lines_at_all() throws Exception {
        imported(RecordedSeason.plain(folder));
        Session session = Session.of("findings", "--database", database());
        assertThat(session.exit()).isEqualTo(Exit.DONE);
        assertThat(session.out()).isEmpty();
        assertThat(session.err()).isEmpty();
    }

    @Test
    void what_is_not_there_is_told_without_a_stack_trace() throws Exception {
        Session noDatabase =
                Session.of("findings", "--database", folder.resolve("none.db").toString());
        assertThat(noDatabase.exit()).isEqualTo(Exit.FAILED);
        assertThat(noDatabase.err())
                .contains("There is no database", "duskline import")
                .doesNotContain("\tat ");

        Session noStream = Session.of(
                "import", "--database", database(), folder.resolve("none.jsonl").toString());
        assertThat(noStream.exit()).isEqualTo(Exit.FAILED);
        assertThat(noStream.err()).contains("none.jsonl", "cannot be read").doesNotContain("\tat ");

        Session noLine = Session.of(
                "import",
                "--database",
                database(),
                "--line",
                folder.resolve("none.geojson").toString(),
                RecordedSeason.plain(folder).toString());
        assertThat(noLine.exit()).isEqualTo(Exit.FAILED);
        assertThat(noLine.err()).contains("none.geojson").doesNotContain("\tat ");
    }

    private Session imported(Path stream) throws Exception {
        return Session.of(
                "import",
                "--database",
                database(),
                "--line",
                RecordedSeason.line(folder).toString(),
                stream.toString());
    }

    private Session export(String... options) {
        String[] arguments = new String[options.length + 3];
        arguments[0] = "export";
        arguments[1] = "--database";
        arguments[2] = database();
        System.arraycopy(options, 0, arguments, 3, options.length);
        return Session.of(arguments);
    }

    private String database() {
        return folder.resolve("duskline.db").toString();
    }
}
