package org.duskline.collector.collect;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import org.duskline.collector.instruction.InstructionLog;
import org.duskline.collector.intake.MessageSink;
import org.duskline.collector.store.PackWriter;
import org.duskline.collector.store.Store;
import org.duskline.collector.store.Stored;
import org.duskline.collector.wire.Acknowledgement;
import org.duskline.collector.wire.ClockRepair;
import org.duskline.collector.wire.ClockRun;
import org.duskline.collector.wire.Damage;
import org.duskline.collector.wire.Message;
import org.duskline.collector.wire.ReadingPack;
import org.duskline.collector.wire.Sample;
import org.duskline.collector.wire.Status;
import org.duskline.collector.wire.TimedPack;
import org.duskline.collector.wire.Topic;
import org.duskline.collector.wire.UnreadableMessage;

/**
 * Decodes messages and stores them, a batch in one transaction: after {@link #take} returns all of it is durable, and if
 * it fails or the program is killed none of it is there. What cannot be decoded is stored as damage and never stops the
 * stream. Takes from several threads one after the other.
 */
public final class Collector implements MessageSink {
    private final Store store;
    private final InstructionLog instructions;
    private final Map<String, Cadence> cadences = new HashMap<>();
    private Tally total = Tally.NONE;

    public Collector(Store store) {
        this.store = store;
        this.instructions = InstructionLog.open(store);
    }

    @Override
    public synchronized void take(List<Message> batch) {
        TallySheet sheet = new TallySheet();
        List<Said> said = new ArrayList<>();
        try {
            store.write(writer -> {
                for (Message message : batch) {
                    take(writer, message, sheet, said);
                }
                return null;
            });
            said.forEach(this::keep);
        } catch (RuntimeException | Error failed) {
            // They may have counted packs that are not stored after all.
            cadences.clear();
            throw failed;
        }
        total = total.plus(sheet.sum());
    }

    /** What became of everything taken since the start. */
    public synchronized Tally tally() {
        return total;
    }

    private record Said(String node, Message message, Acknowledgement words) {}

    /** In transactions of their own, before any message of the batch is acknowledged; to keep one again changes nothing. */
    private void keep(Said said) {
        instructions.note(said.node(), said.message(), said.words());
        said.words()
                .lanes()
                .ifPresent(lanes ->
                        store.line().nodeSays(said.node(), lanes, said.message().received()));
    }

    private void take(PackWriter writer, Message message, TallySheet sheet, List<Said> said) throws SQLException {
        sheet.message();
        long received = message.received().toEpochMilli();
        try {
            Topic topic = Topic.parse(message.topic());
            long node = writer.heard(topic.node(), received);
            switch (topic.kind()) {
                case STATUS -> {
                    writer.status(node, Status.parse(message.payload()), received);
                    sheet.status();
                }
                case ACKNOWLEDGEMENT -> {
                    said.add(new Said(topic.node(), message, Acknowledgement.decode(message.payload())));
                    sheet.acknowledgement();
                }
                case READINGS -> readings(writer, topic.node(), node, message, sheet);
            }
        } catch (UnreadableMessage damaged) {
            writer.damage(new Damage(message, damaged.reason(), damaged.getMessage()));
            sheet.rejected(damaged.reason());
        }
    }

    private void readings(PackWriter writer, String name, long node, Message message, TallySheet sheet)
            throws SQLException, UnreadableMessage {
        long received = message.received().toEpochMilli();
        ReadingPack pack = ReadingPack.decode(message.payload());
        Cadence cadence = cadences.get(name);
        if (cadence == null) {
            cadence = new Cadence(writer.lastTimes(node, Cadence.PACKS));
            cadences.put(name, cadence);
        }
        long digest = pack.digest();
        OptionalLong before = writer.lastReceived(node, digest, received);
        if (before.isPresent() && isSecondDelivery(pack, received - before.getAsLong(), cadence)) {
            sheet.repeats(pack.size());
            return;
        }
        List<ClockRun> runs = ClockRepair.needsRuns(pack, received) ? writer.clockRuns(node) : List.of();
        TimedPack timed = ClockRepair.place(pack, received, runs);
        Stored stored = writer.pack(node, received, timed, pack.boot(), pack.seq(), digest);
        sheet.stored(stored);
        if (stored.added() > 0) {
            List<Sample> samples = timed.samples();
            cadence.add(samples.get(samples.size() - 1).timeMillis());
        }
    }

    /**
     * Whether a pack of the same content, stamps included, is the earlier one once more. Absolute stamps and packs that
     * are numbered settle it. Otherwise a node could honestly send the same again (an idle counter, "now"): after its
     * usual interval at the soonest, or, if it numbers its packs or counts seconds from its start, after it has started
     * again and run that far.
     */
    private static boolean isSecondDelivery(ReadingPack pack, long gapMillis, Cadence cadence) {
        if (gapMillis == 0 || pack.isAbsolute() || pack.isNumbered()) {
            return true;
        }
        long honest = (long) (0.75 * cadence.usualMillis() * Math.max(1, pack.seq()));
        long uptime = (long) (pack.newestSeconds() * 1000);
        return gapMillis < Math.max(honest, uptime);
    }
}
