CREATE TABLE finding (
    id INTEGER PRIMARY KEY,
    trap TEXT NOT NULL,
    node TEXT NOT NULL,
    kind TEXT NOT NULL,
    onset_ms INTEGER NOT NULL,
    raised_ms INTEGER NOT NULL,
    stage TEXT NOT NULL,
    changed_ms INTEGER NOT NULL,
    probability REAL NOT NULL,
    summary TEXT NOT NULL,
    details TEXT NOT NULL,
    thresholds INTEGER NOT NULL,
    UNIQUE (trap, kind, onset_ms)
) STRICT;

CREATE INDEX finding_by_onset ON finding (onset_ms);

-- Every stage that a finding went through, in order; what was told is history and is never rewritten.
CREATE TABLE finding_step (
    id INTEGER PRIMARY KEY,
    finding INTEGER NOT NULL REFERENCES finding (id),
    stage TEXT NOT NULL,
    changed_ms INTEGER NOT NULL,
    summary TEXT NOT NULL
) STRICT;

CREATE TABLE analysis_cursor (
    one INTEGER PRIMARY KEY CHECK (one = 1),
    pack INTEGER NOT NULL
) STRICT;
