package org.duskline.web.app;

import java.io.PrintStream;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.analyzer.replay.ThresholdBook;
import org.duskline.analyzer.visit.VisitLog;
import org.duskline.analyzer.watch.Analyzer;
import org.duskline.collector.store.Store;

/** Analyses what has been imported, with each message's own time of receipt as the clock. */
final class Analysis {
    private Analysis() {}

    /** @param present which thresholds are asked for: those in force then */
    static void catchUp(Store store, Instant present, PrintStream err) {
        FindingLog log = new FindingLog(store);
        ThresholdBook book = ThresholdBook.open(store);
        Analyzer analyzer = new Analyzer(
                store, log, VisitLog.open(store), trap -> book.inForce(trap, present), (handle, changes) -> {});
        try (Progress progress =
                new Progress(err, "Analysing", "messages", store.samples().lastPack())) {
            progress.at(log.cursor());
            analyzer.advance(progress::at);
        }
        err.println(summary(log.all()));
    }

    private static String summary(List<Finding> findings) {
        if (findings.isEmpty()) {
            return "Nothing was found.";
        }
        return findings.stream()
                .collect(Collectors.groupingBy(
                        finding -> finding.kind().wireName(), TreeMap::new, Collectors.counting()))
                .entrySet()
                .stream()
                .map(entry -> String.format(Locale.ROOT, "%,d %s", entry.getValue(), entry.getKey()))
                .collect(Collectors.joining(", ", findings.size() + " findings: ", "."));
    }
}
