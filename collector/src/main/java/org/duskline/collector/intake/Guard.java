package org.duskline.collector.intake;

import java.util.Optional;
import java.util.Set;
import javax.security.auth.Subject;
import org.apache.activemq.artemis.core.config.WildcardConfiguration;
import org.apache.activemq.artemis.core.protocol.mqtt.MQTTUtil;
import org.apache.activemq.artemis.core.security.CheckType;
import org.apache.activemq.artemis.core.security.Role;
import org.apache.activemq.artemis.spi.core.protocol.RemotingConnection;
import org.apache.activemq.artemis.spi.core.security.ActiveMQSecurityManager5;
import org.apache.activemq.artemis.spi.core.security.jaas.RolePrincipal;
import org.apache.activemq.artemis.spi.core.security.jaas.UserPrincipal;

/**
 * Lets into the embedded broker whoever has a password, and keeps each to its topics: a node publishes its readings,
 * status and acknowledgements and hears its settings, all under its own name; a listener hears and publishes nothing;
 * the program itself may do everything. A node's client name must be its own name, or begin with it and a hyphen, because
 * a client name that is in use takes its holder's place.
 */
final class Guard implements ActiveMQSecurityManager5 {
    private static final String QUALIFIED = "::";
    private static final String ITSELF = "PROGRAM";

    private final BrokerAccess access;
    private final BrokerAddress own;
    private final Topics topics;
    private final WildcardConfiguration wildcards = new WildcardConfiguration();

    /** @param own the name and password that the program itself comes with */
    Guard(BrokerAccess access, BrokerAddress own, Topics topics) {
        this.access = access;
        this.own = own;
        this.topics = topics;
    }

    @Override
    public Subject authenticate(String user, String password, RemotingConnection connection, String domain) {
        if (user == null || password == null) {
            return null;
        }
        if (own.user().equals(Optional.of(user)) && own.password().equals(Optional.of(password))) {
            return subject(user, ITSELF);
        }
        Optional<BrokerAccess.Use> use = access.use(user, password);
        boolean underItsName = connection == null || isOwn(user, connection.getClientID());
        return use.isPresent() && underItsName ? subject(user, use.get().name()) : null;
    }

    private static boolean isOwn(String user, String client) {
        return client == null || client.equals(user) || client.startsWith(user + "-");
    }

    private static Subject subject(String user, String use) {
        return new Subject(true, Set.of(new UserPrincipal(user), new RolePrincipal(use)), Set.of(), Set.of());
    }

    @Override
    public boolean authorize(Subject subject, Set<Role> roles, CheckType asked, String address) {
        if (subject == null) {
            return false;
        }
        String use =
                subject.getPrincipals(RolePrincipal.class).iterator().next().getName();
        return use.equals(ITSELF)
                || may(getUserFromSubject(subject), BrokerAccess.Use.valueOf(use), asked, topic(address));
    }

    private String topic(String address) {
        int end = address.indexOf(QUALIFIED);
        return MQTTUtil.getMqttTopicFromCoreAddress(end < 0 ? address : address.substring(0, end), wildcards);
    }

    private boolean may(String name, BrokerAccess.Use use, CheckType asked, String topic) {
        boolean node = use == BrokerAccess.Use.NODE;
        boolean speaks = node && isSpokenBy(name, topic);
        boolean hears = node ? topic.equals(topics.settings(name)) : topic.startsWith(topics.root() + "/");
        return switch (asked) {
            case SEND -> speaks;
            case CONSUME,
                    BROWSE,
                    CREATE_DURABLE_QUEUE,
                    DELETE_DURABLE_QUEUE,
                    CREATE_NON_DURABLE_QUEUE,
                    DELETE_NON_DURABLE_QUEUE -> hears;
            case CREATE_ADDRESS, DELETE_ADDRESS -> speaks || hears;
            case MANAGE, VIEW, EDIT -> false;
        };
    }

    private boolean isSpokenBy(String node, String topic) {
        return topic.equals(topics.readings(node))
                || topic.equals(topics.status(node))
                || topic.equals(topics.acknowledgement(node));
    }

    @Override
    public boolean validateUser(String user, String password) {
        return authenticate(user, password, null, null) != null;
    }

    @Override
    public boolean validateUserAndRole(String user, String password, Set<Role> roles, CheckType asked) {
        // Only managers of an older kind are asked this; without an address nothing can be allowed.
        return false;
    }

    @Override
    public String getUserFromSubject(Subject subject) {
        // The broker asks after a refusal, too, for its log.
        return subject == null
                ? null
                : subject.getPrincipals(UserPrincipal.class).iterator().next().getName();
    }
}
