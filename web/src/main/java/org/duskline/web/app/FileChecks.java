package org.duskline.web.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import java.util.Optional;
import org.duskline.collector.store.HeardNode;
import org.duskline.collector.store.Store;
import org.duskline.collector.store.StoreProblem;
import org.duskline.collector.trap.LineOfTraps;
import org.duskline.collector.trap.LineProblem;
import org.duskline.web.settings.Settings;

/** The doctor's look at files, disk and clock. Makes nothing and changes nothing. */
final class FileChecks {
    private static final long MEGABYTE = 1_000_000;
    private static final long TIGHT_MEGABYTES = 1_000;
    private static final long FULL_MEGABYTES = 100;
    /** When this program was begun: a clock that shows an earlier day was never set. */
    private static final Instant EARLIEST = Instant.parse("2026-01-01T00:00:00Z");

    private final Settings settings;
    private final InstantSource clock;
    private Optional<Instant> lastHeard = Optional.empty();

    FileChecks(Settings settings, InstantSource clock) {
        this.settings = settings;
        this.clock = clock;
    }

    Checked line() {
        Optional<Path> file = settings.line();
        if (file.isEmpty()) {
            return Checked.note(
                    "line", "no file with your traps is named (line); nodes are stored, but hang in no trap");
        }
        try {
            LineOfTraps line = LineOfTraps.read(file.get());
            return line.places().isEmpty()
                    ? Checked.wrong("line", file.get() + " holds no trap: add one Point for each")
                    : Checked.fine(
                            "line",
                            line.places().size()
                                    + (line.places().size() == 1 ? " trap in " : " traps in ")
                                    + file.get());
        } catch (LineProblem e) {
            return Checked.wrong("line", e.getMessage());
        }
    }

    Checked database() {
        Path file = settings.database();
        if (!Files.exists(file)) {
            Path folder = nearestFolder(file);
            return Files.isWritable(folder)
                    ? Checked.fine("database", file + " is not there yet; it is made at the first start")
                    : Checked.wrong(
                            "database", folder + " cannot be written to: change its rights, or the setting database");
        }
        if (!Files.isWritable(file)) {
            return Checked.wrong(
                    "database", file + " cannot be written to: change its rights, or the setting database");
        }
        try (Store store = Store.open(file)) {
            lastHeard = store.nodes().all().stream().map(HeardNode::lastHeard).max(Instant::compareTo);
            return Checked.fine(
                    "database",
                    String.format(
                            Locale.ROOT,
                            "%,d messages from %d nodes in %s%s",
                            store.samples().lastPack(),
                            store.nodes().all().size(),
                            file,
                            lastHeard
                                    .map(at -> ", the last at " + at.truncatedTo(ChronoUnit.SECONDS))
                                    .orElse("")));
        } catch (StoreProblem e) {
            return Checked.wrong("database", e.getMessage());
        }
    }

    /**
     * After {@link #database}. A broker keeps messages only for a listener that it knows (MQTT 3.1.1, section 4.1): what
     * was published before the first subscription is gone.
     */
    Checked nodes() {
        if (lastHeard.isPresent()) {
            return Checked.fine(
                    "nodes",
                    "heard before: the broker keeps what they send while Duskline is down, from the first start on");
        }
        return Checked.note(
                "nodes",
                "none was heard yet. A broker keeps nothing for a listener that it has never met: what was published"
                        + " before Duskline's first start is not there any more. Start Duskline first, then the nodes;"
                        + " from then on nothing is lost while Duskline is down");
    }

    Checked disk() {
        Path folder = nearestFolder(settings.database());
        try {
            long free = Files.getFileStore(folder).getUsableSpace() / MEGABYTE;
            String words = String.format(Locale.ROOT, "%,d MB free at %s", free, folder);
            if (free < FULL_MEGABYTES) {
                return Checked.wrong("disk", words + ": make room, or readings will have to wait at the broker");
            }
            return free < TIGHT_MEGABYTES
                    ? Checked.note("disk", words + ": enough for now; a season of ten traps takes some 100 MB")
                    : Checked.fine("disk", words);
        } catch (IOException e) {
            return Checked.wrong("disk", "the disk of " + folder + " cannot be asked: " + e.getMessage());
        }
    }

    /** After {@link #database}, whose newest message a right clock cannot precede. */
    Checked clock() {
        Instant now = clock.instant().truncatedTo(ChronoUnit.SECONDS);
        if (now.isBefore(EARLIEST)) {
            return Checked.wrong("clock", "it shows " + now + ", which is past: let the machine fetch the time (NTP)");
        }
        if (lastHeard
                .filter(heard -> heard.isAfter(now.plus(Duration.ofMinutes(5))))
                .isPresent()) {
            return Checked.wrong(
                    "clock",
                    "it shows " + now + ", but a message was received at " + lastHeard.get()
                            + ": set the clock (NTP), or it was wrong then");
        }
        return Checked.fine("clock", "it shows " + now);
    }

    private static Path nearestFolder(Path file) {
        Path folder = file.toAbsolutePath().getParent();
        while (folder.getParent() != null && !Files.isDirectory(folder)) {
            folder = folder.getParent();
        }
        return folder;
    }
}
