package org.duskline.collector.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.DataInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.Random;
import org.duskline.collector.testing.Await;
import org.junit.jupiter.api.Test;

/** Answers that a broker of good manners rarely gives, byte for byte from MQTT 3.1.1, sections 3.2 and 3.9. */
class RefusingBrokerTest {
    private static final byte[] WELCOME = {0x20, 2, 0, 0};
    private static final byte[] CLIENT_NAME_REFUSED = {0x20, 2, 0, 2};
    private static final byte[] SERVER_UNAVAILABLE = {0x20, 2, 0, 3};

    @Test
    void a_broker_that_denies_the_topics_is_reported() throws Exception {
        assertThat(troubleAt(WELCOME)).contains("does not let us listen").contains("mqtt.user");
    }

    @Test
    void a_broker_that_dislikes_our_name_is_reported() throws Exception {
        assertThat(troubleAt(CLIENT_NAME_REFUSED)).contains("mqtt.client");
    }

    @Test
    void a_broker_that_is_busy_is_reported() throws Exception {
        assertThat(troubleAt(SERVER_UNAVAILABLE)).contains("cannot serve anybody just now");
    }

    private static String troubleAt(byte[] answerToConnect) throws Exception {
        try (ServerSocket door = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            Thread porter = new Thread(() -> answer(door, answerToConnect));
            porter.setDaemon(true);
            porter.start();
            try (BrokerSource source = new BrokerSource(
                    BrokerAddress.of("mqtt://127.0.0.1:" + door.getLocalPort()),
                    "duskline",
                    new Topics("traps"),
                    new Notebook(),
                    () -> BrokerSourceContract.NOON,
                    new Random(5))) {
                source.start();
                Await.until("trouble is noted", () -> source.state().trouble().isPresent());
                return source.state().trouble().orElseThrow();
            }
        }
    }

    private static void answer(ServerSocket door, byte[] answerToConnect) {
        try (Socket guest = door.accept()) {
            DataInputStream in = new DataInputStream(guest.getInputStream());
            OutputStream out = guest.getOutputStream();
            readPacket(in);
            out.write(answerToConnect);
            byte[] subscribe = readPacket(in);
            out.write(new byte[] {(byte) 0x90, 4, subscribe[0], subscribe[1], (byte) 0x80, (byte) 0x80});
            while (in.read() >= 0) {
                // until the guest goes
            }
        } catch (IOException e) {
            // the guest has gone
        }
    }

    /** The part of a packet after its length, which is below 128 here. */
    private static byte[] readPacket(DataInputStream in) throws IOException {
        in.readUnsignedByte();
        byte[] rest = new byte[in.readUnsignedByte()];
        in.readFully(rest);
        return rest;
    }
}
