package org.duskline.web.deliver;

import jakarta.mail.AuthenticationFailedException;
import jakarta.mail.Message;
import jakarta.mail.MessagingException;
import jakarta.mail.Session;
import jakarta.mail.Transport;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeMessage;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.InstantSource;
import java.util.Date;
import java.util.List;
import java.util.Properties;

/**
 * Sends a parcel as one mail. The same parcel bears the same Message-ID at every try, and later steps of a happening name
 * the earlier ones (In-Reply-To and References, RFC 5322 section 3.6.4), so that a mail program shows one thread.
 */
final class MailCarrier implements Carrier {
    private final MailSettings settings;
    private final String installation;
    private final InstantSource clock;
    private final Pictures pictures;
    private final Session session;

    MailCarrier(MailSettings settings, String installation, Duration patience, InstantSource clock, Pictures pictures) {
        this.settings = settings;
        this.pictures = pictures;
        this.installation = installation;
        this.clock = clock;
        this.session = Session.getInstance(properties(settings, patience));
    }

    private static Properties properties(MailSettings settings, Duration patience) {
        Properties properties = new Properties();
        String millis = String.valueOf(patience.toMillis());
        properties.put("mail.smtp.connectiontimeout", millis);
        properties.put("mail.smtp.timeout", millis);
        properties.put("mail.smtp.writetimeout", millis);
        properties.put("mail.smtp.auth", String.valueOf(settings.login().isPresent()));
        properties.put("mail.smtp.ssl.checkserveridentity", "true");
        boolean startsInTheClear = settings.security() == MailSettings.Security.STARTTLS;
        properties.put("mail.smtp.starttls.enable", String.valueOf(startsInTheClear));
        properties.put("mail.smtp.starttls.required", String.valueOf(startsInTheClear));
        properties.put("mail.smtp.ssl.enable", String.valueOf(settings.security() == MailSettings.Security.TLS));
        settings.trust().ifPresent(trust -> properties.put("mail.smtp.ssl.socketFactory", trust));
        return properties;
    }

    @Override
    public Outcome carry(Channel channel, Parcel parcel) {
        try (Transport transport = session.getTransport("smtp")) {
            MimeMessage message = written(channel, parcel);
            transport.connect(
                    settings.host(),
                    settings.port(),
                    settings.login().map(MailSettings.Login::name).orElse(null),
                    settings.login().map(MailSettings.Login::password).orElse(null));
            transport.sendMessage(message, message.getAllRecipients());
            return new Outcome.Delivered("The mail server " + settings.host() + " has taken it.");
        } catch (AuthenticationFailedException refused) {
            return failed("refused the login", refused, "Check the user name and the password of the mail server.");
        } catch (MessagingException failed) {
            return failed("did not take the mail", failed, "Check its name, port and security, and the address.");
        }
    }

    private MimeMessage written(Channel channel, Parcel parcel) throws MessagingException {
        Numbered message = new Numbered(session, number(parcel.id()));
        message.setFrom(new InternetAddress(settings.from(), true));
        message.setRecipient(Message.RecipientType.TO, new InternetAddress(channel.address(), true));
        message.setSubject(subject(parcel), StandardCharsets.UTF_8.name());
        MailBody.put(message, parcel, pictures, number(parcel.id()).replaceAll("[<>]", ""));
        message.setSentDate(Date.from(clock.instant()));
        // RFC 3834: keeps holiday notices from answering.
        message.setHeader("Auto-Submitted", "auto-generated");
        List<String> earlier = parcel.earlier().stream().map(this::number).toList();
        if (!earlier.isEmpty()) {
            message.setHeader("In-Reply-To", earlier.get(earlier.size() - 1));
            message.setHeader("References", String.join(" ", earlier));
        }
        message.saveChanges();
        return message;
    }

    private static String subject(Parcel parcel) {
        return parcel.title().replaceAll("[\\r\\n]+", " ");
    }

    private String number(long parcel) {
        String domain = settings.from().substring(settings.from().indexOf('@') + 1);
        return "<" + parcel + "." + installation + "@" + domain + ">";
    }

    private Outcome failed(String what, MessagingException failure, String advice) {
        StringBuilder said = new StringBuilder();
        for (Throwable cause = failure; cause != null; cause = next(cause)) {
            String words = String.valueOf(cause.getMessage()).strip();
            if (said.indexOf(words) < 0) {
                said.append(said.isEmpty() ? "" : "; ").append(words);
            }
        }
        return new Outcome.Failed("The mail server " + settings.host() + ":" + settings.port() + " " + what + ": "
                + withoutPassword(said.toString()) + " " + advice);
    }

    private static Throwable next(Throwable cause) {
        return cause instanceof MessagingException mail && mail.getNextException() != null
                ? mail.getNextException()
                : cause.getCause();
    }

    private String withoutPassword(String words) {
        return settings.login()
                .map(MailSettings.Login::password)
                .filter(password -> !password.isEmpty())
                .map(password -> words.replace(password, "(hidden)"))
                .orElse(words);
    }

    /** Keeps the number it was given, where the library would draw a new one at every saving. */
    private static final class Numbered extends MimeMessage {
        private final String number;

        Numbered(Session session, String number) {
            super(session);
            this.number = number;
        }

        @Override
        protected void updateMessageID() throws MessagingException {
            setHeader("Message-ID", number);
        }
    }
}
