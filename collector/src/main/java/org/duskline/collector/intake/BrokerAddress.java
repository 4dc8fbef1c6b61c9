package org.duskline.collector.intake;

import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;

/**
 * Where a broker is and how to get in.
 *
 * @param uri {@code mqtt://host[:port]} or, encrypted, {@code mqtts://host[:port]}
 * @param user the user name, where the broker wants one
 * @param password the password that goes with it; never printed
 * @param authority PEM file with the certificates to trust; the machine's own where absent
 */
public record BrokerAddress(URI uri, Optional<String> user, Optional<String> password, Optional<Path> authority) {
    private static final int PLAIN_PORT = 1883;
    private static final int ENCRYPTED_PORT = 8883;

    public BrokerAddress {
        if (uri.getHost() == null || !isKnown(uri.getScheme())) {
            throw new IllegalArgumentException("\"" + uri + "\" is not the address of a broker. Write it as"
                    + " mqtt://host:1883, or mqtts://host:8883 for an encrypted connection.");
        }
        if (uri.getUserInfo() != null) {
            throw new IllegalArgumentException("The broker's address holds a user name. Give user and password as"
                    + " settings of their own, so that they are never printed with the address.");
        }
        if (password.isPresent() && user.isEmpty()) {
            throw new IllegalArgumentException("A password for the broker needs a user name beside it.");
        }
    }

    /** An address without a password. */
    public static BrokerAddress of(String address) {
        return new BrokerAddress(parse(address), Optional.empty(), Optional.empty(), Optional.empty());
    }

    /** Reads an address; complains in words where it is none. */
    public static URI parse(String address) {
        try {
            return new URI(address.strip());
        } catch (URISyntaxException e) {
            throw new IllegalArgumentException("\"" + address + "\" is not the address of a broker. Write it as"
                    + " mqtt://host:1883, or mqtts://host:8883 for an encrypted connection.");
        }
    }

    public BrokerAddress withPassword(String newUser, String newPassword) {
        return new BrokerAddress(uri, Optional.of(newUser), Optional.of(newPassword), authority);
    }

    public BrokerAddress withAuthority(Path newAuthority) {
        return new BrokerAddress(uri, user, password, Optional.of(newAuthority));
    }

    public String host() {
        return uri.getHost();
    }

    public int port() {
        if (uri.getPort() > 0) {
            return uri.getPort();
        }
        return encrypted() ? ENCRYPTED_PORT : PLAIN_PORT;
    }

    public boolean encrypted() {
        String scheme = uri.getScheme().toLowerCase(Locale.ROOT);
        return scheme.equals("mqtts") || scheme.equals("ssl");
    }

    /** The address as the client library writes it. */
    String socketUri() {
        return (encrypted() ? "ssl://" : "tcp://") + uri.getHost() + ":" + port();
    }

    private static boolean isKnown(String scheme) {
        return scheme != null && scheme.toLowerCase(Locale.ROOT).matches("mqtts?|tcp|ssl");
    }

    /** The address alone: what is secret stays out of logs and pages. */
    @Override
    public String toString() {
        return uri.getScheme() + "://" + uri.getHost() + ":" + port();
    }
}
