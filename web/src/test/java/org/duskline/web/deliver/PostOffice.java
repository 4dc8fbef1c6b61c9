package org.duskline.web.deliver;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import jakarta.mail.internet.MimeMessage;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** A real mail server of a test that can be shut and opened again at the same port, keeping what it took. */
final class PostOffice implements AutoCloseable {
    static final String NAME = "duskline";
    static final String PASSWORD = "correct horse battery";

    private final int port;
    private final List<MimeMessage> before = new ArrayList<>();
    private Optional<GreenMail> open = Optional.empty();

    PostOffice() throws IOException {
        try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            port = free.getLocalPort();
        }
        open();
    }

    void open() {
        if (open.isPresent()) {
            return;
        }
        GreenMail server = new GreenMail(new ServerSetup(port, "127.0.0.1", ServerSetup.PROTOCOL_SMTP));
        server.start();
        server.setUser("keeper@line.example", NAME, PASSWORD);
        open = Optional.of(server);
    }

    void shut() {
        open.ifPresent(server -> {
            before.addAll(Arrays.asList(server.getReceivedMessages()));
            server.stop();
        });
        open = Optional.empty();
    }

    List<MimeMessage> letters() {
        List<MimeMessage> all = new ArrayList<>(before);
        open.ifPresent(server -> all.addAll(Arrays.asList(server.getReceivedMessages())));
        return all;
    }

    MailSettings settings(String password) {
        return new MailSettings(
                "127.0.0.1",
                port,
                MailSettings.Security.NONE,
                Optional.of(new MailSettings.Login(NAME, password)),
                "duskline@line.example",
                Optional.empty());
    }

    int port() {
        return port;
    }

    @Override
    public void close() {
        shut();
    }
}
