package org.duskline.web.deliver;

import java.util.Optional;
import javax.net.ssl.SSLSocketFactory;

/**
 * The mail server that takes our messages.
 *
 * @param host its name, which its certificate must bear
 * @param port its port: by custom 587 for STARTTLS, 465 for TLS
 * @param security how the connection is protected
 * @param login the name and password, if it wants one
 * @param from our own address
 * @param trust whom to trust; empty for the authorities that this machine trusts
 */
public record MailSettings(
        String host,
        int port,
        Security security,
        Optional<Login> login,
        String from,
        Optional<SSLSocketFactory> trust) {
    /** How the connection is protected. */
    public enum Security {
        /** Begins in the clear and must change to TLS before anything is said (RFC 3207). */
        STARTTLS,
        /** TLS from the first byte (RFC 8314). */
        TLS,
        /** None; for a server on the same machine. */
        NONE
    }

    /** A name and a password. Its text never shows the password. */
    public record Login(String name, String password) {
        @Override
        public String toString() {
            return "login of " + name;
        }
    }

    public MailSettings {
        if (security == Security.NONE && login.isPresent() && !isThisMachine(host)) {
            throw new IllegalArgumentException("A password must not travel to " + host
                    + " in the clear. Set the mail server's security to starttls or tls.");
        }
    }

    private static boolean isThisMachine(String host) {
        return host.equals("localhost") || host.equals("127.0.0.1") || host.equals("::1");
    }
}
