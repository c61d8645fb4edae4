-- Version 12 of the yard file: what each thing of a hand-over was worth and weighed, so that what came back is not counted as given away.

-- worth_cents            the yard value of them together on the day they went; NULL where that was not written down yet
-- weight_thousandths_lb  their weight together, 0 where it is not known; NULL where that was not written down yet
ALTER TABLE hand_over_item ADD COLUMN worth_cents INTEGER CHECK (worth_cents >= 0);
ALTER TABLE hand_over_item ADD COLUMN weight_thousandths_lb INTEGER CHECK (weight_thousandths_lb >= 0);

DROP TRIGGER hand_over_item_added;
DROP TRIGGER hand_over_item_changed;
DROP TRIGGER hand_over_item_removed;

CREATE TRIGGER hand_over_item_added AFTER INSERT ON hand_over_item BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'hand_over_item', NEW.id, NEW.code, NULL, json_object(
    'id', NEW.id, 'hand_over', NEW.hand_over, 'code', NEW.code, 'count', NEW.count, 'back', NEW.back,
    'settled', NEW.settled, 'settled_as', NEW.settled_as, 'worth_cents', NEW.worth_cents, 'weight_thousandths_lb', NEW.weight_thousandths_lb));
END;

CREATE TRIGGER hand_over_item_changed AFTER UPDATE ON hand_over_item BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'hand_over_item', NEW.id, NEW.code, json_object(
    'id', OLD.id, 'hand_over', OLD.hand_over, 'code', OLD.code, 'count', OLD.count, 'back', OLD.back,
    'settled', OLD.settled, 'settled_as', OLD.settled_as, 'worth_cents', OLD.worth_cents, 'weight_thousandths_lb', OLD.weight_thousandths_lb), json_object(
    'id', NEW.id, 'hand_over', NEW.hand_over, 'code', NEW.code, 'count', NEW.count, 'back', NEW.back,
    'settled', NEW.settled, 'settled_as', NEW.settled_as, 'worth_cents', NEW.worth_cents, 'weight_thousandths_lb', NEW.weight_thousandths_lb));
END;

CREATE TRIGGER hand_over_item_removed AFTER DELETE ON hand_over_item BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'hand_over_item', OLD.id, OLD.code, json_object(
    'id', OLD.id, 'hand_over', OLD.hand_over, 'code', OLD.code, 'count', OLD.count, 'back', OLD.back,
    'settled', OLD.settled, 'settled_as', OLD.settled_as, 'worth_cents', OLD.worth_cents, 'weight_thousandths_lb', OLD.weight_thousandths_lb), NULL);
END;

DROP VIEW handed_over;

-- What went to other builds, a row a piece or bin.
CREATE VIEW handed_over AS
SELECT hand_over.id AS number, hand_over.day, hand_over.kind, hand_over.to_whom, hand_over_item.code,
  coalesce(piece.material, bin.hardware) AS material, piece.length_320ths_mm / 8128.0 AS length_in, piece.length_320ths_mm / 320.0 AS length_mm,
  hand_over_item.count, hand_over_item.back, hand_over_item.settled, hand_over_item.settled_as, hand_over_item.worth_cents, hand_over_item.weight_thousandths_lb / 1000.0 AS weight_lb,
  hand_over.price_cents, hand_over.due_on, hand_over.due, hand_over.confirmed_on
FROM hand_over
JOIN hand_over_item ON hand_over_item.hand_over = hand_over.id
LEFT JOIN piece ON piece.code = hand_over_item.code
LEFT JOIN bin ON bin.code = hand_over_item.code
ORDER BY hand_over.id, hand_over_item.id;
