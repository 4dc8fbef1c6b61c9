package org.duskline.web.page;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.finding.Condition;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.analyzer.replay.ThresholdBook;
import org.duskline.analyzer.season.DemoSeason;
import org.duskline.analyzer.season.SeasonStream;
import org.duskline.analyzer.season.Watched;
import org.duskline.analyzer.visit.Answer;
import org.duskline.analyzer.visit.AnswerLog;
import org.duskline.analyzer.visit.Said;
import org.duskline.analyzer.visit.VisitLog;
import org.duskline.analyzer.watch.Analyzer;
import org.duskline.collector.collect.Collector;
import org.duskline.collector.store.Store;
import org.duskline.collector.wire.Message;
import org.duskline.web.page.board.BrokerLink;
import org.duskline.web.page.board.Habits;
import org.duskline.web.page.board.StoreWatchboard;
import org.duskline.web.tuning.TuningDesk;

/** The demo's valley as it is when somebody begins to watch: its last three weeks stored and analysed. */
final class DemoValley implements AutoCloseable {
    static final Instant NOW = DemoSeason.watchedFrom();
    private static final Duration REMEMBERED = Duration.ofDays(21);
    private static final int BATCH = 2000;

    final Store store;
    final FindingLog findings;
    final AnswerLog answers;
    final ThresholdBook book;
    final TuningDesk desk;
    final StoreWatchboard board;
    final DemoSeason season = new DemoSeason();

    DemoValley(Path folder) {
        store = Store.open(folder.resolve("valley.db"));
        findings = new FindingLog(store);
        answers = AnswerLog.open(store);
        book = ThresholdBook.open(store);
        desk = new TuningDesk(store, book, answers, () -> NOW);
        board = new StoreWatchboard(
                store,
                findings,
                VisitLog.open(store),
                answers,
                trap -> Condition.QUIET,
                () -> new BrokerLink(true, NOW, "mqtt://localhost:1883"),
                Habits.USUAL,
                () -> NOW);
        fill();
        new Analyzer(store, findings, VisitLog.open(store), trap -> book.inForce(trap, NOW), (handle, changes) -> {})
                .advance();
    }

    private void fill() {
        store.line()
                .put(
                        season.line().stream().map(Watched::trap).toList(),
                        season.line().stream().map(Watched::fitting).toList());
        Collector collector = new Collector(store);
        List<Message> batch = new ArrayList<>();
        SeasonStream stream = season.play();
        for (Message message = stream.next(); message.received().isBefore(NOW); message = stream.next()) {
            if (message.received().isAfter(NOW.minus(REMEMBERED))) {
                batch.add(message);
            }
            if (batch.size() == BATCH) {
                collector.take(batch);
                batch.clear();
            }
        }
        collector.take(batch);
    }

    /** What a garden hose at Saltpan Gate was taken for. */
    Finding falseAlarm() {
        return moveIns().stream()
                .filter(finding -> Duration.between(finding.onset(), season.falseAlarm())
                                .abs()
                                .compareTo(Duration.ofHours(1))
                        < 0)
                .findFirst()
                .orElseThrow(() -> new AssertionError("The demo's confusing case raised no false alarm: " + moveIns()));
    }

    List<Finding> moveIns() {
        return findings.all().stream()
                .filter(finding -> finding.kind() == Kind.MOVE_IN)
                .toList();
    }

    /** The keeper has fetched the swarms and said so. */
    int answerTheSwarms() {
        List<Finding> swarms =
                moveIns().stream().filter(one -> !one.equals(falseAlarm())).toList();
        swarms.forEach(one -> answers.record(
                new Answer(one.trap(), one.kind(), one.onset(), Said.SWARM, "", one.raised(), "keeper"),
                Optional.empty()));
        return swarms.size();
    }

    @Override
    public void close() {
        desk.close();
        store.close();
    }
}
