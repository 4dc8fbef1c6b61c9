package org.duskline.web.settings;

import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.duskline.collector.intake.BrokerAddress;
import org.duskline.collector.intake.Topics;
import org.duskline.web.deliver.MailSettings;

/** The settings that hold for one run: the environment's before the file's before the standard ones. */
public final class Settings {
    /** Where settings are looked for if no file is named. */
    public static final Path USUAL_FILE = Path.of("duskline.yaml");

    /** Addresses that this machine alone can reach. */
    private static final Set<String> LOOPBACK = Set.of("127.0.0.1", "localhost", "::1");

    private final Map<Key, String> values;
    private final Path folder;

    private Settings(Map<Key, String> values, Path folder) {
        this.values = values;
        this.folder = folder;
    }

    /**
     * Reads the settings.
     *
     * @param file the file named by the user; if none, {@link #USUAL_FILE} where it exists
     * @param environment the environment's variables
     * @throws SettingsMistake in words for the keeper
     */
    public static Settings read(Optional<Path> file, Map<String, String> environment) {
        Optional<Path> read = file.or(() -> Optional.of(USUAL_FILE).filter(Files::exists));
        Map<Key, String> values = new EnumMap<>(Key.class);
        read.ifPresent(path -> SettingsFile.read(path).forEach(entry -> values.put(keyOf(entry, path), entry.value())));
        environment.forEach((name, value) -> {
            if (Key.isOurs(name) && !name.equals(REQUIRE_ALL_TESTS)) {
                values.put(keyOfVariable(name, value), value);
            }
        });
        Path folder = read.map(Path::toAbsolutePath)
                .map(Path::getParent)
                .orElse(Path.of("").toAbsolutePath());
        Settings settings = new Settings(values, folder);
        settings.checkTogether();
        return settings;
    }

    /** The build's own variable, which is none of the program's settings. */
    private static final String REQUIRE_ALL_TESTS = "DUSKLINE_REQUIRE_ALL_TESTS";

    private static Key keyOf(SettingsFile.Entry entry, Path file) {
        String where = file + ", line " + entry.line() + ": ";
        Key key = Arrays.stream(Key.values())
                .filter(known -> known.dotted().equals(entry.key()))
                .findFirst()
                .orElseThrow(() -> new SettingsMistake(where + "there is no setting \"" + entry.key() + "\"."
                        + NearestName.hint(entry.key(), names())));
        complainAbout(where, key.dotted(), key, entry.value());
        return key;
    }

    private static Key keyOfVariable(String name, String value) {
        Key key = Arrays.stream(Key.values())
                .filter(known -> known.environmentName().equals(name))
                .findFirst()
                .orElseThrow(() -> new SettingsMistake("The environment holds " + name
                        + ", but there is no such setting." + NearestName.hint(name, environmentNames())));
        complainAbout("In the environment: ", name, key, value);
        return key;
    }

    private static void complainAbout(String where, String name, Key key, String value) {
        key.form().complaint(value).ifPresent(complaint -> {
            String shown = key.form() == Form.SECRET ? "" : ", not \"" + value + "\"";
            throw new SettingsMistake(where + name + " " + complaint + shown + ".");
        });
    }

    private static List<String> names() {
        return Arrays.stream(Key.values()).map(Key::dotted).toList();
    }

    private static List<String> environmentNames() {
        return Arrays.stream(Key.values()).map(Key::environmentName).toList();
    }

    private void checkTogether() {
        try {
            broker();
            topics();
            mail();
            pagesAddress();
            checkIn();
        } catch (IllegalArgumentException e) {
            throw new SettingsMistake(e.getMessage());
        }
        if (value(Key.MQTT_URL).isEmpty() && value(Key.MQTT_USER).isPresent()) {
            throw new SettingsMistake("mqtt.user is set, but no broker (mqtt.url) that it could be a user of.");
        }
        if (value(Key.MQTT_URL).isEmpty() && brokerPasswords().isEmpty() && !LOOPBACK.contains(brokerHost())) {
            throw new SettingsMistake(
                    "broker.host is " + brokerHost() + ", which others in the network can reach, but no"
                            + " file with passwords is named (broker.passwords). Name one and make a password for each node with"
                            + " \"duskline password NODE\", or listen on 127.0.0.1.");
        }
    }

