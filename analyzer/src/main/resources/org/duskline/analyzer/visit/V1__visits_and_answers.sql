-- Times are Unix milliseconds. An absent value is NULL. Rows are only ever added.

-- One edition of a visit a row; the highest edition is what stands.
CREATE TABLE visit_edition (
    entry      INTEGER PRIMARY KEY AUTOINCREMENT,
    visit      INTEGER NOT NULL,
    edition    INTEGER NOT NULL,
    trap       TEXT    NOT NULL,
    kind       TEXT    NOT NULL,
    at_ms      INTEGER NOT NULL,
    made_by    TEXT    NOT NULL,
    mass_kg    REAL,
    where_to   TEXT,
    note       TEXT    NOT NULL,
    written_ms INTEGER NOT NULL,
    written_by TEXT    NOT NULL,
    struck     INTEGER NOT NULL DEFAULT 0,
    token      TEXT UNIQUE,
    UNIQUE (visit, edition)
);
CREATE INDEX visit_edition_by_trap ON visit_edition (trap, at_ms);

CREATE TABLE answer (
    entry    INTEGER PRIMARY KEY AUTOINCREMENT,
    trap     TEXT    NOT NULL,
    kind     TEXT    NOT NULL,
    onset_ms INTEGER NOT NULL,
    said     TEXT    NOT NULL,
    note     TEXT    NOT NULL,
    at_ms    INTEGER NOT NULL,
    given_by TEXT    NOT NULL,
    token    TEXT UNIQUE
);
CREATE INDEX answer_by_finding ON answer (trap, kind, onset_ms, at_ms);
