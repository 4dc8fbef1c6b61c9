-- What is to be told, written in one transaction with the finding that it is about. A row is never changed but for the
-- moment at which the broker confirmed it.
CREATE TABLE told (
    id INTEGER PRIMARY KEY,
    trap TEXT NOT NULL,
    kind TEXT NOT NULL,
    onset_ms INTEGER NOT NULL,
    stage TEXT NOT NULL,
    body TEXT NOT NULL,
    confirmed_ms INTEGER,
    UNIQUE (trap, kind, onset_ms, stage)
);

CREATE INDEX told_waiting ON told (id) WHERE confirmed_ms IS NULL;
