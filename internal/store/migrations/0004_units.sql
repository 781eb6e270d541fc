-- What no run made is numbered and listed among the runs too.
ALTER TABLE run ADD COLUMN arrived INTEGER NOT NULL DEFAULT 0 CHECK (arrived IN (0, 1));
-- The version of what the rows of its units were derived by; 0: they never were.
ALTER TABLE run ADD COLUMN derived INTEGER NOT NULL DEFAULT 0;

CREATE INDEX run_derived ON run (collective, derived, number);

-- Derived from the entries about a load: its jars and bags as they are now. Zero
-- and empty are what nobody said.
CREATE TABLE unit (
    collective    INTEGER NOT NULL,
    run           INTEGER NOT NULL,
    number        INTEGER NOT NULL CHECK (number > 0),
    size          INTEGER NOT NULL, -- how many units the load has
    begun_ms      INTEGER NOT NULL, -- of the load
    cool_ms       INTEGER,          -- from when the load counts as cool; NULL: not so far
    arrived       INTEGER NOT NULL CHECK (arrived IN (0, 1)),
    vessel        INTEGER NOT NULL, -- kitchen.Vessel
    litres        REAL    NOT NULL,
    grams         REAL    NOT NULL,
    grain         INTEGER NOT NULL, -- grain.Kind
    name          TEXT    NOT NULL,
    place         TEXT    NOT NULL,
    spot          INTEGER NOT NULL, -- kitchen.Spot
    state         INTEGER NOT NULL, -- kitchen.UnitState
    stands        INTEGER NOT NULL CHECK (stands IN (0, 1)), -- by its state
    since_ms      INTEGER NOT NULL,
    teller        INTEGER NOT NULL, -- member by whose word; 0: nobody's
    before        INTEGER NOT NULL, -- kitchen.UnitState of a suspect one until then
    blank         INTEGER NOT NULL CHECK (blank IN (0, 1)),
    cultured      INTEGER NOT NULL CHECK (cultured IN (0, 1)),
    inoculated_ms INTEGER,          -- NULL: not, or nobody said when
    inoculator    INTEGER NOT NULL, -- member; 0: nobody named
    culture       TEXT    NOT NULL,
    culture_key   TEXT    NOT NULL, -- the name of the culture as compared
    species       TEXT    NOT NULL,
    grows_key     TEXT    NOT NULL, -- the species, else the name of the culture, as compared
    parent_run    INTEGER,          -- the unit it was inoculated from; NULL: none
    parent_unit   INTEGER,
    route         INTEGER NOT NULL, -- kitchen.Route
    volume        REAL    NOT NULL, -- litres of culture
    share         REAL    NOT NULL, -- overgrown, as last seen
    remains       REAL    NOT NULL, -- not used yet
    loss          INTEGER NOT NULL, -- kitchen.UnitState it was lost as; 0: no loss
    loss_sign     INTEGER NOT NULL, -- kitchen.Sign
    loss_ms       INTEGER,
    loss_teller   INTEGER NOT NULL,
    shaken_ms     INTEGER,          -- first shaken, as far as it teaches when the next one is
    through_ms    INTEGER,          -- first seen grown through, likewise
    PRIMARY KEY (collective, run, number),
    FOREIGN KEY (collective, run) REFERENCES run (collective, number),
    CHECK ((parent_run IS NULL) = (parent_unit IS NULL))
) STRICT, WITHOUT ROWID;

CREATE INDEX unit_standing ON unit (collective, run, number) WHERE stands = 1;
CREATE INDEX unit_culture ON unit (collective, culture_key, run, number) WHERE culture_key <> '';
CREATE INDEX unit_parent ON unit (collective, parent_run, parent_unit, run, number) WHERE parent_run IS NOT NULL;
CREATE INDEX unit_through ON unit (collective, grows_key, through_ms, run, number) WHERE through_ms IS NOT NULL;

-- Derived: the lots that went into a unit, and the free words on it.
CREATE TABLE unit_lot (
    collective INTEGER NOT NULL,
    run        INTEGER NOT NULL,
    number     INTEGER NOT NULL,
    place      INTEGER NOT NULL, -- in the order in which they were said
    kind       INTEGER NOT NULL CHECK (kind > 0), -- kitchen.LotKind
    name       TEXT    NOT NULL,
    name_key   TEXT    NOT NULL, -- the name as compared
    PRIMARY KEY (collective, run, number, place),
    FOREIGN KEY (collective, run, number) REFERENCES unit (collective, run, number)
) STRICT, WITHOUT ROWID;

CREATE INDEX unit_lot_name ON unit_lot (collective, kind, name_key, run, number);

CREATE TABLE unit_tag (
    collective INTEGER NOT NULL,
    run        INTEGER NOT NULL,
    number     INTEGER NOT NULL,
    place      INTEGER NOT NULL,
    tag        TEXT    NOT NULL,
    tag_key    TEXT    NOT NULL,
    PRIMARY KEY (collective, run, number, place),
    FOREIGN KEY (collective, run, number) REFERENCES unit (collective, run, number)
) STRICT, WITHOUT ROWID;

CREATE INDEX unit_tag_name ON unit_tag (collective, tag_key, run, number);

-- A unit with its lots and tags, in the order in which units are read.
CREATE VIEW unit_row AS
SELECT
    collective, run, number, size, begun_ms, cool_ms, arrived, vessel, litres, grams, grain, name, place, spot, state,
    since_ms, teller, before, blank, cultured, inoculated_ms, inoculator, culture, species, parent_run, parent_unit,
    route, volume, share, remains, loss, loss_sign, loss_ms, loss_teller,
    (SELECT json_group_array(json_object('What', kind, 'Name', name)) FROM (
        SELECT l.kind, l.name FROM unit_lot l
        WHERE l.collective = u.collective AND l.run = u.run AND l.number = u.number ORDER BY l.place)) AS lots,
    (SELECT json_group_array(tag) FROM (
        SELECT t.tag FROM unit_tag t
        WHERE t.collective = u.collective AND t.run = u.run AND t.number = u.number ORDER BY t.place)) AS tags
FROM unit u;

-- Pictures that people sent, each with the turn that brought it.
CREATE TABLE photo (
    id         INTEGER PRIMARY KEY,
    collective INTEGER NOT NULL REFERENCES collective (id),
    inbox      INTEGER NOT NULL REFERENCES inbox (id),
    name       TEXT    NOT NULL, -- of the file, as sent
    media      TEXT    NOT NULL, -- image/jpeg
    bytes      BLOB    NOT NULL
) STRICT;

CREATE INDEX photo_inbox ON photo (inbox, id);
