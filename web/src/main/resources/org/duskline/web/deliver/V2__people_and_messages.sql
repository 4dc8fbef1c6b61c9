-- Times are Unix milliseconds.

CREATE TABLE person (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL UNIQUE,
    zone TEXT NOT NULL,
    quiet_from TEXT,
    quiet_until TEXT
) STRICT;

-- A removed channel keeps its row, because what went through it is history.
CREATE TABLE channel (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    person INTEGER NOT NULL REFERENCES person (id),
    means TEXT NOT NULL,
    address TEXT NOT NULL,
    secret TEXT NOT NULL,
    kinds TEXT NOT NULL,
    removed INTEGER NOT NULL DEFAULT 0,
    failing_since_ms INTEGER,
    death_told INTEGER NOT NULL DEFAULT 0
) STRICT;

-- What is put together and sent at once. Its number makes the message's identity, the same at every try.
CREATE TABLE parcel (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    channel INTEGER NOT NULL REFERENCES channel (id),
    made_ms INTEGER NOT NULL,
    next_ms INTEGER NOT NULL,
    tries INTEGER NOT NULL DEFAULT 0,
    state TEXT NOT NULL,
    words TEXT NOT NULL DEFAULT '',
    done_ms INTEGER
) STRICT;

CREATE INDEX parcel_by_channel ON parcel (channel, state);

-- One step of one happening for one channel; a channel belongs to one person.
CREATE TABLE alert (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    channel INTEGER NOT NULL REFERENCES channel (id),
    thread TEXT NOT NULL,
    step TEXT NOT NULL,
    opens INTEGER NOT NULL,
    stage TEXT NOT NULL,
    trap TEXT,
    kind TEXT,
    title TEXT NOT NULL,
    words TEXT NOT NULL,
    object TEXT NOT NULL,
    written_ms INTEGER NOT NULL,
    due_ms INTEGER NOT NULL,
    parcel INTEGER REFERENCES parcel (id),
    dropped TEXT,
    UNIQUE (channel, thread, step)
) STRICT;

CREATE INDEX alert_open ON alert (channel, due_ms) WHERE parcel IS NULL AND dropped IS NULL;
CREATE INDEX alert_by_parcel ON alert (parcel);
CREATE INDEX alert_by_trap ON alert (channel, trap, kind, written_ms);

-- The installation's own random name and the key that signs links.
CREATE TABLE keyring (
    one INTEGER PRIMARY KEY CHECK (one = 1),
    name TEXT NOT NULL,
    link_key TEXT NOT NULL
) STRICT;

CREATE TABLE pulse (
    one INTEGER PRIMARY KEY CHECK (one = 1),
    at_ms INTEGER NOT NULL
) STRICT;
