package org.duskline.web.app;

import java.nio.file.Path;
import java.util.Optional;
import org.duskline.collector.intake.BrokerAddress;
import org.duskline.collector.intake.Topics;
import org.duskline.web.settings.Settings;

/**
 * How a service is wanted.
 *
 * @param database the one file
 * @param line the keeper's traps, to be entered at the start
 * @param broker the broker to listen at; none for one of our own
 * @param ownBroker how to run our own, where it is wanted
 * @param clientName our name at the broker
 * @param topics what to listen to
 * @param pagesHost where the pages listen
 * @param pagesPort their port; 0 for any free one
 */
record Wishes(
        Path database,
        Optional<Path> line,
        Optional<BrokerAddress> broker,
        OwnBroker ownBroker,
        String clientName,
        Topics topics,
        String pagesHost,
        int pagesPort) {

    /**
     * How to run a broker of our own.
     *
     * @param folder where it keeps its messages
     * @param host where it listens
     * @param port its port; 0 for any free one
     */
    record OwnBroker(Path folder, String host, int port) {}

    static Wishes of(Settings settings) {
        return new Wishes(
                settings.database(),
                settings.line(),
                settings.broker(),
                new OwnBroker(settings.brokerFolder(), settings.brokerHost(), settings.brokerPort()),
                settings.clientName(),
                settings.topics(),
                settings.pagesHost(),
                settings.pagesPort());
    }
}
