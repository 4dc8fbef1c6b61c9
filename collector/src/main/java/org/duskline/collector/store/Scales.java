package org.duskline.collector.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.Map;

/** The scales of the nodes that one read meets, each looked up once. */
final class Scales {
    private final Connection connection;
    private final Map<String, Scale> known = new HashMap<>();

    Scales(Connection connection) {
        this.connection = connection;
    }

    Scale of(String node) throws SQLException {
        Scale scale = known.get(node);
        if (scale == null) {
            scale = new Scale(SampleLog.calibrations(connection, node));
            known.put(node, scale);
        }
        return scale;
    }
}
