package org.duskline.web.deliver;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.locks.LockSupport;

/** The other end of a webhook, in a good or a bad mood. */
final class Receiver implements AutoCloseable {
    static final String SECRET = "a secret of the test";

    private static final Duration THOUGHT = Duration.ofMillis(500);

    enum Mood {
        TAKES,
        /** It takes all the same, but thinks about it first. */
        TAKES_SLOWLY,
        ANSWERS_500,
        NEVER_ANSWERS
    }

    /** What came, whether taken or not. */
    record Post(String id, String time, String signature, String body, Mood mood) {
        boolean taken() {
            return mood == Mood.TAKES || mood == Mood.TAKES_SLOWLY;
        }

        JsonNode json() {
            try {
                return new ObjectMapper().readTree(body);
            } catch (IOException e) {
                throw new IllegalStateException(body, e);
            }
        }
    }

    private final HttpServer server;
    private final ExecutorService threads = Executors.newCachedThreadPool();
    private final CountDownLatch end = new CountDownLatch(1);
    private final List<Post> posts = Collections.synchronizedList(new ArrayList<>());
    private volatile Mood mood = Mood.TAKES;

    Receiver() throws IOException {
        server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.setExecutor(threads);
        server.createContext("/", this::take);
        server.start();
    }

    private void take(HttpExchange exchange) throws IOException {
        Mood now = mood;
        String body = new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8);
        posts.add(new Post(
                exchange.getRequestHeaders().getFirst("Duskline-Id"),
                exchange.getRequestHeaders().getFirst("Duskline-Time"),
                exchange.getRequestHeaders().getFirst("Duskline-Signature"),
                body,
                now));
        if (now == Mood.NEVER_ANSWERS) {
            await();
            exchange.close();
            return;
        }
        if (now == Mood.TAKES_SLOWLY) {
            LockSupport.parkNanos(THOUGHT.toNanos());
        }
        boolean floods = now == Mood.ANSWERS_500;
        byte[] answer = (floods ? "the cellar is flooded" : "thanks").getBytes(StandardCharsets.UTF_8);
        exchange.sendResponseHeaders(floods ? 500 : 200, answer.length);
        exchange.getResponseBody().write(answer);
        exchange.close();
    }

    private void await() {
        try {
            end.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    void be(Mood next) {
        mood = next;
    }

    List<Post> posts() {
        return List.copyOf(posts);
    }

    List<Post> taken() {
        return posts().stream().filter(Post::taken).toList();
    }

    String address() {
        return "http://127.0.0.1:" + server.getAddress().getPort() + "/alerts";
    }

    @Override
    public void close() {
        end.countDown();
        server.stop(0);
        threads.shutdownNow();
    }
}
