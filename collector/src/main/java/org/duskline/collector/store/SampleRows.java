package org.duskline.collector.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import org.duskline.collector.wire.Sample;

/** Reads a row of the sample table. */
final class SampleRows {
    /** What {@link #read} expects, as columns 1 to 14. */
    static final String COLUMNS = "time_ms, sample.received_ms, bees_in, bees_out, weight_kg, load_count, weight_sd_kg,"
            + " cell_c, box_c, humidity_pct, battery_v, sample.boot, sample.seq, marks";

    private SampleRows() {}

    static Sample read(ResultSet row) throws SQLException {
        return new Sample(
                row.getLong(1),
                row.getLong(2),
                value(row, 3),
                value(row, 4),
                value(row, 5),
                value(row, 6),
                value(row, 7),
                value(row, 8),
                value(row, 9),
                value(row, 10),
                value(row, 11),
                count(row, 12),
                count(row, 13),
                row.getInt(14));
    }

    private static double value(ResultSet row, int column) throws SQLException {
        double value = row.getDouble(column);
        // Only a zero can stand for an absent value; asking about every other one costs a third of the reading time.
        return value == 0 && row.wasNull() ? Double.NaN : value;
    }

    private static long count(ResultSet row, int column) throws SQLException {
        long count = row.getLong(column);
        return count == 0 && row.wasNull() ? -1 : count;
    }
}
