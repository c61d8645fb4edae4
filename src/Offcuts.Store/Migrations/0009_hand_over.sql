-- Version 9 of the yard file: what is kept back, what goes to other yards and comes from them, and what it is driven with.

-- Of these materials so much always stays: a length in all, or a number of pieces or of counted things. The other one is 0.
CREATE TABLE keep_back (
  id               INTEGER PRIMARY KEY,
  material         TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (length(material) BETWEEN 1 AND 60),
  length_320ths_mm INTEGER NOT NULL DEFAULT 0 CHECK (length_320ths_mm BETWEEN 0 AND 320000000000),
  count            INTEGER NOT NULL DEFAULT 0 CHECK (count BETWEEN 0 AND 2147483647),
  CHECK ((length_320ths_mm = 0) <> (count = 0))
) STRICT;

-- A bed or trailer as the user describes it: the longest piece that may lie on it, and what it may carry. Without a volume, none is asked.
CREATE TABLE bed (
  id                       INTEGER PRIMARY KEY,
  name                     TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (length(name) BETWEEN 1 AND 60),
  longest_320ths_mm        INTEGER NOT NULL CHECK (longest_320ths_mm BETWEEN 1 AND 320000000000),
  weight_thousandths_lb    INTEGER NOT NULL CHECK (weight_thousandths_lb BETWEEN 1 AND 1000000000000),
  volume_thousandths_cu_ft INTEGER CHECK (volume_thousandths_cu_ft BETWEEN 1 AND 1000000000000)
) STRICT;

-- What went to somebody else's build.
--   transfer      sixteen characters drawn by chance, by which both yards know this hand-over
--   price_cents   what is paid for it, for a sale
--   due_on, due   for a loan: the day by which it is due back, where one was said, and what else was agreed
--   worth_cents   its yard value on that day
--   confirmed_on  the day the other side's receipt came; from then on it is not taken back
CREATE TABLE hand_over (
  id                    INTEGER PRIMARY KEY,
  transfer              TEXT NOT NULL UNIQUE CHECK (length(transfer) = 16 AND transfer NOT GLOB '*[^2345679ACDEFHJKMNPRTVWXY]*'),
  day                   TEXT NOT NULL CHECK (day = date(day)),
  kind                  TEXT NOT NULL CHECK (kind IN ('gift', 'loan', 'sale')),
  to_whom               TEXT NOT NULL CHECK (length(to_whom) BETWEEN 1 AND 60),
  price_cents           INTEGER CHECK (price_cents >= 0),
  due_on                TEXT CHECK (due_on IS date(due_on)),
  due                   TEXT NOT NULL DEFAULT '' CHECK (length(due) <= 500),
  worth_cents           INTEGER NOT NULL CHECK (worth_cents >= 0),
  weight_thousandths_lb INTEGER NOT NULL CHECK (weight_thousandths_lb >= 0),
  confirmed_on          TEXT CHECK (confirmed_on IS date(confirmed_on)),
  CHECK ((kind = 'sale') = (price_cents IS NOT NULL)),
  CHECK (kind = 'loan' OR (due_on IS NULL AND due = ''))
) STRICT;

-- One piece of a hand-over, or so many counted things out of one bin. back says how many came back.
CREATE TABLE hand_over_item (
  id        INTEGER PRIMARY KEY,
  hand_over INTEGER NOT NULL REFERENCES hand_over (id),
  code      TEXT NOT NULL CHECK (length(code) = 7 AND code NOT GLOB '*[^2345679ACDEFHJKMNPRTVWXY]*'),
  count     INTEGER NOT NULL CHECK (count BETWEEN 1 AND 2147483647),
  back      INTEGER NOT NULL DEFAULT 0 CHECK (back BETWEEN 0 AND count),
  UNIQUE (hand_over, code)
) STRICT;

CREATE INDEX hand_over_item_by_code ON hand_over_item (code);

-- A hand-over of another yard that was taken in here; a second time, it changes nothing.
CREATE TABLE taken_in (
  id        INTEGER PRIMARY KEY,
  transfer  TEXT NOT NULL UNIQUE CHECK (length(transfer) = 16 AND transfer NOT GLOB '*[^2345679ACDEFHJKMNPRTVWXY]*'),
  day       TEXT NOT NULL CHECK (day = date(day)),
  from_whom TEXT NOT NULL CHECK (length(from_whom) <= 60),
  kind      TEXT NOT NULL CHECK (kind IN ('gift', 'loan', 'sale')),
  due_on    TEXT CHECK (due_on IS date(due_on)),
  due       TEXT NOT NULL DEFAULT '' CHECK (length(due) <= 500)
) STRICT;

