package org.duskline.web.app;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.time.Duration;
import java.time.InstantSource;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.duskline.collector.intake.BrokerAddress;
import org.duskline.collector.intake.BrokerSource;
import org.duskline.collector.intake.LinkState;
import org.duskline.web.settings.Settings;

/** The doctor's look at broker and ports. */
final class NetworkChecks {
    private static final Duration PATIENCE = Duration.ofSeconds(12);
    private static final long LOOK_AGAIN_MILLIS = 100;

    private final Settings settings;
    private final InstantSource clock;

    NetworkChecks(Settings settings, InstantSource clock) {
        this.settings = settings;
        this.clock = clock;
    }

    Checked broker() throws InterruptedException {
        if (settings.broker().isPresent()) {
            return ownBroker(settings.broker().get());
        }
        String where = settings.brokerHost() + ":" + settings.brokerPort();
        return free(settings.brokerHost(), settings.brokerPort())
                ? Checked.fine("broker", "Duskline runs its own at " + where + "; the port is free")
                : Checked.note(
                        "broker",
                        "port " + where + " is in use: by a running Duskline, or by another broker; then name that one"
                                + " (mqtt.url) or take another port (broker.port)");
    }

    /** Connects as a listener that the broker forgets again, so that a running Duskline is not disturbed. */
    private Checked ownBroker(BrokerAddress broker) throws InterruptedException {
        String name = settings.clientName() + "-doctor-" + Long.toString(clock.millis(), 36);
        try (BrokerSource source =
                BrokerSource.passing(broker, name, settings.topics(), batch -> {}, clock, new Random())) {
            source.start();
            long end = System.nanoTime() + PATIENCE.toNanos();
            LinkState state = source.state();
            while (!state.connected() && state.trouble().isEmpty() && System.nanoTime() - end < 0) {
                TimeUnit.MILLISECONDS.sleep(LOOK_AGAIN_MILLIS);
                state = source.state();
            }
            if (state.connected()) {
                return Checked.fine(
                        "broker",
                        broker + " lets us in and listen below "
                                + settings.topics().root() + "/");
            }
            return Checked.wrong("broker", state.trouble().orElse(broker + " does not answer in time"));
        } catch (IllegalArgumentException e) {
            return Checked.wrong("broker", e.getMessage());
        }
    }

    Checked pages() {
        String where = settings.pagesHost() + ":" + settings.pagesPort();
        return free(settings.pagesHost(), settings.pagesPort())
                ? Checked.fine("pages", "http://" + where + " is free for the pages")
                : Checked.note(
                        "pages",
                        "port " + where + " is in use: by a running Duskline, or by another program; then take another"
                                + " port (pages.port)");
    }

    private static boolean free(String host, int port) {
        try (ServerSocket socket = new ServerSocket(port, 1, InetAddress.getByName(host))) {
            return socket.isBound();
        } catch (IOException inUse) {
            return false;
        }
    }
}
