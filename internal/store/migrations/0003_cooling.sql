-- Derived from the entries about a run that was measured until it was cool: how
-- its load cooled, for the forecast of later ones to learn from.
CREATE TABLE cooling (
    collective INTEGER NOT NULL,
    run        INTEGER NOT NULL,
    cooker     TEXT    NOT NULL,
    vessel     INTEGER NOT NULL, -- Vessel of the slowest container
    litres     REAL    NOT NULL, -- of its brim; 0: not known by that
    grams      REAL    NOT NULL, -- of wetted grain in it; 0: not known by that
    slower     REAL    NOT NULL, -- logarithm: than the table of properties says
    spread     REAL    NOT NULL CHECK (spread > 0),
    blind      INTEGER NOT NULL CHECK (blind IN (0, 1, 2)),    -- Verdict: the range without a reading
    measured   INTEGER NOT NULL CHECK (measured IN (0, 1, 2)), -- Verdict: the range after the first
    PRIMARY KEY (collective, run),
    FOREIGN KEY (collective, run) REFERENCES run (collective, number)
) STRICT, WITHOUT ROWID;
