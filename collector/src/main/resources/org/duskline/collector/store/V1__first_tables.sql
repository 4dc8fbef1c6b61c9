-- Times are Unix milliseconds unless the name says otherwise. An absent value is NULL.

CREATE TABLE node (
    id             INTEGER PRIMARY KEY,
    name           TEXT    NOT NULL UNIQUE,
    first_heard_ms INTEGER NOT NULL,
    last_heard_ms  INTEGER NOT NULL,
    status         TEXT CHECK (status IN ('online', 'offline')),
    status_ms      INTEGER
);

-- One message's worth of samples; the id counts in the order of storing and is what readers keep as their cursor.
CREATE TABLE pack (
    id          INTEGER PRIMARY KEY,
    node        INTEGER NOT NULL REFERENCES node (id),
    received_ms INTEGER NOT NULL,
    first_ms    INTEGER NOT NULL,
    last_ms     INTEGER NOT NULL,
    samples     INTEGER NOT NULL,
    boot        INTEGER,
    seq         INTEGER,
    digest      INTEGER NOT NULL,
    clock_run   INTEGER REFERENCES clock_run (id)
);
-- Finds an earlier delivery of the same pack.
CREATE INDEX pack_by_content ON pack (node, digest, received_ms);
CREATE INDEX pack_by_clock_run ON pack (clock_run) WHERE clock_run IS NOT NULL;

-- Clustered by node and time, so that a season is one stretch of the file. A twin tells the same instant otherwise.
CREATE TABLE sample (
    node          INTEGER NOT NULL,
    time_ms       INTEGER NOT NULL,
    twin          INTEGER NOT NULL,
    pack          INTEGER NOT NULL,
    received_ms   INTEGER NOT NULL,
    bees_in       REAL,
    bees_out      REAL,
    weight_kg     REAL,
    load_count    REAL,
    weight_sd_kg  REAL,
    cell_c        REAL,
    box_c         REAL,
    humidity_pct  REAL,
    battery_v     REAL,
    boot          INTEGER,
    seq           INTEGER,
    marks         INTEGER NOT NULL,
    PRIMARY KEY (node, time_ms, twin)
) WITHOUT ROWID;

-- A node's clock that was never set, or wrongly: stamp + offset = time, from one start of the node to the next.
CREATE TABLE clock_run (
    id        INTEGER PRIMARY KEY,
    node      INTEGER NOT NULL REFERENCES node (id),
    boot      INTEGER NOT NULL,
    seq       INTEGER NOT NULL,
    first_s   REAL    NOT NULL,
    newest_s  REAL    NOT NULL,
    offset_ms INTEGER NOT NULL
);
CREATE INDEX clock_run_by_node ON clock_run (node, id);

CREATE TABLE damage (
    id          INTEGER PRIMARY KEY,
    received_ms INTEGER NOT NULL,
    topic       TEXT    NOT NULL,
    payload     BLOB    NOT NULL,
    reason      TEXT    NOT NULL,
    detail      TEXT    NOT NULL
);
CREATE INDEX damage_by_receipt ON damage (received_ms, topic);

CREATE TABLE trap (
    name      TEXT PRIMARY KEY,
    latitude  REAL NOT NULL,
    longitude REAL NOT NULL,
    zone      TEXT NOT NULL
) WITHOUT ROWID;

-- Open ends are the smallest and the largest integer.
CREATE TABLE fitting (
    node     TEXT    NOT NULL,
    from_ms  INTEGER NOT NULL,
    until_ms INTEGER NOT NULL,
    trap     TEXT    NOT NULL REFERENCES trap (name) ON UPDATE CASCADE,
    fitted   TEXT    NOT NULL CHECK (fitted IN ('both', 'counter', 'scale')),
    PRIMARY KEY (node, from_ms),
    CHECK (from_ms < until_ms)
) WITHOUT ROWID;
CREATE INDEX fitting_by_trap ON fitting (trap, from_ms);

CREATE TABLE calibration (
    node          TEXT    NOT NULL,
    from_ms       INTEGER NOT NULL,
    offset_counts REAL    NOT NULL,
    counts_per_kg REAL    NOT NULL,
    PRIMARY KEY (node, from_ms)
) WITHOUT ROWID;
