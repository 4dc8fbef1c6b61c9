package org.duskline.collector.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

/** The file and how it is opened. WAL, so that readers and the writer never wait for each other. */
final class Database {
    private static final int BUSY_MILLIS = 30_000;
    private static final int CACHE_KIBIBYTES = 8_192;

    private final Path file;
    private final SQLiteDataSource source;

    Database(Path file) {
        this.file = file;
        SQLiteConfig config = new SQLiteConfig();
        config.setJournalMode(SQLiteConfig.JournalMode.WAL);
        // A committed reading must outlive a power cut: it is acknowledged to the broker right after.
        config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
        config.setBusyTimeout(BUSY_MILLIS);
        config.setCacheSize(-CACHE_KIBIBYTES);
        config.enforceForeignKeys(true);
        // The driver would otherwise run a query for the generated key behind every single insert.
        config.setGetGeneratedKeys(false);
        // A transaction that reads first and writes later could otherwise fail in its middle when another wrote.
        config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
        this.source = new SQLiteDataSource(config);
        source.setUrl("jdbc:sqlite:" + file);
    }

    SQLiteDataSource source() {
        return source;
    }

    void prepare() {
        Path folder = file.toAbsolutePath().getParent();
        try {
            Files.createDirectories(folder);
            try (Connection connection = source.getConnection();
                    var statement = connection.createStatement();
                    var check = statement.executeQuery("PRAGMA schema_version")) {
                check.next();
            }
        } catch (IOException | SQLException failed) {
            throw new StoreProblem(
                    "The database " + file + " cannot be opened: " + failed.getMessage()
                            + ". Check that the folder can be written to, the disk isn't full and the file is a"
                            + " database of this program.",
                    failed);
        }
    }

    void migrate(String historyTable, String location) {
        try {
            Flyway.configure()
                    .dataSource(source)
                    .table(historyTable)
                    .locations(location)
                    .baselineOnMigrate(true)
                    .baselineVersion("0")
                    .loggers("slf4j")
                    .load()
                    .migrate();
        } catch (FlywayException failed) {
            throw new StoreProblem(
                    "The tables of " + file + " under " + historyTable + " cannot be brought up to date: "
                            + failed.getMessage()
                            + " If an older program opened a newer database, install the newer program again; otherwise"
                            + " restore the last backup.",
                    failed);
        }
    }

    StoreProblem failed(String work, SQLException cause) {
        return new StoreProblem(
                work + " failed in " + file + ": " + cause.getMessage()
                        + ". Nothing of it was kept. Check the disk's free space and the file's rights, then try again.",
                cause);
    }
}
