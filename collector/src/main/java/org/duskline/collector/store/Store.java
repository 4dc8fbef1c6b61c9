package org.duskline.collector.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import org.jdbi.v3.core.Jdbi;

/**
 * The one SQLite file. One writer at a time and any number of readers, who see the last commit and never wait.
 *
 * <p>Safe for use by many threads.
 */
public final class Store implements AutoCloseable {
    private static final String HISTORY = "collector_history";
    private static final String MIGRATIONS = "classpath:org/duskline/collector/store";

    private final Database database;
    private final Jdbi jdbi;
    private final SampleLog samples;
    private Connection writing;
    private PackWriter writer;

    private Store(Database database) {
        this.database = database;
        this.jdbi = Jdbi.create(database.source());
        this.samples = new SampleLog(database);
    }

    /** Opens the file, creating it and its folder if needed, and brings the collector's tables up to date. */
    public static Store open(Path file) {
        Database database = new Database(file);
        database.prepare();
        database.migrate(HISTORY, MIGRATIONS);
        return new Store(database);
    }

    /**
     * Brings another module's tables in the same file up to date.
     *
     * @param historyTable the table that remembers which steps were taken; one a module
     * @param location where the steps lie, such as {@code classpath:org/duskline/analyzer/outbox}
     */
    public void migrate(String historyTable, String location) {
        database.migrate(historyTable, location);
    }

    /** Access for the tables that another module keeps in the file. Its transactions take the write lock at their start. */
    public Jdbi jdbi() {
        return jdbi;
    }

    /** The samples, to be read by node and time or in the order of their arrival. */
    public SampleLog samples() {
        return samples;
    }

    /** Every node that was ever heard. */
    public NodeLog nodes() {
        return new NodeLog(jdbi);
    }

    /** The keeper's line: traps, fittings and calibrations. */
    public LineBook line() {
        return new LineBook(jdbi);
    }

    /** What could not be decoded. */
    public DamageLog damages() {
        return new DamageLog(jdbi);
    }

    /** Something to be written in one transaction. */
    @FunctionalInterface
    public interface Work<T> {
        /** Writes; a failure of any kind undoes the whole. */
        T with(PackWriter writer) throws SQLException;
    }

    /** Runs the work in one transaction and returns after it is durable. One work at a time; others wait. */
    public synchronized <T> T write(Work<T> work) {
        try {
            openWriter();
            execute("BEGIN IMMEDIATE");
            T result = work.with(writer);
            writer.finish();
            execute("COMMIT");
            return result;
        } catch (SQLException failed) {
            abandon();
            throw database.failed("Storing", failed);
        } catch (RuntimeException | Error failed) {
            abandon();
            throw failed;
        }
    }

    private void openWriter() throws SQLException {
        if (writing == null) {
            writing = database.source().getConnection();
            writer = new PackWriter(writing);
        }
    }

    /** In words of its own, because the driver's commit begins the next transaction at once and so keeps the lock. */
    private void execute(String sql) throws SQLException {
        try (Statement statement = writing.createStatement()) {
            statement.execute(sql);
        }
    }

    /** After a failure all that the writer remembers is in doubt. Closing undoes the open transaction. */
    private void abandon() {
        try {
            if (writing != null) {
                writing.close();
            }
        } catch (SQLException alsoFailed) {
            // The first failure is the one to report.
            return;
        } finally {
            writing = null;
            writer = null;
        }
    }

    @Override
    public synchronized void close() {
        samples.close();
        try {
            if (writing != null) {
                writing.close();
            }
        } catch (SQLException failed) {
            throw database.failed("Closing", failed);
        } finally {
            writing = null;
            writer = null;
        }
    }
}