    /** What was said about a key, or its standard value. */
    public Optional<String> value(Key key) {
        return Optional.ofNullable(values.get(key)).or(key::standard);
    }

    /** The same for showing: what is secret is hidden. */
    public Optional<String> shown(Key key) {
        return value(key).map(value -> key.form() == Form.SECRET ? "(hidden)" : value);
    }

    public Path database() {
        return path(Key.DATABASE).orElseThrow();
    }

    public Optional<Path> line() {
        return path(Key.LINE);
    }

    /** The keeper's own broker; none means that the embedded one is to be used. */
    public Optional<BrokerAddress> broker() {
        return value(Key.MQTT_URL)
                .map(url -> new BrokerAddress(
                        BrokerAddress.parse(url),
                        value(Key.MQTT_USER),
                        value(Key.MQTT_PASSWORD),
                        path(Key.MQTT_AUTHORITY)));
    }

    public String clientName() {
        return value(Key.MQTT_CLIENT).orElseThrow();
    }

    public Topics topics() {
        return new Topics(value(Key.MQTT_ROOT).orElseThrow());
    }

    public String brokerHost() {
        return value(Key.BROKER_HOST).orElseThrow();
    }

    public int brokerPort() {
        return Integer.parseInt(value(Key.BROKER_PORT).orElseThrow());
    }

    public Path brokerFolder() {
        return path(Key.BROKER_FOLDER).orElseThrow();
    }

    /** Who may use the embedded broker; none means everybody on this machine. */
    public Optional<Path> brokerPasswords() {
        return path(Key.BROKER_PASSWORDS);
    }

    public String pagesHost() {
        return value(Key.PAGES_HOST).orElseThrow();
    }

    public int pagesPort() {
        return Integer.parseInt(value(Key.PAGES_PORT).orElseThrow());
    }

    /** Where readers' browsers find the pages; none means that messages bear no links. */
    public Optional<URI> pagesAddress() {
        return value(Key.PAGES_ADDRESS)
                .map(text -> address(text)
                        .orElseThrow(() -> new IllegalArgumentException(
                                "pages.address must be an address such as https://duskline.example, not \"" + text
                                        + "\".")));
    }

    /** Where to say that all is well; it may hold a secret. */
    public Optional<URI> checkIn() {
        return value(Key.CHECKIN_URL)
                .map(text -> address(text)
                        .orElseThrow(() -> new IllegalArgumentException(
                                "checkin.url must be an address that begins with https:// or http:// and names a"
                                        + " host.")));
    }

    private static Optional<URI> address(String text) {
        try {
            return Optional.of(new URI(text))
                    .filter(address -> address.getHost() != null
                            && String.valueOf(address.getScheme()).matches("https?"));
        } catch (URISyntaxException unreadable) {
            return Optional.empty();
        }
    }

    /** The mail server; none means that nothing can be told by e-mail. */
    public Optional<MailSettings> mail() {
        return value(Key.MAIL_HOST)
                .map(host -> new MailSettings(
                        host,
                        Integer.parseInt(value(Key.MAIL_PORT).orElseThrow()),
                        MailSettings.Security.valueOf(
                                value(Key.MAIL_SECURITY).orElseThrow().toUpperCase(Locale.ROOT)),
                        value(Key.MAIL_USER)
                                .map(user -> new MailSettings.Login(
                                        user, value(Key.MAIL_PASSWORD).orElse(""))),
                        value(Key.MAIL_FROM)
                                .orElseThrow(() -> new IllegalArgumentException(
                                        "mail.host is set, but no address (mail.from) that alerts come from.")),
                        Optional.empty()));
    }

    /** What was said about a key that takes a number, or its standard value. */
    public double number(Key key) {
        return Double.parseDouble(value(key).orElseThrow());
    }

    /** Latitude and longitude of the keeper's home, degrees. */
    public Optional<double[]> home() {
        return value(Key.EVENING_HOME)
                .map(spot -> Arrays.stream(spot.split(","))
                        .mapToDouble(degrees -> Double.parseDouble(degrees.strip()))
                        .toArray());
    }

    public String logDetail() {
        return value(Key.LOG_DETAIL).orElseThrow();
    }

    private Optional<Path> path(Key key) {
        return value(key).map(folder::resolve);
    }
}
