package org.duskline.web.page;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.Instant;
import java.time.InstantSource;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.analyzer.replay.Adopted;
import org.duskline.analyzer.replay.Comparison.Event;
import org.duskline.analyzer.replay.Cost;
import org.duskline.analyzer.replay.Expectation;
import org.duskline.analyzer.replay.Suggestion;
import org.duskline.analyzer.replay.ThresholdBook;
import org.duskline.analyzer.visit.AnswerLog;
import org.duskline.web.tuning.Listener;
import org.duskline.web.tuning.Outcome;
import org.duskline.web.tuning.TuningDesk;
import org.duskline.web.tuning.Wish;

/** The same for programs: what holds, what other thresholds would have told, and what the search suggests. */
final class TuningApi {
    private final FindingLog findings;
    private final AnswerLog answers;
    private final ThresholdBook book;
    private final TuningDesk desk;
    private final InstantSource clock;

    TuningApi(FindingLog findings, AnswerLog answers, ThresholdBook book, TuningDesk desk, InstantSource clock) {
        this.findings = findings;
        this.answers = answers;
        this.book = book;
        this.desk = desk;
        this.clock = clock;
    }

    void register(RoutesConfig routes) {
        routes.get("/api/thresholds", this::versions);
        routes.get("/api/thresholds/replay", this::replay);
        routes.get("/api/thresholds/suggestion", this::suggestion);
    }

    /** The wish that an address holds. */
    static Wish wish(Context context, FindingLog findings, ThresholdBook book, Instant now) {
        Optional<String> trap = Optional.ofNullable(context.queryParam("trap")).filter(name -> !name.isBlank());
        Optional<Finding> loaded = Optional.ofNullable(context.queryParam("finding"))
                .filter(name -> !name.isBlank())
                .map(name -> FindingAddress.find(findings, name));
        Thresholds base = trap.map(name -> book.inForce(name, now).thresholds())
                .orElseGet(() -> book.ofLine(now).thresholds());
        return new Wish(Turned.read(context, base), trap, loaded);
    }

    /** The keeper's prices that an address holds. */
    static Cost cost(Context context) {
        try {
            return new Cost(
                    price(context, "missedSwarm", 100),
                    price(context, "wastedDrive", 20),
                    price(context, "hourOfDelay", 2));
        } catch (IllegalArgumentException wrong) {
            throw new BadRequest(wrong.getMessage());
        }
    }

    private static double price(Context context, String name, double usual) {
        return Optional.ofNullable(context.queryParam(name))
                .filter(text -> !text.isBlank())
                .map(Double::parseDouble)
                .orElse(usual);
    }

    private void versions(Context context) {
        context.header("Cache-Control", "no-cache")
                .json(book.versions().stream().map(this::version).toList());
    }

    private Map<String, Object> version(Adopted adopted) {
        Instant now = clock.instant();
        Map<String, Object> shape = new LinkedHashMap<>();
        shape.put("version", adopted.version());
        adopted.trap().ifPresent(trap -> shape.put("trap", trap));
        shape.put("at", adopted.at().toString());
        adopted.until().ifPresent(until -> shape.put("until", until.toString()));
        shape.put("by", adopted.by());
        shape.put("why", adopted.why());
        shape.put("changed", adopted.changed());
        shape.put("predicted", adopted.predicted());
        adopted.backTo().ifPresent(back -> shape.put("backTo", back));
        shape.put(
                "inForce",
                adopted.trap()
                        .map(name -> book.exception(name, now)
                                .filter(adopted::equals)
                                .isPresent())
                        .orElseGet(() -> book.ofLine(now).equals(adopted)));
        shape.put("thresholds", adopted.thresholds());
        ThresholdBook.Effect since = book.effect(adopted.version(), findings, answers);
        shape.put("since", Map.of("told", since.told(), "swarms", since.swarms(), "wrong", since.wrong()));
        return shape;
    }

    private void replay(Context context) {
        Wish wish = wish(context, findings, book, clock.instant());
        CompletableFuture<Object> answer = new CompletableFuture<>();
        desk.replay("api " + context.req().getRequestId(), wish, new Answering(answer));
        context.header("Cache-Control", "no-cache").future(() -> answer.thenAccept(context::json));
    }

    private void suggestion(Context context) {
        Cost cost = cost(context);
        Optional<String> trap = Optional.ofNullable(context.queryParam("trap")).filter(name -> !name.isBlank());
        CompletableFuture<Object> answer = new CompletableFuture<>();
        desk.suggest("api " + context.req().getRequestId(), trap, cost, new Answering(answer));
        context.header("Cache-Control", "no-cache").future(() -> answer.thenAccept(context::json));
    }

    /** Waits for the last word and answers with it. */
    private record Answering(CompletableFuture<Object> answer) implements Listener {
        @Override
        public void at(double done, String doing) {
            // A program that asks once waits for the whole.
        }

        @Override
        public void brought(Outcome outcome) {
            if (outcome.whole()) {
                answer.complete(shape(outcome));
            }
        }

        @Override
        public void suggested(Suggestion suggestion) {
            Map<String, Object> shape = new LinkedHashMap<>();
            shape.put("supported", suggestion.supported());
            shape.put("thresholds", suggestion.thresholds());
            shape.put("answers", suggestion.cases());
            shape.put("words", suggestion.words());
            if (!Double.isNaN(suggestion.saving())) {
                shape.put("savingPerAnswer", suggestion.saving());
                shape.put("low", suggestion.interval().low());
                shape.put("high", suggestion.interval().high());
            }
            answer.complete(shape);
        }

        @Override
        public void failed(String words) {
            answer.completeExceptionally(new IllegalStateException(words));
        }

        @Override
        public void over() {
            answer.completeExceptionally(new IllegalStateException("The work was left before it was done."));
        }
    }

    static Map<String, Object> shape(Outcome outcome) {
        Map<String, Object> shape = new LinkedHashMap<>();
        shape.put("from", outcome.from().toString());
        shape.put("until", outcome.until().toString());
        shape.put("words", outcome.words());
        shape.put(
                "differences",
                outcome.comparison().differences().stream()
                        .map(TuningApi::shape)
                        .toList());
        shape.put("now", shape(outcome.was()));
        shape.put("otherwise", shape(outcome.willBe()));
        return shape;
    }

    private static Map<String, Object> shape(Event event) {
        return Map.of(
                "trap", event.trap(),
                "kind", event.kind().wireName(),
                "onset", event.onset().toString(),
                "change", event.change().name().toLowerCase(Locale.ROOT),
                "was", event.truth().name().toLowerCase(Locale.ROOT),
                "shiftSeconds", event.shift().toSeconds());
    }

    private static Map<String, Object> shape(Expectation expected) {
        Map<String, Object> shape = new LinkedHashMap<>();
        shape.put("quietDays", expected.quietDays());
        if (expected.quietDays() > 0) {
            shape.put("falseAlarmsPerSeason", expected.perSeason());
            shape.put("low", expected.interval().low());
            shape.put("high", expected.interval().high());
        }
        shape.put("medianDelaySeconds", expected.medianDelay().toSeconds());
        return shape;
    }
}
