package org.duskline.web.door;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.password4j.Argon2Function;
import com.password4j.types.Argon2;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.HexFormat;
import java.util.concurrent.atomic.AtomicReference;
import java.util.regex.Pattern;
import org.duskline.collector.store.Store;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DoorTest {
    private static final String PASSWORD = "elder hedge at seven";

    @TempDir
    Path folder;

    private final AtomicReference<Instant> now = new AtomicReference<>(Instant.parse("2026-05-01T08:00:00Z"));
    private Store store;
    private Door door;

    @BeforeEach
    void open() {
        store = Store.open(folder.resolve("duskline.db"));
        door = Door.open(store, now::get);
    }

    @AfterEach
    void close() {
        store.close();
    }

    /** Test values of the Argon2 reference implementation, file src/test.c: Argon2id, version 0x13, "password", "somesalt". */
    @ParameterizedTest
    @CsvSource({
        "256, 2, 1, 9dfeb910e80bad0311fee20f9c0e2b12c17987b4cac90c2ef54d5b3021c68bfe",
        "256, 2, 2, 6d093c501fd5999645e0ea3bf620d7b8be7fd2db59c20d9fff9539da2bf57037",
        "65536, 2, 1, 09316115d5cf24ed5a15a31a3ba326e5cf32edc24702987c02b6566f61913cf7"
    })
    void the_librarys_argon2id_is_the_reference_implementations(int kib, int passes, int lanes, String expected) {
        byte[] hash = Argon2Function.getInstance(kib, passes, lanes, 32, Argon2.ID)
                .hash("password".getBytes(StandardCharsets.UTF_8), "somesalt".getBytes(StandardCharsets.UTF_8))
                .getBytes();
        assertThat(HexFormat.of().formatHex(hash)).isEqualTo(expected);
    }

    /** The least that the OWASP Password Storage Cheat Sheet recommends for Argon2id: 19 MiB, two passes, one lane. */
    @Test
    void a_password_is_kept_as_argon2id_with_a_salt_of_its_own() {
        Passwords passwords = new Passwords();
        String one = passwords.hash(PASSWORD);
        String other = passwords.hash(PASSWORD);
        assertThat(one).startsWith("$argon2id$v=19$m=19456,t=2,p=1$").isNotEqualTo(other);
        assertThat(passwords.fits(PASSWORD, one)).isTrue();
        assertThat(passwords.fits(PASSWORD + " ", one)).isFalse();
    }

    @Test
    void there_is_one_owner() {
        assertThat(door.hasOwner()).isFalse();
        Account owner = door.makeOwner(" Ida  Fenwright ", PASSWORD);
        assertThat(owner.name()).isEqualTo("Ida Fenwright");
        assertThat(owner.role()).isEqualTo(Account.Role.OWNER);
        assertThatThrownBy(() -> door.makeOwner("Somebody", PASSWORD)).hasMessageContaining("Ida Fenwright");
    }

    @Test
    void the_owners_code_makes_the_account_once_and_an_earlier_code_does_not() {
        String early = door.ownersCode();
        String code = door.ownersCode();
        assertThat(code).matches("[A-Z0-9]{4}-[A-Z0-9]{4}-[A-Z0-9]{4}");
        assertThatThrownBy(() -> door.accept(early, "Ida", PASSWORD)).isInstanceOf(DoorRefusal.class);
        door.accept(code.toLowerCase().replace("-", " "), "Ida", PASSWORD);
        assertThat(door.hasOwner()).isTrue();
        assertThatThrownBy(() -> door.accept(code, "Oda", PASSWORD)).hasMessageContaining("it was used");
    }

    @Test
    void a_code_that_met_a_weak_password_still_holds() {
        String code = door.ownersCode();
        assertThatThrownBy(() -> door.accept(code, "Ida", "short")).hasMessageContaining("at least 10");
        assertThat(door.accept(code, "Ida", PASSWORD).name()).isEqualTo("Ida");
    }

    @Test
    void somebody_invited_gets_the_name_they_were_invited_under_and_a_week() {
        door.makeOwner("Ida", PASSWORD);
        String code = door.invite("Tobias");
        Account tobias = door.accept(code, "Ida", PASSWORD);
        assertThat(tobias.name()).isEqualTo("Tobias");
        assertThat(tobias.role()).isEqualTo(Account.Role.KEEPER);
        String late = door.invite("Wenna");
        now.updateAndGet(time -> time.plus(Duration.ofDays(7)));
        assertThatThrownBy(() -> door.accept(late, "", PASSWORD)).hasMessageContaining("older than a week");
        assertThatThrownBy(() -> door.invite("tobias")).hasMessageContaining("has an account already");
    }

    @Test
    void only_name_and_password_together_are_recognised() {
        door.makeOwner("Ida", PASSWORD);
        assertThat(door.recognise("ida", PASSWORD)).isPresent();
        assertThat(door.recognise("Ida", "elder hedge at eight")).isEmpty();
        assertThat(door.recognise("Oda", PASSWORD)).isEmpty();
        assertThat(door.recognise("Oda", "nobody has this password!")).isEmpty();
    }

    @Test
    void a_session_in_use_goes_on_and_an_idle_one_ends() {
        Account ida = door.makeOwner("Ida", PASSWORD);
        String phone = door.begin(ida);
        assertThat(door.lengthen(phone)).as("begun just now").isFalse();
        now.updateAndGet(time -> time.plus(Duration.ofDays(50)));
        assertThat(door.lengthen(phone)).isTrue();
        now.updateAndGet(time -> time.plus(Duration.ofDays(59)));
        assertThat(door.holder(phone)).contains(ida);
        now.updateAndGet(time -> time.plus(Duration.ofDays(2)));
        assertThat(door.holder(phone)).isEmpty();
    }

    @Test
    void a_new_password_signs_out_everywhere() {
        Account ida = door.makeOwner("Ida", PASSWORD);
        String phone = door.begin(ida);
        door.newPassword("Ida", "hazel hedge at eight");
        assertThat(door.holder(phone)).isEmpty();
        assertThat(door.recognise("Ida", PASSWORD)).isEmpty();
        assertThat(door.recognise("Ida", "hazel hedge at eight")).isPresent();
    }

    @Test
    void a_forms_token_holds_for_its_browser_alone_and_after_a_restart() {
        String browser = door.stranger();
        String token = door.formToken(browser);
        assertThat(door.fits(browser, token)).isTrue();
        assertThat(door.fits(door.stranger(), token)).isFalse();
        assertThat(door.fits(browser, "")).isFalse();
        assertThat(Door.open(store, now::get).fits(browser, token)).isTrue();
    }

    @Test
    void nothing_that_lets_somebody_in_stands_in_the_database() throws Exception {
        String code = door.ownersCode();
        Account ida = door.makeOwner("Ida", PASSWORD);
        String session = door.begin(ida);
        store.close();
        for (Path file : Files.list(folder).toList()) {
            String bytes = Files.readString(file, StandardCharsets.ISO_8859_1);
            assertThat(bytes).doesNotContain(PASSWORD).doesNotContain(session);
            assertThat(Pattern.compile(Secrets.tidy(code)).matcher(bytes).find())
                    .isFalse();
        }
    }
}
