package org.duskline.collector.intake;

import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.apache.activemq.artemis.api.core.TransportConfiguration;
import org.apache.activemq.artemis.core.config.Configuration;
import org.apache.activemq.artemis.core.config.impl.ConfigurationImpl;
import org.apache.activemq.artemis.core.remoting.impl.netty.NettyAcceptor;
import org.apache.activemq.artemis.core.remoting.impl.netty.NettyAcceptorFactory;
import org.apache.activemq.artemis.core.remoting.impl.netty.TransportConstants;
import org.apache.activemq.artemis.core.server.JournalType;
import org.apache.activemq.artemis.core.server.embedded.EmbeddedActiveMQ;
import org.apache.activemq.artemis.core.settings.impl.AddressSettings;

/**
 * A broker inside the program, for keepers who run none: MQTT 3.1.1 and 5, sessions, retained messages and wills kept in
 * a folder, so that what it has confirmed survives a kill.
 */
public final class EmbeddedBroker implements AutoCloseable {
    private static final String ACCEPTOR = "mqtt";
    private static final int JOURNAL_FILE_BYTES = 4 << 20;
    private static final long MEMORY_BYTES = 16L << 20;
    private static final long LEAST_FREE_BYTES = 64L << 20;
    private static final int WORKERS = 8;
    /** No node can have it: a node's name has no space. */
    private static final String OWN_NAME = "duskline itself";

    private final EmbeddedActiveMQ broker = new EmbeddedActiveMQ();
    private final Path folder;
    private final String host;
    private final Optional<BrokerAddress> own;

    /**
     * Starts a broker that everybody who reaches it may use: for this machine alone.
     *
     * @param folder where it keeps its messages; made if it is not there
     * @param host the address it listens on; {@code 127.0.0.1} is reachable from this machine alone
     * @param port the port; 0 takes any free one
     * @throws BrokerProblem with words for the keeper if it cannot start
     */
    public static EmbeddedBroker start(Path folder, String host, int port) {
        return new EmbeddedBroker(folder, host, port, Optional.empty(), new Topics("traps"));
    }

    /**
     * Starts a broker that lets in only whoever has a password, and keeps each to its own topics.
     *
     * @param folder where it keeps its messages; made if it is not there
     * @param host the address it listens on
     * @param port the port; 0 takes any free one
     * @param access who may come in
     * @param topics below which root the nodes speak
     * @throws BrokerProblem with words for the keeper if it cannot start
     */
    public static EmbeddedBroker guarded(Path folder, String host, int port, BrokerAccess access, Topics topics) {
        return new EmbeddedBroker(folder, host, port, Optional.of(access), topics);
    }

    private EmbeddedBroker(Path folder, String host, int port, Optional<BrokerAccess> access, Topics topics) {
        this.folder = folder;
        this.host = host;
        this.own = access.map(used -> BrokerAddress.of("mqtt://127.0.0.1")
                .withPassword(OWN_NAME, UUID.randomUUID().toString()));
        broker.setConfiguration(configuration(port).setSecurityEnabled(access.isPresent()));
        access.ifPresent(used -> broker.setSecurityManager(new Guard(used, own.orElseThrow(), topics)));
        try {
            broker.start();
        } catch (Exception e) {
            throw cannotStart(port, e);
        }
        if (!broker.getActiveMQServer().isActive()
                || acceptor() == null
                || !acceptor().isStarted()) {
            close();
            throw cannotStart(port, null);
        }
    }

    /** The port it listens on. */
    public int port() {
        return acceptor().getActualPort();
    }

    /** How the program itself reaches it: on this machine, and with all rights. */
    public BrokerAddress address() {
        BrokerAddress open = BrokerAddress.of("mqtt://" + (host.equals("0.0.0.0") ? "127.0.0.1" : host) + ":" + port());
        return own.map(with -> open.withPassword(
                        with.user().orElseThrow(), with.password().orElseThrow()))
                .orElse(open);
    }

    @Override
    public void close() {
        try {
            broker.stop();
        } catch (Exception e) {
            throw new BrokerProblem("The embedded broker did not stop cleanly: " + e.getMessage(), e);
        }
    }

    private NettyAcceptor acceptor() {
        return (NettyAcceptor) broker.getActiveMQServer().getRemotingService().getAcceptor(ACCEPTOR);
    }

    private BrokerProblem cannotStart(int port, Exception cause) {
        return new BrokerProblem(
                "The embedded broker cannot listen on " + host + ":" + port + " with its messages in " + folder
                        + (cause == null ? "" : " (" + cause.getMessage() + ")")
                        + ". Check that no other broker uses the port and no other Duskline the folder.",
                cause);
    }

    private Configuration configuration(int port) {
        Configuration configuration = new ConfigurationImpl()
                .setName("duskline")
                .setPersistenceEnabled(true)
                .setJournalType(JournalType.NIO)
                .setJournalDirectory(folder.resolve("journal").toString())
                .setBindingsDirectory(folder.resolve("bindings").toString())
                .setPagingDirectory(folder.resolve("paging").toString())
                .setLargeMessagesDirectory(folder.resolve("large").toString())
                .setJournalFileSize(JOURNAL_FILE_BYTES)
                .setJournalMinFiles(2)
                .setJournalLockAcquisitionTimeout(5_000)
                .setGlobalMaxSize(MEMORY_BYTES)
                .setMinDiskFree(LEAST_FREE_BYTES)
                .setMaxDiskUsage(-1)
                .setThreadPoolMaxSize(WORKERS)
                .setScheduledThreadPoolMaxSize(2)
                // The name of a client counts, which the broker's own memory of who came in does not hold.
                .setAuthenticationCacheSize(0)
                .setJMXManagementEnabled(false)
                .addAddressSetting("#", addresses());
        return configuration.addAcceptorConfiguration(listener(port));
    }

    /** A node's message is offered until it is taken; there is no count after which it counts as dead. */
    private static AddressSettings addresses() {
        return new AddressSettings()
                .setMaxDeliveryAttempts(-1)
                .setDefaultMaxConsumers(-1)
                .setAutoCreateDeadLetterResources(false)
                .setAutoCreateExpiryResources(false);
    }

    private TransportConfiguration listener(int port) {
        Map<String, Object> where = Map.of(
                TransportConstants.HOST_PROP_NAME,
                host,
                TransportConstants.PORT_PROP_NAME,
                port,
                TransportConstants.PROTOCOLS_PROP_NAME,
                "MQTT",
                TransportConstants.REMOTING_THREADS_PROPNAME,
                2,
                TransportConstants.USE_EPOLL_PROP_NAME,
                false,
                TransportConstants.USE_KQUEUE_PROP_NAME,
                false);
        return new TransportConfiguration(NettyAcceptorFactory.class.getName(), where, ACCEPTOR);
    }
}
