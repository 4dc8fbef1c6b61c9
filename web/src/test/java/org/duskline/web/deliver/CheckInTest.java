package org.duskline.web.deliver;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.net.httpserver.HttpServer;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class CheckInTest {
    private static final Instant NOW = Instant.parse("2026-05-12T13:04:00Z");

    private final List<String> heard = new CopyOnWriteArrayList<>();
    private volatile int status = 204;
    private volatile boolean well = true;
    private HttpServer listener;
    private CheckIn checkIn;

    @BeforeEach
    void somebody_listens_outside() throws Exception {
        listener = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        listener.createContext("/", exchange -> {
            heard.add(exchange.getRequestMethod() + " "
                    + new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8));
            exchange.sendResponseHeaders(status, -1);
            exchange.close();
        });
        listener.start();
        URI address = URI.create("http://127.0.0.1:" + listener.getAddress().getPort() + "/well");
        checkIn = new CheckIn(address, () -> well, () -> NOW);
    }

    @AfterEach
    void close() {
        checkIn.close();
        listener.stop(0);
    }

    @Test
    void all_is_well_is_said_with_the_time() {
        assertThat(checkIn.once()).isTrue();
        assertThat(heard).containsExactly("POST {\"alive\":\"2026-05-12T13:04:00Z\"}");
    }

    @Test
    void when_the_broker_is_not_heard_nothing_is_said_so_that_the_listener_raises_the_alarm() {
        well = false;
        assertThat(checkIn.once()).isFalse();
        assertThat(heard).isEmpty();
    }

    @Test
    void a_listener_that_refuses_or_is_gone_is_not_taken_for_having_heard_and_is_told_again_later() {
        status = 404;
        assertThat(checkIn.once()).isFalse();
        listener.stop(0);
        assertThat(checkIn.once()).isFalse();
    }
}
