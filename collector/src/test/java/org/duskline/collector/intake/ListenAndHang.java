package org.duskline.collector.intake;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.InstantSource;
import java.util.Random;
import java.util.concurrent.CountDownLatch;

/** Listens, writes down that messages came, and then hangs before they can be acknowledged; made to be killed. */
final class ListenAndHang {
    private ListenAndHang() {}

    public static void main(String[] arguments) throws InterruptedException {
        Path seen = Path.of(arguments[2]);
        CountDownLatch never = new CountDownLatch(1);
        MessageSink hanging = batch -> {
            try {
                Files.writeString(seen, batch.size() + "\n", StandardOpenOption.CREATE, StandardOpenOption.APPEND);
                never.await();
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        };
        new BrokerSource(
                        BrokerAddress.of(arguments[0]),
                        arguments[1],
                        new Topics("traps"),
                        hanging,
                        InstantSource.system(),
                        new Random(1))
                .start();
        never.await();
    }
}
