package org.duskline.collector.intake;

import java.nio.file.Path;

class EmbeddedBrokerSourceTest extends BrokerSourceContract {
    @Override
    AutoCloseable startBroker(Path kept, int onPort) {
        return EmbeddedBroker.start(kept, "127.0.0.1", onPort);
    }
}
