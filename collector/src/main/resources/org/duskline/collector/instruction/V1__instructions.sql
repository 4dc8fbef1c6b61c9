-- Times are Unix milliseconds. An absent value is NULL.

-- What each node was told, one row a revision. Those who asked are named; an empty name is the program itself.
CREATE TABLE instruction (
    node           TEXT    NOT NULL,
    revision       INTEGER NOT NULL,
    asked_ms       INTEGER NOT NULL,
    asked_by       TEXT    NOT NULL,
    period_s       INTEGER NOT NULL,
    quick_period_s INTEGER NOT NULL,
    quick          TEXT    NOT NULL CHECK (quick IN ('auto', 'on', 'off')),
    tare           INTEGER NOT NULL,
    tried_ms       INTEGER,
    sent_ms        INTEGER,
    settled_ms     INTEGER,
    refused        TEXT,
    PRIMARY KEY (node, revision)
) WITHOUT ROWID;
CREATE INDEX instruction_unsent ON instruction (node, revision) WHERE sent_ms IS NULL;

-- What each node last said of its settings, as it came. The number counts in the order of storing.
CREATE TABLE acknowledgement (
    node        TEXT    PRIMARY KEY,
    number      INTEGER NOT NULL,
    received_ms INTEGER NOT NULL,
    from_store  INTEGER NOT NULL,
    payload     BLOB    NOT NULL
) WITHOUT ROWID;
CREATE INDEX acknowledgement_by_number ON acknowledgement (number);
