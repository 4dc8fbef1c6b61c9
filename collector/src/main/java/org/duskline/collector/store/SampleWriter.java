package org.duskline.collector.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.util.ArrayList;
import java.util.List;
import org.duskline.collector.wire.Sample;

/** Puts single samples into their table, each once. */
final class SampleWriter {
    /** What became of a sample. */
    enum Outcome {
        ADDED,
        MERGED,
        REPEAT
    }

    private static final String COLUMNS = "node, time_ms, twin, pack, received_ms, bees_in, bees_out, weight_kg,"
            + " load_count, weight_sd_kg, cell_c, box_c, humidity_pct, battery_v, boot, seq, marks";

    private final PreparedStatement insert;
    private final PreparedStatement sameInstant;
    private final PreparedStatement merge;
    private final PreparedStatement ofRun;
    private final PreparedStatement remove;

    SampleWriter(Connection connection) throws SQLException {
        insert = connection.prepareStatement("INSERT INTO sample (" + COLUMNS
                + ") VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT DO NOTHING");
        sameInstant = connection.prepareStatement(
                "SELECT " + SampleRows.COLUMNS + ", twin FROM sample WHERE node = ? AND time_ms = ? ORDER BY twin");
        merge = connection.prepareStatement("UPDATE sample SET pack = ?, bees_in = ?, bees_out = ?, weight_kg = ?,"
                + " load_count = ?, weight_sd_kg = ?, cell_c = ?, box_c = ?, humidity_pct = ?, battery_v = ?,"
                + " marks = ? WHERE node = ? AND time_ms = ? AND twin = ?");
        ofRun = connection.prepareStatement("SELECT " + SampleRows.COLUMNS + ", twin FROM sample WHERE node = ?1"
                + " AND time_ms BETWEEN (SELECT min(first_ms) FROM pack WHERE clock_run = ?2)"
                + " AND (SELECT max(last_ms) FROM pack WHERE clock_run = ?2)"
                + " AND pack IN (SELECT id FROM pack WHERE clock_run = ?2) AND marks & ?3 <> 0");
        remove = connection.prepareStatement("DELETE FROM sample WHERE node = ? AND time_ms = ? AND twin = ?");
    }

    Outcome put(long node, long pack, Sample sample) throws SQLException {
        if (insert(node, pack, sample, 0)) {
            return Outcome.ADDED;
        }
        List<Sample> known = sameInstant(node, sample.timeMillis());
        for (int twin = 0; twin < known.size(); twin++) {
            Sample other = known.get(twin);
            if (SampleMerge.addsNothing(other, sample)) {
                return Outcome.REPEAT;
            }
            if (SampleMerge.agrees(other, sample)) {
                update(node, pack, SampleMerge.merged(other, sample), twin);
                return Outcome.MERGED;
            }
        }
        insert(node, pack, sample, known.size());
        return Outcome.ADDED;
    }

    /** Moves the samples that a wrong clock's run has brought so far to earlier times and into the pack that showed it. */
    int move(long node, long run, long earlierByMillis, long pack, Span span) throws SQLException {
        List<Sample> moving = new ArrayList<>();
        List<Integer> twins = new ArrayList<>();
        ofRun.setLong(1, node);
        ofRun.setLong(2, run);
        ofRun.setInt(3, org.duskline.collector.wire.Mark.CLOCK_REPAIRED.bit());
        try (ResultSet row = ofRun.executeQuery()) {
            while (row.next()) {
                moving.add(SampleRows.read(row));
                twins.add(row.getInt("twin"));
            }
        }
        for (int i = 0; i < moving.size(); i++) {
            remove.setLong(1, node);
            remove.setLong(2, moving.get(i).timeMillis());
            remove.setInt(3, twins.get(i));
            remove.executeUpdate();
        }
        for (Sample sample : moving) {
            Sample earlier = SampleMerge.at(sample, sample.timeMillis() - earlierByMillis);
            put(node, pack, earlier);
            span.include(earlier.timeMillis());
        }
        return moving.size();
    }

    private List<Sample> sameInstant(long node, long timeMillis) throws SQLException {
        sameInstant.setLong(1, node);
        sameInstant.setLong(2, timeMillis);
        List<Sample> known = new ArrayList<>(2);
        try (ResultSet row = sameInstant.executeQuery()) {
            while (row.next()) {
                known.add(SampleRows.read(row));
            }
        }
        return known;
    }

    private boolean insert(long node, long pack, Sample sample, int twin) throws SQLException {
        insert.setLong(1, node);
        insert.setLong(2, sample.timeMillis());
        insert.setInt(3, twin);
        insert.setLong(4, pack);
        insert.setLong(5, sample.receivedMillis());
        setValues(insert, 6, sample);
        setCount(insert, 15, sample.boot());
        setCount(insert, 16, sample.seq());
        insert.setInt(17, sample.marks());
        return insert.executeUpdate() > 0;
    }

    private void update(long node, long pack, Sample sample, int twin) throws SQLException {
        merge.setLong(1, pack);
        setValues(merge, 2, sample);
        merge.setInt(11, sample.marks());
        merge.setLong(12, node);
        merge.setLong(13, sample.timeMillis());
        merge.setInt(14, twin);
        merge.executeUpdate();
    }

    private static void setValues(PreparedStatement statement, int first, Sample sample) throws SQLException {
        setValue(statement, first, sample.in());
        setValue(statement, first + 1, sample.out());
        setValue(statement, first + 2, sample.weightKg());
        setValue(statement, first + 3, sample.loadCount());
        setValue(statement, first + 4, sample.weightSdKg());
        setValue(statement, first + 5, sample.cellCelsius());
        setValue(statement, first + 6, sample.boxCelsius());
        setValue(statement, first + 7, sample.humidityPercent());
        setValue(statement, first + 8, sample.batteryVolts());
    }

    private static void setValue(PreparedStatement statement, int index, double value) throws SQLException {
        if (Double.isNaN(value)) {
            statement.setNull(index, Types.REAL);
        } else {
            statement.setDouble(index, value);
        }
    }

    static void setCount(PreparedStatement statement, int index, long count) throws SQLException {
        if (count < 0) {
            statement.setNull(index, Types.INTEGER);
        } else {
            statement.setLong(index, count);
        }
    }
}
