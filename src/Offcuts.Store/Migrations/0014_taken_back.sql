-- Version 14 of the yard file: a line of the ledger may take back what an earlier one counts, so its measures may be below zero.
--
-- What was cut for a wall comes back to the yard where its filling is given up, and counts again once it is used. A table can't be
-- given another rule in any other way that SQLite's page on ALTER TABLE allows, so it is made anew; the pragma keeps the views that
-- name it as they are meanwhile. No row of it changes.
PRAGMA legacy_alter_table = ON;

CREATE TABLE ledger_anew (
  id              INTEGER PRIMARY KEY,
  day             TEXT NOT NULL CHECK (day = date(day)),
  stage           TEXT NOT NULL CHECK (length(stage) <= 60),
  plan            INTEGER REFERENCES plan (id),
  all_new_cents   INTEGER NOT NULL,
  spent_cents     INTEGER NOT NULL,
  board_feet      TEXT NOT NULL CHECK (ltrim(board_feet, '-') GLOB '[0-9]*' AND board_feet NOT GLOB '?*[^0-9.]*'),
  panel_square_mm TEXT NOT NULL CHECK (ltrim(panel_square_mm, '-') GLOB '[0-9]*' AND panel_square_mm NOT GLOB '?*[^0-9.]*'),
  weight_pounds   TEXT NOT NULL CHECK (ltrim(weight_pounds, '-') GLOB '[0-9]*' AND weight_pounds NOT GLOB '?*[^0-9.]*'),
  wood_weight_pounds TEXT NOT NULL CHECK (ltrim(wood_weight_pounds, '-') GLOB '[0-9]*' AND wood_weight_pounds NOT GLOB '?*[^0-9.]*'),
  pieces_used     INTEGER NOT NULL CHECK (pieces_used BETWEEN -2147483647 AND 2147483647),
  hardware_used   INTEGER NOT NULL CHECK (hardware_used BETWEEN 0 AND 2147483647)
) STRICT;

INSERT INTO ledger_anew (id, day, stage, plan, all_new_cents, spent_cents, board_feet, panel_square_mm, weight_pounds, wood_weight_pounds, pieces_used, hardware_used)
SELECT id, day, stage, plan, all_new_cents, spent_cents, board_feet, panel_square_mm, weight_pounds, wood_weight_pounds, pieces_used, hardware_used FROM ledger ORDER BY id;
DROP TABLE ledger;
ALTER TABLE ledger_anew RENAME TO ledger;

CREATE INDEX ledger_by_plan ON ledger (plan) WHERE plan IS NOT NULL;

CREATE TRIGGER ledger_added AFTER INSERT ON ledger BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'ledger', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'day', NEW.day, 'stage', NEW.stage, 'plan', NEW.plan, 'all_new_cents', NEW.all_new_cents,
    'spent_cents', NEW.spent_cents, 'board_feet', NEW.board_feet, 'panel_square_mm', NEW.panel_square_mm,
    'weight_pounds', NEW.weight_pounds, 'wood_weight_pounds', NEW.wood_weight_pounds, 'pieces_used', NEW.pieces_used, 'hardware_used', NEW.hardware_used));
END;

CREATE TRIGGER ledger_changed AFTER UPDATE ON ledger BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'ledger', NEW.id, NULL, json_object(
    'id', OLD.id, 'day', OLD.day, 'stage', OLD.stage, 'plan', OLD.plan, 'all_new_cents', OLD.all_new_cents,
    'spent_cents', OLD.spent_cents, 'board_feet', OLD.board_feet, 'panel_square_mm', OLD.panel_square_mm,
    'weight_pounds', OLD.weight_pounds, 'wood_weight_pounds', OLD.wood_weight_pounds, 'pieces_used', OLD.pieces_used, 'hardware_used', OLD.hardware_used), json_object(
    'id', NEW.id, 'day', NEW.day, 'stage', NEW.stage, 'plan', NEW.plan, 'all_new_cents', NEW.all_new_cents,
    'spent_cents', NEW.spent_cents, 'board_feet', NEW.board_feet, 'panel_square_mm', NEW.panel_square_mm,
    'weight_pounds', NEW.weight_pounds, 'wood_weight_pounds', NEW.wood_weight_pounds, 'pieces_used', NEW.pieces_used, 'hardware_used', NEW.hardware_used));
END;

CREATE TRIGGER ledger_removed AFTER DELETE ON ledger BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'ledger', OLD.id, NULL, json_object(
    'id', OLD.id, 'day', OLD.day, 'stage', OLD.stage, 'plan', OLD.plan, 'all_new_cents', OLD.all_new_cents,
    'spent_cents', OLD.spent_cents, 'board_feet', OLD.board_feet, 'panel_square_mm', OLD.panel_square_mm,
    'weight_pounds', OLD.weight_pounds, 'wood_weight_pounds', OLD.wood_weight_pounds, 'pieces_used', OLD.pieces_used, 'hardware_used', OLD.hardware_used), NULL);
END;

PRAGMA legacy_alter_table = OFF;
