package org.duskline.web.deliver;

import java.net.ConnectException;
import java.net.URI;
import java.net.UnknownHostException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.channels.ClosedChannelException;
import java.nio.channels.UnresolvedAddressException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.InstantSource;
import java.util.HexFormat;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * Posts a parcel as JSON. Three headers let the receiver know that it is ours, fresh and not a repeat:
 * {@code Duskline-Id}, {@code Duskline-Time} (Unix seconds of this try) and {@code Duskline-Signature}, the HMAC-SHA256
 * in hexadecimal over time, full stop, id, full stop and body, with the channel's secret as the key.
 */
final class WebhookCarrier implements Carrier {
    private static final int QUOTED_CHARACTERS = 200;

    private final HttpClient client;
    private final String installation;
    private final Duration patience;
    private final InstantSource clock;
    private final Pictures pictures;

    WebhookCarrier(String installation, Duration patience, InstantSource clock, Pictures pictures) {
        this.pictures = pictures;
        this.client = HttpClient.newBuilder()
                .connectTimeout(patience)
                .followRedirects(HttpClient.Redirect.NEVER)
                .build();
        this.installation = installation;
        this.patience = patience;
        this.clock = clock;
    }

    @Override
    public Outcome carry(Channel channel, Parcel parcel) {
        String id = installation + "." + parcel.id();
        String body = ParcelJson.parcel(id, channel, parcel, pictures);
        String time = String.valueOf(clock.instant().getEpochSecond());
        HttpRequest request = HttpRequest.newBuilder(URI.create(channel.address()))
                .timeout(patience)
                .header("Content-Type", "application/json")
                .header("Duskline-Id", id)
                .header("Duskline-Time", time)
                .header("Duskline-Signature", signature(channel.secret(), time, id, body))
                .POST(HttpRequest.BodyPublishers.ofString(body))
                .build();
        return post(channel, request);
    }

    static String signature(String secret, String time, String id, String body) {
        byte[] key = secret.getBytes(StandardCharsets.UTF_8);
        return HexFormat.of().formatHex(Signature.of(key, time + "." + id + "." + body));
    }

    /** The whole answer must come in time, not only its first line. */
    private Outcome post(Channel channel, HttpRequest request) {
        CompletableFuture<HttpResponse<String>> answer =
                client.sendAsync(request, HttpResponse.BodyHandlers.ofString());
        try {
            return judged(channel, answer.get(patience.toMillis(), TimeUnit.MILLISECONDS));
        } catch (TimeoutException e) {
            answer.cancel(true);
            return failed(channel, "has not answered within " + patience.toSeconds() + " s");
        } catch (ExecutionException e) {
            return failed(channel, "could not be reached: " + reason(e.getCause()));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return failed(channel, "was not waited for, because Duskline is stopping");
        }
    }

    private static Outcome judged(Channel channel, HttpResponse<String> answer) {
        int status = answer.statusCode();
        if (status >= 200 && status < 300) {
            return new Outcome.Delivered("It answered " + status + ".");
        }
        String body = answer.body().strip();
        String quoted = body.length() > QUOTED_CHARACTERS ? body.substring(0, QUOTED_CHARACTERS) + "..." : body;
        return failed(channel, "answered " + status + (quoted.isEmpty() ? "" : ": " + quoted));
    }

    /** In the other side's words where it has any: the client often gives no more than the kind of exception. */
    private static String reason(Throwable failure) {
        Throwable root = failure;
        while (root.getCause() != null) {
            root = root.getCause();
        }
        if (root instanceof UnresolvedAddressException || root instanceof UnknownHostException) {
            return "no machine of this name is known";
        }
        if (root instanceof ClosedChannelException || root instanceof ConnectException) {
            return "nothing answers at this address and port";
        }
        return root.getMessage() == null ? root.getClass().getSimpleName() : root.getMessage();
    }

    private static Outcome failed(Channel channel, String what) {
        return new Outcome.Failed("The " + channel.named() + " " + what + ".");
    }
}
