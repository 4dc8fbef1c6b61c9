package org.duskline.analyzer.replay;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.SwarmSize;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.analyzer.season.Level;
import org.duskline.analyzer.season.Season;
import org.duskline.analyzer.visit.VisitLog;
import org.duskline.analyzer.watch.Analyzer;
import org.duskline.collector.collect.Collector;
import org.duskline.collector.store.Store;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.trap.Fitting;
import org.duskline.collector.trap.LaneBlock;
import org.duskline.collector.wire.Message;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An invented season of two traps; into one, with a counter alone, a swarm moves. */
class ReplayOfCountersTest {
    private static final Thresholds NOW = Thresholds.defaults();

    /** Where in the line the trap hangs that the invented swarm takes. */
    private static final int WITH_SWARM = 1;

    @TempDir
    Path folder;

    @Test
    void bees_that_slow_lanes_lose_are_put_back_in_a_replay_as_in_the_live_watch() {
        Season season = Season.of(17, Level.CLEAN, 21, 2);
        try (Store store = Store.open(folder.resolve("season.db"))) {
            season.line().forEach(watched -> store.line().put(List.of(watched.trap()), List.of(watched.fitting())));
            Collector collector = new Collector(store);
            List<Message> messages = new ArrayList<>();
            season.play().forEachRemaining(messages::add);
            collector.take(messages);
            Fitting counter = season.line().get(WITH_SWARM).fitting();
            assertThat(counter.fitted()).isEqualTo(Fitted.COUNTER);
            Past past = Past.read(store);
            SwarmSize asCounted = replayed(past, counter.trap());
            store.line().put(new LaneBlock(counter.node(), counter.from(), 4, LaneBlock.USUAL_DEAD_TIME));

            assertThat(past.ofSameLine())
                    .as("what was read before the counter was described")
                    .isFalse();
            SwarmSize putBack = replayed(Past.read(store), counter.trap());
            assertThat(putBack).isNotEqualTo(asCounted);
            assertThat(putBack).isEqualTo(live(store, counter.trap()));
        }
    }

    private static SwarmSize replayed(Past past, String trap) {
        return new Replay(past)
                .run(NOW).told().stream()
                        .filter(told ->
                                told.kind() == Kind.MOVE_IN && told.trap().equals(trap))
                        .findFirst()
                        .orElseThrow()
                        .last()
                        .size()
                        .orElseThrow();
    }

    private static SwarmSize live(Store store, String trap) {
        FindingLog log = new FindingLog(store);
        new Analyzer(store, log, VisitLog.open(store), NOW, 1, (handle, changes) -> {}).advance();
        return log.all().stream()
                .filter(finding ->
                        finding.kind() == Kind.MOVE_IN && finding.trap().equals(trap))
                .findFirst()
                .flatMap(Finding::size)
                .orElseThrow();
    }
}
