package org.duskline.web.app;

import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Supplier;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.analyzer.replay.ThresholdBook;
import org.duskline.analyzer.visit.AnswerLog;
import org.duskline.analyzer.visit.VisitLog;
import org.duskline.analyzer.watch.Analyzer;
import org.duskline.collector.collect.Collector;
import org.duskline.collector.instruction.InstructionLog;
import org.duskline.collector.instruction.Instructions;
import org.duskline.collector.intake.BrokerAccess;
import org.duskline.collector.intake.BrokerAddress;
import org.duskline.collector.intake.BrokerPublisher;
import org.duskline.collector.intake.BrokerSource;
import org.duskline.collector.intake.EmbeddedBroker;
import org.duskline.collector.intake.LinkState;
import org.duskline.collector.store.Store;
import org.duskline.collector.trap.LineOfTraps;
import org.duskline.web.deliver.AlertBook;
import org.duskline.web.deliver.Artist;
import org.duskline.web.deliver.Broker;
import org.duskline.web.deliver.CheckIn;
import org.duskline.web.deliver.Courier;
import org.duskline.web.deliver.Deliveries;
import org.duskline.web.door.Door;
import org.duskline.web.page.AnswerPages;
import org.duskline.web.page.Entrance;
import org.duskline.web.page.NodePages;
import org.duskline.web.page.Pages;
import org.duskline.web.page.Part;
import org.duskline.web.page.PeoplePages;
import org.duskline.web.page.SheetFiles;
import org.duskline.web.page.StoryPages;
import org.duskline.web.page.TuningPages;
import org.duskline.web.page.VisitPages;
import org.duskline.web.page.WhyPages;
import org.duskline.web.page.board.BrokerLink;
import org.duskline.web.page.board.StoreWatchboard;
import org.duskline.web.page.board.StoredCurves;
import org.duskline.web.page.board.StoredNodes;
import org.duskline.web.picture.CurvePicture;
import org.duskline.web.tuning.TuningDesk;

/** The whole, wired and running: broker, collector, analyser, alerts, pages. Closed in the opposite order. */
final class Service implements AutoCloseable {
    private static final String LOOPBACK = "127.0.0.1";

    private final Deque<AutoCloseable> open = new ArrayDeque<>();
    private final BrokerAddress broker;
    private final Door door;
    private final String pagesHost;
    private final int pagesPort;
    private final Wishes wishes;

    /** Starts everything. What had been started is closed again if something cannot. */
    static Service start(Wishes wishes, InstantSource clock) {
        return new Service(wishes, clock);
    }

    private Service(Wishes wishes, InstantSource clock) {
        this.wishes = wishes;
        try {
            Store store = opened(Store.open(wishes.database()));
            wishes.line().ifPresent(file -> LineEntry.enter(LineOfTraps.read(file), store.line(), clock.instant()));
            broker = wishes.broker().orElseGet(this::ownBroker);
            door = Door.open(store, clock);
            // Until somebody has an account, nobody in the network could be told from the owner.
            pagesHost = door.hasOwner() ? wishes.pagesHost() : LOOPBACK;
            pagesPort = wire(store, clock);
        } catch (RuntimeException e) {
            close();
            throw e;
        }
    }

    private BrokerAddress ownBroker() {
        Wishes.OwnBroker own = wishes.ownBroker();
        EmbeddedBroker running = own.passwords()
                .map(file -> EmbeddedBroker.guarded(
                        own.folder(), own.host(), own.port(), new BrokerAccess(file), wishes.topics()))
                .orElseGet(() -> EmbeddedBroker.start(own.folder(), own.host(), own.port()));
        return opened(running).address();
    }

