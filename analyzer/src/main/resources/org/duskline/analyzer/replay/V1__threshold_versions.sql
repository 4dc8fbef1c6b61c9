-- Thresholds as they were adopted, first to last; version 1, the defaults, stands in the program. Rows are never changed:
-- going back adopts the old numbers anew. A trap's name marks an exception, which holds until a day.
CREATE TABLE threshold_version (
    version    INTEGER PRIMARY KEY,
    trap       TEXT,
    thresholds TEXT    NOT NULL,
    at_ms      INTEGER NOT NULL,
    until_ms   INTEGER,
    adopted_by TEXT    NOT NULL,
    why        TEXT    NOT NULL,
    changed    TEXT    NOT NULL,
    predicted  TEXT    NOT NULL,
    back_to    INTEGER
);
