package org.duskline.web.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PasswordCommandTest {
    @TempDir
    Path folder;

    @Test
    void a_node_gets_a_password_that_is_printed_once_and_kept_as_a_hash() throws Exception {
        Path settings = settings("broker: {passwords: nodes}\n");
        Session session = Session.of("password", "n07", "--config", settings.toString());
        assertThat(session.exit()).isEqualTo(Exit.DONE);
        String password = session.out().strip();
        assertThat(password).matches("[a-z2-9]{7}-[a-z2-9]{7}-[a-z2-9]{7}");
        assertThat(session.err()).contains("under traps/n07/ alone");
        assertThat(Files.readString(folder.resolve("nodes")))
                .contains("n07 node ")
                .doesNotContain(password);

        Session again = Session.of("password", "n07", "--remove", "--config", settings.toString());
        assertThat(again.err()).contains("n07 is let in no longer");
        Session unknown = Session.of("password", "n08", "--remove", "--config", settings.toString());
        assertThat(unknown.exit()).isEqualTo(Exit.FAILED);
        assertThat(unknown.err()).contains("No n08 stands in", "It knows nobody");
    }

    @Test
    void a_name_that_no_node_can_have_and_settings_without_a_file_are_mistakes_with_what_to_do() throws Exception {
        Path settings = settings("broker: {passwords: nodes}\n");
        Session wrong = Session.of("password", "n 7", "--config", settings.toString());
        assertThat(wrong.exit()).isEqualTo(Exit.ASKED_WRONGLY);
        assertThat(wrong.err()).contains("1 to 32 of");
        Path without = Files.writeString(folder.resolve("other.yaml"), "mqtt: {root: traps}\n");
        Session nowhere = Session.of("password", "n07", "--config", without.toString());
        assertThat(nowhere.exit()).isEqualTo(Exit.ASKED_WRONGLY);
        assertThat(nowhere.err()).contains("Set broker.passwords");
    }

    private Path settings(String text) throws Exception {
        return Files.writeString(folder.resolve("duskline.yaml"), text);
    }
}
