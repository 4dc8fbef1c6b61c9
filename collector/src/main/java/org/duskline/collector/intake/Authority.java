package org.duskline.collector.intake;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.Certificate;
import java.security.cert.CertificateFactory;
import java.util.Collection;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLSocketFactory;
import javax.net.ssl.TrustManagerFactory;

/** Encrypted connections that trust the certificates of one file and nothing else. */
final class Authority {
    private Authority() {}

    static SSLSocketFactory trusting(Path file) {
        try {
            TrustManagerFactory trust = TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
            trust.init(keptIn(file));
            SSLContext context = SSLContext.getInstance("TLS");
            context.init(null, trust.getTrustManagers(), null);
            return context.getSocketFactory();
        } catch (GeneralSecurityException | IOException e) {
            throw new IllegalArgumentException(
                    "The authority file " + file + " cannot be used: " + e.getMessage()
                            + ". It must be a readable file with one or more certificates in PEM form.",
                    e);
        }
    }

    private static KeyStore keptIn(Path file) throws GeneralSecurityException, IOException {
        KeyStore store = KeyStore.getInstance(KeyStore.getDefaultType());
        store.load(null, null);
        Collection<? extends Certificate> certificates;
        try (InputStream bytes = Files.newInputStream(file)) {
            certificates = CertificateFactory.getInstance("X.509").generateCertificates(bytes);
        }
        if (certificates.isEmpty()) {
            throw new IOException("it holds no certificate");
        }
        for (Certificate certificate : certificates) {
            store.setCertificateEntry("authority-" + store.size(), certificate);
        }
        return store;
    }
}
