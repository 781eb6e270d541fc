-- What the kitchen goes by when it says when a unit is grown through.
ALTER TABLE unit ADD COLUMN seen_ms INTEGER;   -- when the share was seen; NULL: never
ALTER TABLE unit ADD COLUMN shook_ms INTEGER;  -- first shaken since it was inoculated; NULL: not
ALTER TABLE unit ADD COLUMN rested_ms INTEGER NOT NULL DEFAULT 0; -- stood in the cold since then, before it was taken out

DROP VIEW unit_row;

-- A unit with its lots and tags, in the order in which units are read.
CREATE VIEW unit_row AS
SELECT
    collective, run, number, size, begun_ms, cool_ms, arrived, vessel, litres, grams, grain, name, place, spot, state,
    since_ms, teller, before, blank, cultured, inoculated_ms, inoculator, culture, species, parent_run, parent_unit,
    route, volume, share, remains, loss, loss_sign, loss_ms, loss_teller, seen_ms, shook_ms, rested_ms,
    (SELECT json_group_array(json_object('What', kind, 'Name', name)) FROM (
        SELECT l.kind, l.name FROM unit_lot l
        WHERE l.collective = u.collective AND l.run = u.run AND l.number = u.number ORDER BY l.place)) AS lots,
    (SELECT json_group_array(tag) FROM (
        SELECT t.tag FROM unit_tag t
        WHERE t.collective = u.collective AND t.run = u.run AND t.number = u.number ORDER BY t.place)) AS tags
FROM unit u;
