-- When the ping was put in, or its time was last moved: it can't be late for what
-- was due before. 0: not known.
ALTER TABLE ping ADD COLUMN set_ms INTEGER NOT NULL DEFAULT 0;
