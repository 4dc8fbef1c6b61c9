package org.duskline.web.page;

import io.javalin.Javalin;
import io.javalin.config.Key;
import io.javalin.http.HandlerType;
import io.javalin.http.staticfiles.Location;
import java.time.InstantSource;
import java.util.List;
import java.util.function.Consumer;
import org.duskline.web.page.board.Watchboard;

/**
 * The web server: pages, API, live feed. Wired by the constructor, which starts nothing; {@link #start} opens the port.
 */
public final class Pages implements AutoCloseable {
    /** Where a route finds whom to tell that something was written down. */
    static final Key<Consumer<News>> NEWS = new Key<>("news");

    private final LiveFeed feed = new LiveFeed();
    private final Javalin server;

    /**
     * @param board what the pages show; read on every request
     * @param entrance who may see them
     * @param clock the present, as the pages tell it
     * @param parts further pages, each with routes of its own
     */
    public Pages(Watchboard board, Entrance entrance, InstantSource clock, List<Part> parts) {
        Routes routes = new Routes(board, entrance, clock, feed, parts);
        server = Javalin.create(config -> {
            config.startup.showJavalinBanner = false;
            config.http.generateEtags = true;
            config.appData(NEWS, feed::tell);
            config.fileRenderer(new Templates());
            config.staticFiles.enableWebjars();
            config.staticFiles.add(files -> {
                files.hostedPath = "/assets";
                files.directory = "/org/duskline/web/page/assets";
                files.location = Location.CLASSPATH;
            });
            routes.register(config.routes);
        });
    }

    /**
     * Opens the port and returns once it answers.
     *
     * @param host the address to bind to
     * @param port the port, 0 for any free one
     * @return the port it listens on
     */
    public int start(String host, int port) {
        server.start(host, port);
        return server.port();
    }

    /** Tells everybody who has a page open. May be called from any thread; returns at once. */
    public void announce(News news) {
        feed.tell(news);
    }

    /** The path of every route, for the test that all of them are described. */
    List<String> paths() {
        return server.unsafe.internalRouter.allHttpHandlers().stream()
                .filter(handler -> handler.endpoint.method == HandlerType.GET)
                .map(handler -> handler.endpoint.path)
                .toList();
    }

    /** Closes the live connections and the port. */
    public void stop() {
        feed.close();
        server.stop();
    }

    @Override
    public void close() {
        stop();
    }
}
