package org.duskline.web.settings;

import java.util.Locale;
import java.util.Optional;

/** Every setting there is, in the order of the example file. */
public enum Key {
    DATABASE(
            "database",
            Form.PATH,
            "duskline.db",
            "",
            "The file that everything is kept in: samples, findings, alerts. Made at the first start."),
    LINE(
            "line",
            Form.PATH,
            "",
            "line.geojson",
            "GeoJSON file with your traps and the nodes fitted in them. Read at every start; nodes that it does not"
                    + " name are stored all the same."),
    MQTT_URL(
            "mqtt.url",
            Form.BROKER,
            "",
            "mqtts://broker.example:8883",
            "Your own broker. Without it Duskline runs one itself, see broker below."),
    MQTT_USER("mqtt.user", Form.TEXT, "", "duskline", "User name at that broker."),
    MQTT_PASSWORD(
            "mqtt.password",
            Form.SECRET,
            "",
            "elderflower",
            "Password at that broker. Better given in the environment than in a file that others can read."),
    MQTT_AUTHORITY(
            "mqtt.authority",
            Form.PATH,
            "",
            "authority.pem",
            "PEM file with the certificates to trust for an encrypted connection (mqtts). Without it, the"
                    + " authorities that this machine trusts."),
    MQTT_CLIENT(
            "mqtt.client",
            Form.TEXT,
            "duskline",
            "",
            "Our name at the broker, under which it keeps what comes while Duskline is down. Two programs must not"
                    + " share one."),
    MQTT_ROOT("mqtt.root", Form.TEXT, "traps", "", "What all topics begin with: traps/NODE/readings."),
    BROKER_HOST(
            "broker.host",
            Form.HOST,
            "127.0.0.1",
            "",
            "Where the broker inside Duskline listens. 127.0.0.1 is reachable from this machine alone and needs no"
                    + " passwords; 0.0.0.0 from the whole network, which wants broker.passwords."),
    BROKER_PORT("broker.port", Form.PORT, "1883", "", "Its port."),
    BROKER_FOLDER("broker.folder", Form.PATH, "broker", "", "Where it keeps messages and sessions."),
    BROKER_PASSWORDS(
            "broker.passwords",
            Form.PATH,
            "",
            "broker.passwords",
            "File with the names that the broker lets in and hashes of their passwords, written by \"duskline password"
                    + " NAME\". With it nobody comes in without a password, and each node may speak under its own name"
                    + " alone."),
    PAGES_HOST(
            "pages.host",
            Form.HOST,
            "127.0.0.1",
            "",
            "Where the pages listen. 127.0.0.1 is reachable from this machine alone."),
    PAGES_PORT("pages.port", Form.PORT, "8080", "", "The pages' port: http://127.0.0.1:8080."),
    PAGES_ADDRESS(
            "pages.address",
            Form.TEXT,
            "",
            "https://duskline.example",
            "Where your phone's browser finds the pages. Alerts then hold a link by which they can be answered."),
    CHECKIN_URL(
            "checkin.url",
            Form.SECRET,
            "",
            "https://watcher.example/duskline",
            "Address that Duskline POSTs to every five minutes as long as all is well, so that somebody outside can raise"
                    + " the alarm when it falls silent."),
    MAIL_HOST("mail.host", Form.TEXT, "", "mail.example", "The mail server that takes alerts by e-mail."),
    MAIL_PORT("mail.port", Form.PORT, "587", "", "Its port; by custom 587 for starttls and 465 for tls."),
    MAIL_SECURITY(
            "mail.security",
            Form.SECURITY,
            "starttls",
            "",
            "How the connection is protected: starttls begins in the clear and must change over before anything is"
                    + " said, tls is protected from the first byte, none is for a server on this machine."),
    MAIL_USER("mail.user", Form.TEXT, "", "duskline", "User name at the mail server."),
    MAIL_PASSWORD(
            "mail.password",
            Form.SECRET,
            "",
            "elderflower",
            "Password at the mail server. Better given in the environment than in a file that others can read."),
    MAIL_FROM("mail.from", Form.TEXT, "", "duskline@line.example", "The address that alerts come from."),
    LOG_DETAIL(
            "log.detail",
            Form.DETAIL,
            "info",
            "",
            "How much the running service says on standard error: error, warn, info or debug.");

    private static final String ENVIRONMENT_PREFIX = "DUSKLINE_";

    private final String dotted;
    private final Form form;
    private final String standard;
    private final String example;
    private final String meaning;

    Key(String dotted, Form form, String standard, String example, String meaning) {
        this.dotted = dotted;
        this.form = form;
        this.standard = standard;
        this.example = example;
        this.meaning = meaning;
    }

    /** The key as written in documents: {@code mqtt.url}. */
    public String dotted() {
        return dotted;
    }

    /** The environment variable that goes before the file: {@code DUSKLINE_MQTT_URL}. */
    public String environmentName() {
        return ENVIRONMENT_PREFIX + dotted.toUpperCase(Locale.ROOT).replace('.', '_');
    }

    /** What holds where nothing is said; empty where there is no such thing. */
    public Optional<String> standard() {
        return standard.isEmpty() ? Optional.empty() : Optional.of(standard);
    }

    /** What it means, for a keeper. */
    public String meaning() {
        return meaning;
    }

    /** A value to show in the example file: the standard one, or an invented one. */
    String shown() {
        return standard.isEmpty() ? example : standard;
    }

    Form form() {
        return form;
    }

    static boolean isOurs(String environmentName) {
        return environmentName.startsWith(ENVIRONMENT_PREFIX);
    }
}
