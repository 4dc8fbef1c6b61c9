package org.duskline.collector.testing;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** A real Mosquitto, run as a child of the test with a folder of its own. */
public final class Mosquitto implements AutoCloseable {
    private final Path program = Needs.program("mosquitto");
    private final Path folder;
    private final int port;
    private final List<String> access;
    private Process process;

    /**
     * @param folder where configuration and sessions are kept
     * @param port where it listens, on loopback
     * @param access the lines of its configuration that say who may enter
     */
    public Mosquitto(Path folder, int port, String... access) {
        this.folder = folder;
        this.port = port;
        this.access = List.of(access);
    }

    public static Mosquitto openToAll(Path folder, int port) {
        return new Mosquitto(folder, port, "allow_anonymous true");
    }

    /** A port that nobody used a moment ago. */
    public static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        }
    }

    public int port() {
        return port;
    }

    public String address() {
        return "mqtt://127.0.0.1:" + port;
    }

    public Mosquitto start() throws Exception {
        Files.createDirectories(folder);
        Path configuration = folder.resolve("mosquitto.conf");
        List<String> lines = new ArrayList<>(List.of(
                "user " + System.getProperty("user.name"),
                "persistence true",
                "persistence_location " + folder + "/",
                "max_queued_messages 0",
                "listener " + port + " 127.0.0.1"));
        lines.addAll(access);
        Files.write(configuration, lines);
        process = new ProcessBuilder(program.toString(), "-c", configuration.toString())
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(
                        folder.resolve("mosquitto.log").toFile()))
                .start();
        Await.until("Mosquitto listens on " + port, this::listens);
        return this;
    }

    private boolean listens() throws IOException {
        if (!process.isAlive()) {
            throw new AssertionError("Mosquitto ended: " + Files.readString(folder.resolve("mosquitto.log")));
        }
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
            return socket.isConnected();
        } catch (IOException e) {
            return false;
        }
    }

    /** Ends it in good order: sessions and messages are kept in the folder. */
    public void stop() throws InterruptedException {
        process.destroy();
        if (!process.waitFor(30, TimeUnit.SECONDS)) {
            process.destroyForcibly().waitFor();
        }
    }

    @Override
    public void close() throws InterruptedException {
        if (process != null) {
            stop();
        }
    }
}
