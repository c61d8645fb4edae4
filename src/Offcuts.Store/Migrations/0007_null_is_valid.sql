-- Version 7 of the yard file: where a column of JSON may be empty, its rule says so.
--
-- json_valid(NULL) is 0 in some versions of SQLite and NULL in others. A rule that is 0 for a row that is right makes
-- PRAGMA integrity_check of those versions tell of faults that are none, so both tables are made anew with the rule in full.
-- Nothing in them changes. A table can't be given another rule in any other way that SQLite's page on ALTER TABLE allows; the
-- pragma keeps the triggers and views that name the tables as they are meanwhile.
PRAGMA legacy_alter_table = ON;

CREATE TABLE plan_step_anew (
  id     INTEGER PRIMARY KEY,
  plan   INTEGER NOT NULL REFERENCES plan (id),
  piece  INTEGER NOT NULL CHECK (piece BETWEEN 0 AND 2147483647),
  state  TEXT NOT NULL CHECK (state IN ('waiting', 'done', 'done otherwise', 'dropped')),
  actual TEXT CHECK (actual IS NULL OR json_valid(actual)),
  UNIQUE (plan, piece),
  CHECK ((state = 'done otherwise') = (actual IS NOT NULL))
) STRICT;

INSERT INTO plan_step_anew (id, plan, piece, state, actual) SELECT id, plan, piece, state, actual FROM plan_step ORDER BY id;
DROP TABLE plan_step;
ALTER TABLE plan_step_anew RENAME TO plan_step;

CREATE TRIGGER plan_step_added AFTER INSERT ON plan_step BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'plan_step', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'plan', NEW.plan, 'piece', NEW.piece, 'state', NEW.state, 'actual', NEW.actual));
END;

CREATE TRIGGER plan_step_changed AFTER UPDATE ON plan_step BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'plan_step', NEW.id, NULL, json_object(
    'id', OLD.id, 'plan', OLD.plan, 'piece', OLD.piece, 'state', OLD.state, 'actual', OLD.actual), json_object(
    'id', NEW.id, 'plan', NEW.plan, 'piece', NEW.piece, 'state', NEW.state, 'actual', NEW.actual));
END;

CREATE TRIGGER plan_step_removed AFTER DELETE ON plan_step BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'plan_step', OLD.id, NULL, json_object(
    'id', OLD.id, 'plan', OLD.plan, 'piece', OLD.piece, 'state', OLD.state, 'actual', OLD.actual), NULL);
END;

-- Every row that an entry of the history added (before is null), changed, or removed (after is null), as JSON by column.
-- Nothing else is needed to take an entry back. code is that of the piece, bin or label concerned.
CREATE TABLE change_anew (
  number     INTEGER PRIMARY KEY,
  entry      INTEGER NOT NULL REFERENCES history (number),
  table_name TEXT NOT NULL,
  row_id     INTEGER NOT NULL,
  code       TEXT,
  before     TEXT CHECK (before IS NULL OR json_valid(before)),
  after      TEXT CHECK (after IS NULL OR json_valid(after)),
  CHECK (before IS NOT NULL OR after IS NOT NULL)
) STRICT;

INSERT INTO change_anew (number, entry, table_name, row_id, code, before, after)
SELECT number, entry, table_name, row_id, code, before, after FROM change ORDER BY number;
DROP TABLE change;
ALTER TABLE change_anew RENAME TO change;

CREATE INDEX change_by_entry ON change (entry);
CREATE INDEX change_by_code ON change (code) WHERE code IS NOT NULL;

CREATE TRIGGER change_stays BEFORE DELETE ON change
BEGIN SELECT RAISE(ABORT, 'the history is never changed'); END;

CREATE TRIGGER change_is_final BEFORE UPDATE ON change
BEGIN SELECT RAISE(ABORT, 'the history is never changed'); END;

CREATE TRIGGER change_is_not_replaced BEFORE INSERT ON change
WHEN EXISTS (SELECT 1 FROM change WHERE number = NEW.number)
BEGIN SELECT RAISE(ABORT, 'the history is never changed'); END;

PRAGMA legacy_alter_table = OFF;