-- What a piece brought along from the yard it came from: by which hand-over, the code it had there, and its history there, a JSON array of
-- [moment, what was done], oldest first.
CREATE TABLE brought (
  id       INTEGER PRIMARY KEY,
  code     TEXT NOT NULL UNIQUE CHECK (length(code) = 7 AND code NOT GLOB '*[^2345679ACDEFHJKMNPRTVWXY]*'),
  transfer TEXT NOT NULL CHECK (length(transfer) = 16 AND transfer NOT GLOB '*[^2345679ACDEFHJKMNPRTVWXY]*'),
  was      TEXT NOT NULL CHECK (length(was) = 7 AND was NOT GLOB '*[^2345679ACDEFHJKMNPRTVWXY]*'),
  history  TEXT NOT NULL CHECK (json_valid(history) AND json_type(history) = 'array')
) STRICT;

CREATE TRIGGER keep_back_added AFTER INSERT ON keep_back BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'keep_back', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'material', NEW.material, 'length_320ths_mm', NEW.length_320ths_mm, 'count', NEW.count));
END;

CREATE TRIGGER keep_back_changed AFTER UPDATE ON keep_back BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'keep_back', NEW.id, NULL, json_object(
    'id', OLD.id, 'material', OLD.material, 'length_320ths_mm', OLD.length_320ths_mm, 'count', OLD.count), json_object(
    'id', NEW.id, 'material', NEW.material, 'length_320ths_mm', NEW.length_320ths_mm, 'count', NEW.count));
END;

CREATE TRIGGER keep_back_removed AFTER DELETE ON keep_back BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'keep_back', OLD.id, NULL, json_object(
    'id', OLD.id, 'material', OLD.material, 'length_320ths_mm', OLD.length_320ths_mm, 'count', OLD.count), NULL);
END;

CREATE TRIGGER bed_added AFTER INSERT ON bed BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'bed', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'name', NEW.name, 'longest_320ths_mm', NEW.longest_320ths_mm,
    'weight_thousandths_lb', NEW.weight_thousandths_lb, 'volume_thousandths_cu_ft', NEW.volume_thousandths_cu_ft));
END;

CREATE TRIGGER bed_changed AFTER UPDATE ON bed BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'bed', NEW.id, NULL, json_object(
    'id', OLD.id, 'name', OLD.name, 'longest_320ths_mm', OLD.longest_320ths_mm,
    'weight_thousandths_lb', OLD.weight_thousandths_lb, 'volume_thousandths_cu_ft', OLD.volume_thousandths_cu_ft), json_object(
    'id', NEW.id, 'name', NEW.name, 'longest_320ths_mm', NEW.longest_320ths_mm,
    'weight_thousandths_lb', NEW.weight_thousandths_lb, 'volume_thousandths_cu_ft', NEW.volume_thousandths_cu_ft));
END;

CREATE TRIGGER bed_removed AFTER DELETE ON bed BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'bed', OLD.id, NULL, json_object(
    'id', OLD.id, 'name', OLD.name, 'longest_320ths_mm', OLD.longest_320ths_mm,
    'weight_thousandths_lb', OLD.weight_thousandths_lb, 'volume_thousandths_cu_ft', OLD.volume_thousandths_cu_ft), NULL);
END;

CREATE TRIGGER hand_over_added AFTER INSERT ON hand_over BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'hand_over', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'transfer', NEW.transfer, 'day', NEW.day, 'kind', NEW.kind, 'to_whom', NEW.to_whom,
    'price_cents', NEW.price_cents, 'due_on', NEW.due_on, 'due', NEW.due, 'worth_cents', NEW.worth_cents,
    'weight_thousandths_lb', NEW.weight_thousandths_lb, 'confirmed_on', NEW.confirmed_on));
END;

CREATE TRIGGER hand_over_changed AFTER UPDATE ON hand_over BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'hand_over', NEW.id, NULL, json_object(
    'id', OLD.id, 'transfer', OLD.transfer, 'day', OLD.day, 'kind', OLD.kind, 'to_whom', OLD.to_whom,
    'price_cents', OLD.price_cents, 'due_on', OLD.due_on, 'due', OLD.due, 'worth_cents', OLD.worth_cents,
    'weight_thousandths_lb', OLD.weight_thousandths_lb, 'confirmed_on', OLD.confirmed_on), json_object(
    'id', NEW.id, 'transfer', NEW.transfer, 'day', NEW.day, 'kind', NEW.kind, 'to_whom', NEW.to_whom,
    'price_cents', NEW.price_cents, 'due_on', NEW.due_on, 'due', NEW.due, 'worth_cents', NEW.worth_cents,
    'weight_thousandths_lb', NEW.weight_thousandths_lb, 'confirmed_on', NEW.confirmed_on));
END;

