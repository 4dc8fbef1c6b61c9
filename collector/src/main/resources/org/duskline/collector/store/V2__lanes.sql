-- What a node's entrance counter is made of, from a day on. The keeper's word goes before the node's own.
CREATE TABLE lane_block (
    node         TEXT    NOT NULL,
    from_ms      INTEGER NOT NULL,
    lanes        INTEGER NOT NULL CHECK (lanes > 0),
    dead_time_ms INTEGER NOT NULL CHECK (dead_time_ms >= 0),
    said_by      TEXT    NOT NULL CHECK (said_by IN ('keeper', 'node')),
    PRIMARY KEY (node, from_ms)
) WITHOUT ROWID;