    private int wire(Store store, InstantSource clock) {
        Random random = new Random();
        FindingLog findings = new FindingLog(store);
        VisitLog visits = VisitLog.open(store);
        AnswerLog answers = AnswerLog.open(store);
        AlertBook book = new AlertBook(store);
        Hearing hearing = new Hearing(new Collector(store), wishes.topics().root());
        BrokerPublisher publisher =
                opened(new BrokerPublisher(broker, wishes.clientName() + "-alerts", wishes.topics(), clock, random));
        BrokerSource source = new BrokerSource(broker, wishes.clientName(), wishes.topics(), hearing, clock, random);
        Deliveries deliveries = opened(Deliveries.open(store, equipment(publisher, store, clock), clock, random));
        Missed missed = new Missed(deliveries, store.samples()::lastPack, findings::changedSince, clock);
        ThresholdBook thresholds = ThresholdBook.open(store);
        Analyzer analyzer = new Analyzer(
                store, findings, visits, trap -> thresholds.inForce(trap, clock.instant()), (handle, changes) -> {
                    book.write(handle, changes);
                    deliveries.write(handle, changes);
                });
        Instant started = clock.instant();
        Courier courier = new Courier(book, publisher, clock);
        InstructionLog told = InstructionLog.open(store);
        Instructions instructions = new Instructions(told, publisher::settings, clock);
        WatchLoop loop =
                new WatchLoop(hearing, analyzer, store.line(), courier, source, publisher, missed, instructions, clock);
        Supplier<BrokerLink> link = () -> link(source.state(), started);
        StoreWatchboard board =
                new StoreWatchboard(store, findings, visits, answers, loop::condition, link, wishes.habits(), clock);
        TuningDesk desk = opened(new TuningDesk(store, thresholds, answers, clock));
        List<Part> parts = List.of(
                new AnswerPages(board, findings, answers, visits, deliveries.links(), clock),
                new StoryPages(board, findings, answers, thresholds, clock),
                new WhyPages(board, store, findings, thresholds),
                new PeoplePages(board, deliveries, door, clock),
                new TuningPages(board, findings, answers, thresholds, desk, clock),
                new VisitPages(board, visits, clock),
                new SheetFiles(board, wishes.habits()),
                new NodePages(new StoredNodes(store, told, instructions, link, clock)));
        Pages pages = opened(new Pages(board, entrance(), clock, parts));
        int port = openPort(pages);
        publisher.start();
        opened(loop.start(pages::announce));
        opened(source).start();
        deliveries.start(new NotAnswered(board::tonight, answers));
        wishes.outside()
                .checkIn()
                .ifPresent(address ->
                        opened(new CheckIn(address, loop::well, clock)).start());
        return port;
    }

    private Deliveries.Equipment equipment(BrokerPublisher publisher, Store store, InstantSource clock) {
        StoredCurves curves = new StoredCurves(store);
        Artist artist = (name, onset) ->
                store.line().trap(name).map(trap -> CurvePicture.png(curves, trap, onset, clock.instant()));
        return new Deliveries.Equipment(
                wishes.outside().mail(),
                Optional.of(Broker.of(publisher)),
                wishes.outside().pagesAddress(),
                Optional.of(artist));
    }

    private Entrance entrance() {
        boolean encrypted = wishes.outside()
                .pagesAddress()
                .filter(address -> "https".equals(address.getScheme()))
                .isPresent();
        return new Entrance(door, wishes.openHouse(), encrypted);
    }

    private int openPort(Pages pages) {
        try {
            return pages.start(pagesHost, wishes.pagesPort());
        } catch (RuntimeException e) {
            throw Failure.of("The pages cannot listen on " + pagesHost + ":" + wishes.pagesPort() + " ("
                    + e.getMessage() + "). If Duskline runs already, look there; otherwise take another port"
                    + " (pages.port, or --port).");
        }
    }

    private BrokerLink link(LinkState state, Instant started) {
        Instant since = state.connectedSince().or(state::troubleAt).orElse(started);
        return new BrokerLink(state.connected(), since, broker.toString());
    }

    private <T extends AutoCloseable> T opened(T part) {
        open.push(part);
        return part;
    }

    BrokerAddress broker() {
        return broker;
    }

    /** Where a browser on this machine finds the pages. */
    String pagesAddress() {
        return "http://" + (pagesHost.equals("0.0.0.0") ? LOOPBACK : pagesHost) + ":" + pagesPort;
    }

    /** The code by which the owner's account is made in a browser on this machine; none once there is one. */
    Optional<String> ownersCode() {
        return door.hasOwner() ? Optional.empty() : Optional.of(door.ownersCode());
    }

    @Override
    public void close() {
        while (!open.isEmpty()) {
            try {
                open.pop().close();
            } catch (Exception e) {
                throw new IllegalStateException("Not everything could be put away in order: " + e.getMessage(), e);
            }
        }
    }
}
