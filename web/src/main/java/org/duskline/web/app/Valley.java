package org.duskline.web.app;

import java.io.PrintStream;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.duskline.analyzer.evening.Place;
import org.duskline.analyzer.evening.RoundSettings;
import org.duskline.analyzer.season.DemoSeason;
import org.duskline.analyzer.season.SeasonStream;
import org.duskline.analyzer.season.Watched;
import org.duskline.analyzer.visit.VisitLog;
import org.duskline.collector.collect.Collector;
import org.duskline.collector.intake.BrokerUnreachable;
import org.duskline.collector.intake.MessageRelay;
import org.duskline.collector.store.HeardNode;
import org.duskline.collector.store.Store;
import org.duskline.collector.trap.Calibration;
import org.duskline.collector.wire.Message;
import org.duskline.web.page.board.Habits;

/**
 * The demo's valley: an invented line of ten traps over one season. Its first weeks are read as history; from then on its
 * nodes speak through a real broker, when the clock comes to it.
 */
final class Valley {
    /** The usual habits, from a made-up home amid the traps. */
    static final Habits HABITS = new Habits(
            RoundSettings.USUAL.from(new Place(45.894, -20.411)),
            Habits.USUAL.upkeep(),
            Habits.USUAL.closed(),
            Habits.USUAL.lead());

    private static final int BATCH = 1000;
    private static final long SHORT_MILLIS = 200;

    private final DemoSeason season;
    private final SeasonStream stream;
    private final Instant live;
    private Message next;

    Valley() {
        this.season = new DemoSeason();
        this.stream = season.play();
        this.live = DemoSeason.watchedFrom();
        this.next = stream.next();
    }

    /** When the watching begins in a fresh database; later in one that has been watched before. */
    Instant beginning(Store store) {
        Optional<Instant> heard =
                store.nodes().all().stream().map(HeardNode::lastHeard).max(Instant::compareTo);
        return heard.filter(last -> last.isAfter(live)).orElse(live);
    }

    /** Enters the line and reads what was sent before an instant. */
    void remember(Store store, Instant until, PrintStream err) {
        List<Watched> line = season.line();
        store.line()
                .put(
                        line.stream().map(Watched::trap).toList(),
                        line.stream().map(Watched::fitting).toList());
        line.stream()
                .filter(watched -> !Double.isNaN(watched.countsPerKg()))
                .forEach(watched -> store.line()
                        .put(new Calibration(
                                watched.fitting().node(), watched.fitting().from(), 0, watched.countsPerKg())));
        boolean known = beginning(store).isAfter(live);
        if (store.nodes().all().isEmpty()) {
            ValleyVisits.write(VisitLog.open(store), line, live);
        }
        Collector collector = new Collector(store);
        List<Message> batch = new ArrayList<>(BATCH);
        Instant start = season.season().world().start();
        try (Progress progress = new Progress(
                err, "Reading", "hours", Duration.between(start, until).toHours())) {
            while (next != null && next.received().isBefore(until)) {
                if (!known) {
                    batch.add(next);
                }
                if (batch.size() == BATCH) {
                    collector.take(batch);
                    batch.clear();
                    progress.at(Duration.between(start, next.received()).toHours());
                }
                advance();
            }
            collector.take(batch);
            progress.at(Duration.between(start, until).toHours());
        }
    }

    /** Lets the nodes speak, each message when the clock shows its time, until the season or the demo ends. */
    void speak(MessageRelay relay, FastClock clock, CountDownLatch ending) throws InterruptedException {
        while (next != null
                && !ending.await(clock.realTimeUntil(next.received()).toNanos(), TimeUnit.NANOSECONDS)) {
            try {
                relay.publish(next);
                advance();
            } catch (BrokerUnreachable e) {
                ending.await(SHORT_MILLIS, TimeUnit.MILLISECONDS);
            }
        }
    }

    private void advance() {
        next = stream.hasNext() ? stream.next() : null;
    }
}
