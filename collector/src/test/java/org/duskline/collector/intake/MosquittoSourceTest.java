package org.duskline.collector.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Random;
import org.duskline.collector.testing.Await;
import org.duskline.collector.testing.Mosquitto;
import org.duskline.collector.testing.Needs;
import org.duskline.collector.testing.SelfMadeAuthority;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class MosquittoSourceTest extends BrokerSourceContract {
    @BeforeEach
    void needsMosquitto() {
        Needs.program("mosquitto");
    }

    @Override
    AutoCloseable startBroker(Path kept, int onPort) throws Exception {
        return Mosquitto.openToAll(kept, onPort).start();
    }

    @Test
    void a_broker_with_a_password_lets_in_who_knows_it_and_says_so_to_who_does_not() throws Exception {
        Path passwords = folder.resolve("passwords");
        new ProcessBuilder(
                        Needs.program("mosquitto_passwd").toString(),
                        "-b",
                        "-c",
                        passwords.toString(),
                        "keeper",
                        "elderflower")
                .start()
                .waitFor();
        try (Mosquitto guarded = new Mosquitto(
                        folder.resolve("guarded"),
                        Mosquitto.freePort(),
                        "allow_anonymous false",
                        "password_file " + passwords)
                .start()) {
            BrokerAddress address = BrokerAddress.of(guarded.address());
            try (BrokerSource stranger = listen(address.withPassword("keeper", "wrong"), new Notebook())) {
                Await.until("refused", () -> stranger.state().trouble().isPresent());
                assertThat(stranger.state().trouble().orElseThrow())
                        .contains("wants another user name or password")
                        .doesNotContain("wrong");
            }
            Notebook notebook = new Notebook();
            try (BrokerSource known = listen(address.withPassword("keeper", "elderflower"), notebook)) {
                Await.until("connected", () -> known.state().connected());
                MqttConnectOptions options = new MqttConnectOptions();
                options.setUserName("keeper");
                options.setPassword("elderflower".toCharArray());
                TestNode.publish(guarded.address(), options, false, "traps/n01/readings", "let in");
                Await.until("it came", () -> notebook.texts().contains("let in"));
            }
        }
    }

    @Test
    void an_encrypted_broker_is_trusted_by_its_own_authority_alone() throws Exception {
        SelfMadeAuthority authority = SelfMadeAuthority.in(folder.resolve("authority"), "127.0.0.1");
        SelfMadeAuthority stranger = SelfMadeAuthority.in(folder.resolve("stranger"), "127.0.0.1");
        try (Mosquitto encrypted = encryptedBroker(authority)) {
            BrokerAddress address = BrokerAddress.of("mqtts://127.0.0.1:" + encrypted.port());
            try (BrokerSource source = listen(address.withAuthority(stranger.certificate()), new Notebook())) {
                Await.until("refused", () -> source.state().trouble().isPresent());
                assertThat(source.state().trouble().orElseThrow()).contains("nobody here vouches for");
            }
            Notebook notebook = new Notebook();
            try (BrokerSource source = listen(address.withAuthority(authority.certificate()), notebook)) {
                Await.until("connected", () -> source.state().connected());
                MqttConnectOptions options = new MqttConnectOptions();
                options.setSocketFactory(Authority.trusting(authority.certificate()));
                TestNode.publish(address.toString(), options, false, "traps/n01/readings", "under seal");
                Await.until("it came", () -> notebook.texts().contains("under seal"));
            }
        }
    }

    @Test
    void a_certificate_made_for_another_name_is_refused() throws Exception {
        SelfMadeAuthority authority = SelfMadeAuthority.in(folder.resolve("authority"), "192.0.2.7");
        try (Mosquitto encrypted = encryptedBroker(authority)) {
            BrokerAddress address = BrokerAddress.of("mqtts://127.0.0.1:" + encrypted.port());
            try (BrokerSource source = listen(address.withAuthority(authority.certificate()), new Notebook())) {
                Await.until("refused", () -> source.state().trouble().isPresent());
                assertThat(source.state().trouble().orElseThrow()).contains("was made for another name");
                assertThat(source.state().connected()).isFalse();
            }
        }
    }

    private Mosquitto encryptedBroker(SelfMadeAuthority authority) throws Exception {
        return new Mosquitto(
                        folder.resolve("encrypted"),
                        Mosquitto.freePort(),
                        "allow_anonymous true",
                        "certfile " + authority.serverCertificate(),
                        "keyfile " + authority.serverKey())
                .start();
    }

    private static BrokerSource listen(BrokerAddress address, MessageSink sink) {
        BrokerSource source =
                new BrokerSource(address, "duskline", new Topics("traps"), sink, () -> NOON, new Random(7));
        source.start();
        return source;
    }
}
