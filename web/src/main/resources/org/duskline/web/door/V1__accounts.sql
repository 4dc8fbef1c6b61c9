-- Times are Unix milliseconds. Of codes, sessions and feeds only a hash is kept, so that nobody who reads this file can
-- come in with what stands here.
CREATE TABLE account (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL COLLATE NOCASE UNIQUE,
    role TEXT NOT NULL,
    password_hash TEXT NOT NULL,
    made_ms INTEGER NOT NULL
) STRICT;

CREATE TABLE visitor_session (
    mark TEXT PRIMARY KEY,
    account INTEGER NOT NULL REFERENCES account (id),
    begun_ms INTEGER NOT NULL,
    ends_ms INTEGER NOT NULL
) STRICT;

CREATE INDEX visitor_session_by_account ON visitor_session (account);

-- A code by which somebody makes an account once. The owner's has no name: whoever holds it chooses one.
CREATE TABLE invitation (
    mark TEXT PRIMARY KEY,
    name TEXT,
    role TEXT NOT NULL,
    ends_ms INTEGER NOT NULL
) STRICT;

CREATE TABLE door_key (
    one INTEGER PRIMARY KEY CHECK (one = 1),
    form_key TEXT NOT NULL,
    feed_key TEXT NOT NULL
) STRICT;
