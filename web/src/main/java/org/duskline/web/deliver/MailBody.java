package org.duskline.web.deliver;

import jakarta.activation.DataHandler;
import jakarta.mail.MessagingException;
import jakarta.mail.internet.MimeBodyPart;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import jakarta.mail.util.ByteArrayDataSource;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * What a mail says: the words alone, or the words twice, plain and with the curves among them (multipart/alternative, RFC
 * 2046; in it multipart/related, RFC 2387, the pictures by their Content-ID, RFC 2392).
 */
final class MailBody {
    /** Drawing them all must not hold the mail up for a minute. */
    private static final int MOST_PICTURES = 6;

    private static final String UTF_8 = StandardCharsets.UTF_8.name();
    private static final Pattern LINK = Pattern.compile("https?://\\S+");
    private static final String BEFORE_THE_PICTURE = "\nWhat to do: ";

    private final Parcel parcel;
    private final String mark;
    private final List<MimeBodyPart> inline = new ArrayList<>();
    private final StringBuilder html = new StringBuilder(
            "<!doctype html><html><head><meta charset=\"utf-8\"><meta name=\"color-scheme\" content=\"light dark\">"
                    + "<style>:root{color-scheme:light dark}</style></head>"
                    + "<body style=\"font:16px/1.45 sans-serif;max-width:40em\">");

    /** @param mark what the pictures' identities end in; the same at every try */
    private MailBody(Parcel parcel, String mark) {
        this.parcel = parcel;
        this.mark = mark;
    }

    /** Puts the words into a message, with whatever pictures could be drawn. */
    static void put(MimeMessage message, Parcel parcel, Pictures pictures, String mark) throws MessagingException {
        new MailBody(parcel, mark).put(message, pictures);
    }

    private void put(MimeMessage message, Pictures pictures) throws MessagingException {
        for (int i = 0; i < parcel.alerts().size(); i++) {
            html.append(i == 0 ? "" : "<hr>");
            alert(parcel.alerts().get(i), pictures);
        }
        if (inline.isEmpty()) {
            message.setText(parcel.text(), UTF_8);
            return;
        }
        MimeBodyPart words = new MimeBodyPart();
        words.setText(parcel.text(), UTF_8);
        MimeMultipart related = new MimeMultipart("related");
        MimeBodyPart page = new MimeBodyPart();
        page.setText(html.append("</body></html>").toString(), UTF_8, "html");
        related.addBodyPart(page);
        for (MimeBodyPart picture : inline) {
            related.addBodyPart(picture);
        }
        MimeBodyPart both = new MimeBodyPart();
        both.setContent(related);
        message.setContent(new MimeMultipart("alternative", words, both));
    }

    private void alert(Alert alert, Pictures pictures) throws MessagingException {
        Optional<Pictures.Picture> picture = inline.size() < MOST_PICTURES ? pictures.of(alert) : Optional.empty();
        String words = alert.words();
        int place = words.indexOf(BEFORE_THE_PICTURE);
        if (picture.isEmpty() || place < 0) {
            paragraph(words);
            if (picture.isPresent()) {
                picture(picture.get());
            }
            return;
        }
        paragraph(words.substring(0, place));
        picture(picture.get());
        paragraph(words.substring(place + 1));
    }

    private void picture(Pictures.Picture picture) throws MessagingException {
        String id = "curve-" + (inline.size() + 1) + "." + mark;
        MimeBodyPart part = new MimeBodyPart();
        part.setDataHandler(new DataHandler(new ByteArrayDataSource(picture.png(), "image/png")));
        part.setContentID("<" + id + ">");
        part.setDisposition(MimeBodyPart.INLINE);
        part.setFileName("curve-" + (inline.size() + 1) + ".png");
        inline.add(part);
        html.append("<p><img src=\"cid:")
                .append(id)
                .append("\" width=\"640\" style=\"max-width:100%;height:auto;border-radius:4px\" alt=\"")
                .append(escaped("Bees in and out a minute and the weight at " + picture.trap()
                        + " in the hours around the onset, which is marked."))
                .append("\"></p>");
    }

    private void paragraph(String words) {
        String linked = LINK.matcher(escaped(words)).replaceAll("<a href=\"$0\">$0</a>");
        html.append("<p>").append(linked.replace("\n", "<br>\n")).append("</p>");
    }

    private static String escaped(String words) {
        return words.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
