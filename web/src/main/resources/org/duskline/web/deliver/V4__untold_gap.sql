-- A time in which nobody was watching and of which nobody has been told yet. It outlives a second restart that comes before
-- the telling.
CREATE TABLE untold_gap (
    one INTEGER PRIMARY KEY CHECK (one = 1),
    from_ms INTEGER NOT NULL,
    until_ms INTEGER NOT NULL,
    packs INTEGER NOT NULL
) STRICT;
