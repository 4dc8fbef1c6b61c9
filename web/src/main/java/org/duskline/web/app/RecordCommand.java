package org.duskline.web.app;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.duskline.collector.intake.BrokerAddress;
import org.duskline.collector.intake.BrokerSource;
import org.duskline.collector.intake.MessageSink;
import org.duskline.collector.intake.RecordedStreamWriter;
import org.duskline.web.settings.Settings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "record",
        description = "Writes what arrives at the broker into a recorded stream, until it is interrupted (Ctrl-C).")
final class RecordCommand implements Callable<Integer> {
    private static final Duration FOR_GOOD = Duration.ofDays(36_500);
    private static final Duration PATIENCE = Duration.ofMillis(200);

    @Mixin
    private Standard standard;

    @Mixin
    private SettingsOption settings;

    @Parameters(
            paramLabel = "STREAM",
            description = "The file to write at its end; compressed if its name ends in .gz.")
    private Path stream;

    @Option(names = "--for", paramLabel = "DURATION", description = "Stop after so long: 30m, 12h, 7d.")
    private String duration;

    @Option(names = "--messages", paramLabel = "COUNT", description = "Stop after so many messages.")
    private long messages = Long.MAX_VALUE;

    private final Surroundings surroundings;
    private final CountDownLatch interrupted = new CountDownLatch(1);

    RecordCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() throws InterruptedException {
        Settings read = settings.read(surroundings);
        BrokerAddress broker = read.broker().orElseGet(() -> BrokerAddress.of("mqtt://127.0.0.1:" + read.brokerPort()));
        long end = System.nanoTime()
                + Optional.ofNullable(duration).map(Span::read).orElse(FOR_GOOD).toNanos();
        AtomicLong written = new AtomicLong();
        try (AtInterrupt atInterrupt = new AtInterrupt(interrupted);
                RecordedStreamWriter writer = RecordedStreamWriter.open(stream);
                BrokerSource source = BrokerSource.passing(
                        broker,
                        read.clientName() + "-record-"
                                + Long.toString(surroundings.clock().millis(), 36),
                        read.topics(),
                        into(writer, written),
                        surroundings.clock(),
                        new Random())) {
            Logs.detail("warn");
            source.start();
            surroundings.err().println("Recording from " + broker + " into " + stream + "; Ctrl-C ends it.");
            while (written.get() < messages && System.nanoTime() - end < 0 && !pause()) {
                continue;
            }
        }
        surroundings.err().println(written + " messages written to " + stream + ".");
        return Exit.DONE;
    }

    private boolean pause() throws InterruptedException {
        return interrupted.await(PATIENCE.toMillis(), TimeUnit.MILLISECONDS);
    }

    private MessageSink into(RecordedStreamWriter writer, AtomicLong written) {
        return batch -> {
            batch.stream().limit(messages - written.get()).forEach(message -> {
                writer.write(message);
                written.incrementAndGet();
            });
            writer.flush();
        };
    }
}