CREATE TRIGGER hand_over_removed AFTER DELETE ON hand_over BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'hand_over', OLD.id, NULL, json_object(
    'id', OLD.id, 'transfer', OLD.transfer, 'day', OLD.day, 'kind', OLD.kind, 'to_whom', OLD.to_whom,
    'price_cents', OLD.price_cents, 'due_on', OLD.due_on, 'due', OLD.due, 'worth_cents', OLD.worth_cents,
    'weight_thousandths_lb', OLD.weight_thousandths_lb, 'confirmed_on', OLD.confirmed_on), NULL);
END;

CREATE TRIGGER hand_over_item_added AFTER INSERT ON hand_over_item BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'hand_over_item', NEW.id, NEW.code, NULL, json_object(
    'id', NEW.id, 'hand_over', NEW.hand_over, 'code', NEW.code, 'count', NEW.count, 'back', NEW.back));
END;

CREATE TRIGGER hand_over_item_changed AFTER UPDATE ON hand_over_item BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'hand_over_item', NEW.id, NEW.code, json_object(
    'id', OLD.id, 'hand_over', OLD.hand_over, 'code', OLD.code, 'count', OLD.count, 'back', OLD.back), json_object(
    'id', NEW.id, 'hand_over', NEW.hand_over, 'code', NEW.code, 'count', NEW.count, 'back', NEW.back));
END;

CREATE TRIGGER hand_over_item_removed AFTER DELETE ON hand_over_item BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'hand_over_item', OLD.id, OLD.code, json_object(
    'id', OLD.id, 'hand_over', OLD.hand_over, 'code', OLD.code, 'count', OLD.count, 'back', OLD.back), NULL);
END;

CREATE TRIGGER taken_in_added AFTER INSERT ON taken_in BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'taken_in', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'transfer', NEW.transfer, 'day', NEW.day, 'from_whom', NEW.from_whom, 'kind', NEW.kind,
    'due_on', NEW.due_on, 'due', NEW.due));
END;

CREATE TRIGGER taken_in_changed AFTER UPDATE ON taken_in BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'taken_in', NEW.id, NULL, json_object(
    'id', OLD.id, 'transfer', OLD.transfer, 'day', OLD.day, 'from_whom', OLD.from_whom, 'kind', OLD.kind,
    'due_on', OLD.due_on, 'due', OLD.due), json_object(
    'id', NEW.id, 'transfer', NEW.transfer, 'day', NEW.day, 'from_whom', NEW.from_whom, 'kind', NEW.kind,
    'due_on', NEW.due_on, 'due', NEW.due));
END;

CREATE TRIGGER taken_in_removed AFTER DELETE ON taken_in BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'taken_in', OLD.id, NULL, json_object(
    'id', OLD.id, 'transfer', OLD.transfer, 'day', OLD.day, 'from_whom', OLD.from_whom, 'kind', OLD.kind,
    'due_on', OLD.due_on, 'due', OLD.due), NULL);
END;

CREATE TRIGGER brought_added AFTER INSERT ON brought BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'brought', NEW.id, NEW.code, NULL, json_object(
    'id', NEW.id, 'code', NEW.code, 'transfer', NEW.transfer, 'was', NEW.was, 'history', NEW.history));
END;

CREATE TRIGGER brought_changed AFTER UPDATE ON brought BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'brought', NEW.id, NEW.code, json_object(
    'id', OLD.id, 'code', OLD.code, 'transfer', OLD.transfer, 'was', OLD.was, 'history', OLD.history), json_object(
    'id', NEW.id, 'code', NEW.code, 'transfer', NEW.transfer, 'was', NEW.was, 'history', NEW.history));
END;

CREATE TRIGGER brought_removed AFTER DELETE ON brought BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'brought', OLD.id, OLD.code, json_object(
    'id', OLD.id, 'code', OLD.code, 'transfer', OLD.transfer, 'was', OLD.was, 'history', OLD.history), NULL);
END;


-- What went to other builds, a row a piece or bin.
CREATE VIEW handed_over AS
SELECT hand_over.id AS number, hand_over.day, hand_over.kind, hand_over.to_whom, hand_over_item.code,
  coalesce(piece.material, bin.hardware) AS material, piece.length_320ths_mm / 8128.0 AS length_in, piece.length_320ths_mm / 320.0 AS length_mm,
  hand_over_item.count, hand_over_item.back, hand_over.price_cents, hand_over.due_on, hand_over.due, hand_over.confirmed_on
FROM hand_over
JOIN hand_over_item ON hand_over_item.hand_over = hand_over.id
LEFT JOIN piece ON piece.code = hand_over_item.code
LEFT JOIN bin ON bin.code = hand_over_item.code
ORDER BY hand_over.id, hand_over_item.id;
