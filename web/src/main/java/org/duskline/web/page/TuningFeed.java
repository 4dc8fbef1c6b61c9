package org.duskline.web.page;

import io.javalin.config.RoutesConfig;
import io.javalin.http.sse.SseClient;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.analyzer.replay.Cost;
import org.duskline.analyzer.replay.Dial;
import org.duskline.analyzer.replay.Suggestion;
import org.duskline.analyzer.replay.ThresholdBook;
import org.duskline.web.tuning.Listener;
import org.duskline.web.tuning.Outcome;
import org.duskline.web.tuning.TuningDesk;
import org.duskline.web.tuning.Wish;

/** Tells a page, as server-sent events, how far its wish is and what it brought. A page that leaves ends its wish. */
final class TuningFeed {
    private final FindingLog findings;
    private final ThresholdBook book;
    private final TuningDesk desk;
    private final InstantSource clock;
    private final Templates templates = new Templates();

    TuningFeed(FindingLog findings, ThresholdBook book, TuningDesk desk, InstantSource clock) {
        this.findings = findings;
        this.book = book;
        this.desk = desk;
        this.clock = clock;
    }

    void register(RoutesConfig routes) {
        routes.sse("/tuning/replay", this::replay);
        routes.sse("/tuning/suggestion", this::suggestion);
    }

    private void replay(SseClient client) {
        Wish wish = TuningApi.wish(client.ctx(), findings, book, clock.instant());
        ZoneId zone = Optional.ofNullable(client.ctx().queryParam("zone"))
                .filter(ZoneId.getAvailableZoneIds()::contains)
                .map(ZoneId::of)
                .orElse(ZoneOffset.UTC);
        client.keepAlive();
        TuningDesk.Job job = desk.replay(seat(client), wish, new Told(client, zone));
        client.onClose(job::cancel);
    }

    private void suggestion(SseClient client) {
        Cost cost = TuningApi.cost(client.ctx());
        Optional<String> trap =
                Optional.ofNullable(client.ctx().queryParam("trap")).filter(name -> !name.isBlank());
        client.keepAlive();
        TuningDesk.Job job = desk.suggest(seat(client), trap, cost, new Told(client, ZoneOffset.UTC));
        client.onClose(job::cancel);
    }

    private static String seat(SseClient client) {
        return Visitor.of(client.ctx()).name() + " "
                + Optional.ofNullable(client.ctx().queryParam("seat")).orElse("");
    }

    private final class Told implements Listener {
        private final SseClient client;
        private final ZoneId zone;
        private long lastPercent = -1;
        private String lastDoing = "";

        Told(SseClient client, ZoneId zone) {
            this.client = client;
            this.zone = zone;
        }

        @Override
        public void at(double done, String doing) {
            long percent = Math.round(100 * done);
            if (percent != lastPercent || !doing.equals(lastDoing)) {
                lastPercent = percent;
                lastDoing = doing;
                send("progress", percent + " " + doing);
            }
        }

        @Override
        public void brought(Outcome outcome) {
            Instant now = clock.instant();
            send("outcome", templates.piece("piece/outcome.jte", Map.of("outcome", outcome, "zone", zone, "now", now)));
        }

        @Override
        public void suggested(Suggestion suggestion) {
            StringBuilder data = new StringBuilder("{\"supported\":" + suggestion.supported());
            Thresholds thresholds = suggestion.thresholds();
            for (Dial dial : Dial.values()) {
                data.append(",\"").append(dial.key()).append("\":").append(dial.of(thresholds));
            }
            send("suggested", data.append('}').toString());
            send("words", suggestion.words());
        }

        @Override
        public void failed(String words) {
            send("trouble", words);
        }

        @Override
        public void over() {
            if (!client.terminated()) {
                client.sendEvent("over", "-");
                client.close();
            }
        }

        private void send(String event, String data) {
            if (client.terminated()) {
                throw new CancellationException("The page has left.");
            }
            try {
                client.sendEvent(event, data);
            } catch (UncheckedIOException gone) {
                throw (CancellationException) new CancellationException("The page has left.").initCause(gone);
            }
        }
    }
}
