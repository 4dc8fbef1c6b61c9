package org.duskline.web.app;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.stream.Stream;
import org.duskline.analyzer.season.DemoSeason;
import org.duskline.collector.intake.MessageRelay;
import org.duskline.collector.intake.Topics;
import org.duskline.collector.store.Store;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Command(
        name = "demo",
        description =
                "Shows the whole on an invented line of ten traps: five weeks of history, then live messages over a"
                        + " broker of its own, with the clock running fast, until it is interrupted (Ctrl-C).")
final class DemoCommand implements Callable<Integer> {
    private static final int USUAL_BROKER_PORT = 1883;
    private static final int LAST_PORT = 65_535;
    private static final double FASTEST = 100_000;

    @Mixin
    private Standard standard;

    @Option(
            names = "--speed",
            paramLabel = "TIMES",
            defaultValue = "" + DemoSeason.SPEED,
            description = "How many times as fast as real the demo's clock runs (${DEFAULT-VALUE}: a minute shows four"
                    + " hours).")
    private double speed;

    @Option(
            names = "--port",
            paramLabel = "PORT",
            defaultValue = "8080",
            description = "The pages' port (${DEFAULT-VALUE}); 0 takes any free one.")
    private int port;

    @Option(
            names = "--data",
            paramLabel = "FOLDER",
            description = "Where to keep the demo, to go on with it another time. Without it, nothing is kept.")
    private Path data;

    private final Surroundings surroundings;

    DemoCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() throws InterruptedException, IOException {
        if (!(speed > 0 && speed <= FASTEST)) {
            throw Failure.askedWrongly("--speed takes a number above 0 and up to 100000, not " + speed + ".");
        }
        if (port < 0 || port > LAST_PORT) {
            throw Failure.askedWrongly("--port takes a number from 0 to 65535, not " + port + ".");
        }
        Path folder = data == null ? Files.createTempDirectory("duskline-demo") : data;
        CountDownLatch ending = new CountDownLatch(1);
        try (AtInterrupt atInterrupt = new AtInterrupt(ending);
                Kept kept = data == null ? () -> forget(folder) : () -> {}) {
            play(folder, ending);
        }
        return Exit.DONE;
    }

    /** What becomes of the demo's folder at the end, before the machine may stop. */
    private interface Kept extends AutoCloseable {
        @Override
        void close() throws IOException;
    }

    private void play(Path folder, CountDownLatch ending) throws InterruptedException {
        say("An invented valley: ten traps, their nodes and one season, all of it made up. First its last weeks:");
        Valley valley = new Valley();
        Path database = folder.resolve("demo.db");
        Instant beginning;
        try (Store store = Store.open(database)) {
            beginning = valley.beginning(store);
            valley.remember(store, beginning, surroundings.err());
            Analysis.catchUp(store, beginning, surroundings.err());
        }
        FastClock clock = new FastClock(beginning, speed);
        try (Service service = Service.start(wishes(folder, database), clock);
                MessageRelay relay = new MessageRelay(service.broker(), "demo-nodes", clock, new Random())) {
            relay.start();
            clock.letGo();
            introduce(service);
            valley.speak(relay, clock, ending);
            if (ending.getCount() > 0) {
                say("The season is over. The pages stay until Ctrl-C.");
                ending.await();
            }
        }
    }

    private Wishes wishes(Path folder, Path database) {
        return new Wishes(
                database,
                Optional.empty(),
                Optional.empty(),
                new Wishes.OwnBroker(folder.resolve("broker"), "127.0.0.1", brokerPort()),
                "duskline",
                new Topics("traps"),
                "127.0.0.1",
                port,
                true,
                Wishes.Outside.NONE);
    }

    /** The usual port where it is free, so that what documents say about it holds. */
    private static int brokerPort() {
        try (ServerSocket socket = new ServerSocket(USUAL_BROKER_PORT, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        } catch (IOException inUse) {
            return 0;
        }
    }

    private void introduce(Service service) {
        say("");
        say("The pages are at " + service.pagesAddress());
        say(String.format(
                Locale.ROOT,
                "The clock there runs %,.0f times as fast as yours: a minute shows %.1f hours.",
                speed,
                speed / 60));
        say("The nodes speak through " + service.broker() + ". Listen to the alerts with");
        say("  mosquitto_sub -h 127.0.0.1 -p " + service.broker().port()
                + " -v -t 'traps/+/alert' -t 'traps/+/condition'");
        say("Ctrl-C ends it.");
    }

    private void say(String words) {
        surroundings.err().println(words);
    }

    private static void forget(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path each : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(each);
            }
        }
    }
}
