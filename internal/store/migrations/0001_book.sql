-- The book. Times are UTC milliseconds. A closed set is a number whose words
-- stand in the Go type named behind the column. 'collective' is part of every
-- key that people can name, so that nothing of one can be found from another.

CREATE TABLE book (
    one INTEGER PRIMARY KEY CHECK (one = 1),
    id  TEXT NOT NULL CHECK (length(id) >= 20) -- random; part of every idempotency key
) STRICT;

CREATE TABLE collective (
    id         INTEGER PRIMARY KEY,
    name       TEXT    NOT NULL,
    founded_ms INTEGER NOT NULL
) STRICT;

CREATE TABLE member (
    collective INTEGER NOT NULL REFERENCES collective (id),
    number     INTEGER NOT NULL CHECK (number > 0),
    name       TEXT    NOT NULL, -- as shown; empty once forgotten
    folded     TEXT    NOT NULL, -- the name as compared
    role       INTEGER NOT NULL CHECK (role IN (1, 2)), -- kitchen.Role
    joined_ms  INTEGER NOT NULL,
    left_ms    INTEGER,          -- NULL: still a member
    PRIMARY KEY (collective, number)
) STRICT, WITHOUT ROWID;

CREATE INDEX member_name ON member (collective, folded);

CREATE TABLE account (
    door       TEXT    NOT NULL,
    external   TEXT    NOT NULL, -- the platform's identifier of the person
    collective INTEGER NOT NULL,
    member     INTEGER NOT NULL,
    PRIMARY KEY (door, external, collective),
    FOREIGN KEY (collective, member) REFERENCES member (collective, number)
) STRICT, WITHOUT ROWID;

CREATE INDEX account_member ON account (collective, member);

CREATE TABLE room (
    id         INTEGER PRIMARY KEY,
    collective INTEGER NOT NULL REFERENCES collective (id),
    door       TEXT    NOT NULL,
    address    TEXT    NOT NULL, -- the platform's identifier
    thread     TEXT    NOT NULL, -- the topic to post into; empty: none
    kind       INTEGER NOT NULL CHECK (kind IN (1, 2, 3)), -- RoomKind
    member     INTEGER,          -- whose private room; NULL: a room of all
    held_ms    INTEGER NOT NULL DEFAULT 0, -- nothing is sent there before
    joined_ms  INTEGER NOT NULL,
    closed_ms  INTEGER,          -- NULL: open
    UNIQUE (door, address),
    UNIQUE (collective, id),
    CHECK ((kind = 3) = (member IS NOT NULL)),
    FOREIGN KEY (collective, member) REFERENCES member (collective, number)
) STRICT;

CREATE INDEX room_member ON room (collective, member) WHERE member IS NOT NULL;

