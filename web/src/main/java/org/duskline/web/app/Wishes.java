package org.duskline.web.app;

import java.net.URI;
import java.nio.file.Path;
import java.util.Optional;
import org.duskline.collector.intake.BrokerAddress;
import org.duskline.collector.intake.Topics;
import org.duskline.web.deliver.MailSettings;
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
 * @param openHouse whether nobody has to sign in as long as nobody has an account: for the demo alone
 * @param outside how the world outside is reached
 */
record Wishes(
        Path database,
        Optional<Path> line,
        Optional<BrokerAddress> broker,
        OwnBroker ownBroker,
        String clientName,
        Topics topics,
        String pagesHost,
        int pagesPort,
        boolean openHouse,
        Outside outside) {

    /**
     * How the world outside is reached.
     *
     * @param pagesAddress where people's browsers find the pages
     * @param mail the mail server
     * @param checkIn where to say that all is well
     */
    record Outside(Optional<URI> pagesAddress, Optional<MailSettings> mail, Optional<URI> checkIn) {
        /** No mail server, nobody to check in with, no address for links. */
        static final Outside NONE = new Outside(Optional.empty(), Optional.empty(), Optional.empty());
    }

    /**
     * How to run a broker of our own.
     *
     * @param folder where it keeps its messages
     * @param host where it listens
     * @param port its port; 0 for any free one
     * @param passwords who may come in; everybody where none are named
     */
    record OwnBroker(Path folder, String host, int port, Optional<Path> passwords) {
        /** One that everybody on this machine may use. */
        OwnBroker(Path folder, String host, int port) {
            this(folder, host, port, Optional.empty());
        }
    }

    static Wishes of(Settings settings) {
        return new Wishes(
                settings.database(),
                settings.line(),
                settings.broker(),
                new OwnBroker(
                        settings.brokerFolder(),
                        settings.brokerHost(),
                        settings.brokerPort(),
                        settings.brokerPasswords()),
                settings.clientName(),
                settings.topics(),
                settings.pagesHost(),
                settings.pagesPort(),
                false,
                new Outside(settings.pagesAddress(), settings.mail(), settings.checkIn()));
    }
}
