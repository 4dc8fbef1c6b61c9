package org.duskline.analyzer.prove;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.DoubleConsumer;
import java.util.stream.Stream;
import org.duskline.analyzer.detect.Beyond;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.season.Season;
import org.duskline.analyzer.season.SeasonStream;
import org.duskline.analyzer.season.TrapTruth;
import org.duskline.analyzer.season.Truth;
import org.duskline.analyzer.season.Watched;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.analyzer.watch.LineWatch;
import org.duskline.collector.collect.Collector;
import org.duskline.collector.store.Arrival;
import org.duskline.collector.store.Store;
import org.duskline.collector.trap.Calibration;
import org.duskline.collector.trap.Fitting;
import org.duskline.collector.trap.Trap;
import org.duskline.collector.wire.Message;

/**
 * A season that has gone through decoding into a store of its own, the way that live messages take, and can be folded
 * under any thresholds. The store is a temporary file and goes with it.
 */
public final class PlayedSeason implements AutoCloseable {
    private static final int BATCH = 2000;
    private static final int MOST_DRAWN = 10;

    private final Season season;
    private final Path folder;
    private final Store store;
    private final Truth truth;

    /** @param progress told the share that has been read, 0 to 1 */
    public PlayedSeason(Season season, DoubleConsumer progress) {
        this.season = season;
        try {
            this.folder = Files.createTempDirectory("duskline-season");
        } catch (IOException e) {
            throw new UncheckedIOException(
                    "No temporary folder could be made for a season. Check the free space and rights of the system's"
                            + " temporary folder.",
                    e);
        }
        this.store = Store.open(folder.resolve("season.db"));
        enterLine();
        this.truth = read(progress);
    }

    private void enterLine() {
        List<Trap> traps = new ArrayList<>();
        List<Fitting> fittings = new ArrayList<>();
        for (Watched watched : season.line()) {
            traps.add(watched.trap());
            fittings.add(watched.fitting());
        }
        store.line().put(traps, fittings);
        for (Watched watched : season.line()) {
            if (!Double.isNaN(watched.countsPerKg())) {
                store.line()
                        .put(new Calibration(
                                watched.fitting().node(), watched.fitting().from(), 0, watched.countsPerKg()));
            }
        }
    }

    private Truth read(DoubleConsumer progress) {
        Collector collector = new Collector(store);
        SeasonStream stream = season.play();
        double start = season.world().start().toEpochMilli();
        double whole = season.world().days() * 86_400_000.0;
        List<Message> batch = new ArrayList<>(BATCH);
        while (stream.hasNext()) {
            Message message = stream.next();
            batch.add(message);
            if (batch.size() == BATCH || !stream.hasNext()) {
                collector.take(batch);
                progress.accept(Math.min(1, (message.received().toEpochMilli() - start) / whole));
                batch.clear();
            }
        }
        return stream.truth();
    }

    /** What really happened in it. */
    public Truth truth() {
        return truth;
    }

    /** Where its samples are. */
    public Store store() {
        return store;
    }

    /** Every finding as it was first told, under these thresholds. */
    List<Finding> fold(Thresholds thresholds, DoubleConsumer progress) {
        return watch(thresholds, Set.of(), false, progress).first();
    }

    /**
     * Watches the season from its first message to its last.
     *
     * @param without kinds of evidence that are left out
     * @param visits whether the keeper's recorded visits are known, some hours after each
     */
    Watching watch(Thresholds thresholds, Set<Beyond> without, boolean visits, DoubleConsumer progress) {
        LineWatch watch = new LineWatch(thresholds, 1, without);
        Map<String, Fitting> fittings = new HashMap<>();
        for (Watched watched : season.line()) {
            watch.watch(watched.trap(), watched.fitting().fitted(), List.of());
            fittings.put(watched.fitting().node(), watched.fitting());
        }
        WrittenVisits written = new WrittenVisits(visits ? truth.traps() : List.of());
        Watching.Notes notes = new Watching.Notes();
        double last = Math.max(1, store.samples().lastPack());
        long cursor = 0;
        List<Arrival> arrivals = store.samples().arrivalsAfter(cursor, BATCH);
        while (!arrivals.isEmpty()) {
            for (Arrival arrival : arrivals) {
                written.until(arrival.received(), watch).forEach(finding -> notes.take(finding, watch));
                Fitting fitting = fittings.get(arrival.node());
                watch.take(fitting.trap(), fitting.node(), fitting.fitted(), arrival.samples(), arrival.received())
                        .forEach(finding -> notes.take(finding, watch));
            }
            cursor = arrivals.get(arrivals.size() - 1).pack();
            progress.accept(cursor / last);
            arrivals = store.samples().arrivalsAfter(cursor, BATCH);
        }
        return notes.watching();
    }

    List<JudgedTrap> judge(List<Finding> findings) {
        return truth.traps().stream()
                .map(trap -> Judge.judge(truth.level(), trap, findings))
                .toList();
    }

    /** The mistakes of a watch, each with its picture. */
    List<DrawnMistake> mistakes(Watching watching, String name) {
        List<Mistake> all = new ArrayList<>();
        for (TrapTruth trap : truth.traps()) {
            all.addAll(Mistake.at(trap, Judge.judge(truth.level(), trap, watching.first()), watching));
        }
        return Mistake.worst(all, MOST_DRAWN, MOST_DRAWN).stream()
                .map(mistake -> new DrawnMistake(mistake, name, MistakePicture.svg(mistake, around(mistake))))
                .toList();
    }

    private TrapSeries around(Mistake mistake) {
        Instant middle = Instant.ofEpochSecond((long) mistake.second());
        TrapSeries series = new TrapSeries(Long.MAX_VALUE / 4);
        store.samples()
                .read(
                        mistake.trap().node(),
                        middle.minusMillis(2 * MistakePicture.BEFORE_MILLIS),
                        middle.plusMillis(MistakePicture.AFTER_MILLIS),
                        series::add);
        return series;
    }

    @Override
    public void close() {
        store.close();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        } catch (IOException e) {
            throw new UncheckedIOException("The temporary folder " + folder + " could not be removed; remove it.", e);
        }
    }
}