CREATE TABLE code (
    hash       BLOB    PRIMARY KEY,
    purpose    INTEGER NOT NULL CHECK (purpose IN (1, 2)), -- Purpose
    collective INTEGER REFERENCES collective (id), -- NULL: one to be founded
    expires_ms INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE INDEX code_expires ON code (expires_ms);

CREATE TABLE code_try (
    door    TEXT    NOT NULL,
    address TEXT    NOT NULL,
    hour    INTEGER NOT NULL, -- hours since 1970
    tries   INTEGER NOT NULL,
    PRIMARY KEY (hour, door, address)
) STRICT, WITHOUT ROWID;

CREATE TABLE inbox (
    id         INTEGER PRIMARY KEY,
    door       TEXT    NOT NULL,
    event      TEXT    NOT NULL, -- the platform's identifier of the event
    collective INTEGER REFERENCES collective (id), -- NULL: not settled yet
    room       INTEGER,
    member     INTEGER,
    at_ms      INTEGER NOT NULL, -- when it was sent
    arrived_ms INTEGER NOT NULL,
    kind       TEXT    NOT NULL DEFAULT '', -- the responder's word for what it was
    said       TEXT    NOT NULL DEFAULT '', -- what was understood, as a sentence
    asked      TEXT    NOT NULL DEFAULT '', -- the question that waits for an answer
    UNIQUE (door, event),
    FOREIGN KEY (collective, room) REFERENCES room (collective, id),
    FOREIGN KEY (collective, member) REFERENCES member (collective, number)
) STRICT;

CREATE INDEX inbox_speaker ON inbox (collective, member, room, id);
CREATE INDEX inbox_kind ON inbox (collective, room, kind, id) WHERE kind <> '';

CREATE TABLE entry (
    collective INTEGER NOT NULL REFERENCES collective (id),
    number     INTEGER NOT NULL CHECK (number > 0),
    subject    TEXT    NOT NULL, -- what it is about: kitchen, run/12
    member     INTEGER,          -- NULL: nobody in particular
    room       INTEGER,
    inbox      INTEGER REFERENCES inbox (id),
    at_ms      INTEGER NOT NULL, -- when it happened
    written_ms INTEGER NOT NULL,
    kind       TEXT    NOT NULL,
    version    INTEGER NOT NULL CHECK (version > 0),
    body       TEXT    NOT NULL, -- JSON
    said       TEXT,             -- what was typed; NULL: nothing, or blanked
    salt       BLOB    NOT NULL, -- of the digest; empty once blanked
    digest     BLOB    NOT NULL CHECK (length(digest) = 32),
    hash       BLOB    NOT NULL CHECK (length(hash) = 32), -- over this entry and the hash before
    struck_by  INTEGER,          -- derived: the entry that took this one back
    PRIMARY KEY (collective, number),
    FOREIGN KEY (collective, member) REFERENCES member (collective, number),
    FOREIGN KEY (collective, room) REFERENCES room (collective, id)
) STRICT, WITHOUT ROWID;

CREATE INDEX entry_subject ON entry (collective, subject, number);
CREATE INDEX entry_speaker ON entry (collective, member, room, number);
CREATE INDEX entry_inbox ON entry (inbox) WHERE inbox IS NOT NULL;

CREATE TABLE outbox (
    id         INTEGER PRIMARY KEY, -- never deleted, so never used twice
    collective INTEGER NOT NULL,
    room       INTEGER NOT NULL,
    rank       INTEGER NOT NULL CHECK (rank IN (1, 2)), -- Rank
    inbox      INTEGER REFERENCES inbox (id), -- what it answers; NULL: a ping
    about      TEXT    NOT NULL, -- the subject it speaks of, for replies to it
    slot       TEXT    NOT NULL, -- the place it stands in; empty: a post of its own
    reply_to   TEXT    NOT NULL, -- the platform's identifier of the message answered
    post       BLOB    NOT NULL, -- the responder's encoding
    wire       BLOB,             -- what a door made of it and must send again unchanged
    state      INTEGER NOT NULL CHECK (state IN (1, 2, 3, 4)), -- RowState
    attempts   INTEGER NOT NULL DEFAULT 0,
    next_ms    INTEGER NOT NULL, -- not to be tried before
    reason     TEXT    NOT NULL DEFAULT '', -- of the last failure
    external   TEXT    NOT NULL DEFAULT '', -- the platform's identifier of the post
    created_ms INTEGER NOT NULL,
    sent_ms    INTEGER,
    FOREIGN KEY (collective, room) REFERENCES room (collective, id)
) STRICT;

CREATE INDEX outbox_waiting ON outbox (room, rank, id) WHERE state = 1;
CREATE INDEX outbox_refused ON outbox (id) WHERE state = 3;
CREATE INDEX outbox_slot ON outbox (room, slot, id) WHERE slot <> '';
CREATE INDEX outbox_external ON outbox (room, external, id) WHERE external <> '';
CREATE INDEX outbox_inbox ON outbox (inbox) WHERE inbox IS NOT NULL;

CREATE TABLE ping (
    collective INTEGER NOT NULL REFERENCES collective (id),
    key        TEXT    NOT NULL, -- run/12/hold-over
    due_ms     INTEGER NOT NULL,
    kind       INTEGER NOT NULL CHECK (kind > 0),             -- kitchen.PingKind
    loudness   INTEGER NOT NULL CHECK (loudness IN (1, 2, 3, 4)), -- kitchen.Loudness
    member     INTEGER,          -- for whom; NULL: for the room
    room       INTEGER,          -- NULL: the home room
    about      TEXT    NOT NULL, -- the subject it belongs to
    fired_ms   INTEGER,          -- NULL: waiting
    PRIMARY KEY (collective, key),
    FOREIGN KEY (collective, member) REFERENCES member (collective, number),
    FOREIGN KEY (collective, room) REFERENCES room (collective, id)
) STRICT, WITHOUT ROWID;

CREATE INDEX ping_due ON ping (due_ms) WHERE fired_ms IS NULL;

-- Derived from the entries about run/12, to find a run by what is asked for.
CREATE TABLE run (
    collective INTEGER NOT NULL REFERENCES collective (id),
    number     INTEGER NOT NULL CHECK (number > 0),
    begun_ms   INTEGER NOT NULL,
    cook       INTEGER,          -- NULL: nobody named
    cooker     TEXT    NOT NULL,
    turn       INTEGER,          -- the turn of the plan it was put on from; NULL: none
    state      INTEGER NOT NULL CHECK (state IN (1, 2, 3)), -- RunState
    PRIMARY KEY (collective, number)
) STRICT, WITHOUT ROWID;

CREATE INDEX run_open ON run (collective, number) WHERE state = 1;
CREATE INDEX run_cook ON run (collective, cook, number);
CREATE INDEX run_turn ON run (collective, turn, number) WHERE turn IS NOT NULL;

CREATE TABLE note (
    owner TEXT NOT NULL, -- a door, or a part of the program
    key   TEXT NOT NULL,
    value BLOB NOT NULL,
    PRIMARY KEY (owner, key)
) STRICT, WITHOUT ROWID;
