-- Version 10 of the yard file: what was lent and does not come back as it went.

-- settled     how many of them are settled: they don't come back, or something else came in their place
-- settled_as  what came in their place, in words and codes; empty where nothing did
ALTER TABLE hand_over_item ADD COLUMN settled INTEGER NOT NULL DEFAULT 0 CHECK (settled BETWEEN 0 AND count - back);
ALTER TABLE hand_over_item ADD COLUMN settled_as TEXT NOT NULL DEFAULT '' CHECK (length(settled_as) <= 500);

DROP TRIGGER hand_over_item_added;
DROP TRIGGER hand_over_item_changed;
DROP TRIGGER hand_over_item_removed;

CREATE TRIGGER hand_over_item_added AFTER INSERT ON hand_over_item BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'hand_over_item', NEW.id, NEW.code, NULL, json_object(
    'id', NEW.id, 'hand_over', NEW.hand_over, 'code', NEW.code, 'count', NEW.count, 'back', NEW.back,
    'settled', NEW.settled, 'settled_as', NEW.settled_as));
END;

CREATE TRIGGER hand_over_item_changed AFTER UPDATE ON hand_over_item BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'hand_over_item', NEW.id, NEW.code, json_object(
    'id', OLD.id, 'hand_over', OLD.hand_over, 'code', OLD.code, 'count', OLD.count, 'back', OLD.back,
    'settled', OLD.settled, 'settled_as', OLD.settled_as), json_object(
    'id', NEW.id, 'hand_over', NEW.hand_over, 'code', NEW.code, 'count', NEW.count, 'back', NEW.back,
    'settled', NEW.settled, 'settled_as', NEW.settled_as));
END;

CREATE TRIGGER hand_over_item_removed AFTER DELETE ON hand_over_item BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'hand_over_item', OLD.id, OLD.code, json_object(
    'id', OLD.id, 'hand_over', OLD.hand_over, 'code', OLD.code, 'count', OLD.count, 'back', OLD.back,
    'settled', OLD.settled, 'settled_as', OLD.settled_as), NULL);
END;

DROP VIEW handed_over;

-- What went to other builds, a row a piece or bin.
CREATE VIEW handed_over AS
SELECT hand_over.id AS number, hand_over.day, hand_over.kind, hand_over.to_whom, hand_over_item.code,
  coalesce(piece.material, bin.hardware) AS material, piece.length_320ths_mm / 8128.0 AS length_in, piece.length_320ths_mm / 320.0 AS length_mm,
  hand_over_item.count, hand_over_item.back, hand_over_item.settled, hand_over_item.settled_as,
  hand_over.price_cents, hand_over.due_on, hand_over.due, hand_over.confirmed_on
FROM hand_over
JOIN hand_over_item ON hand_over_item.hand_over = hand_over.id
LEFT JOIN piece ON piece.code = hand_over_item.code
LEFT JOIN bin ON bin.code = hand_over_item.code
ORDER BY hand_over.id, hand_over_item.id;
