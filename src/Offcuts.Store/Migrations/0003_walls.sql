-- Version 3 of the yard file: sheets of building systems, and the walls of stages.

-- A building system's numbers, as the user took them from their supplier's paper. sheet is the whole sheet as a person reads and
-- writes it, one fact a line, lengths with their units; Core/Walls/README.md beside this program's source tells its words. name is
-- the one that its first line gives.
CREATE TABLE system_sheet (
  id    INTEGER PRIMARY KEY,
  name  TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (length(name) BETWEEN 1 AND 60),
  sheet TEXT NOT NULL CHECK (length(sheet) BETWEEN 1 AND 1000000 AND sheet LIKE 'system %')
) STRICT;

-- A wall of a stage, built of a system: its legs, openings, steel, bucks, braces and footing forms. sheet as above.
CREATE TABLE wall_sheet (
  id     INTEGER PRIMARY KEY,
  stage  INTEGER NOT NULL REFERENCES stage (id),
  name   TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (length(name) BETWEEN 1 AND 20),
  system INTEGER NOT NULL REFERENCES system_sheet (id),
  sheet  TEXT NOT NULL CHECK (length(sheet) BETWEEN 1 AND 1000000 AND sheet LIKE 'wall %')
) STRICT;

CREATE INDEX wall_sheet_by_stage ON wall_sheet (stage);
CREATE INDEX wall_sheet_by_system ON wall_sheet (system);

CREATE TRIGGER system_sheet_added AFTER INSERT ON system_sheet BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'system_sheet', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'name', NEW.name, 'sheet', NEW.sheet));
END;

CREATE TRIGGER system_sheet_changed AFTER UPDATE ON system_sheet BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'system_sheet', NEW.id, NULL, json_object(
    'id', OLD.id, 'name', OLD.name, 'sheet', OLD.sheet), json_object(
    'id', NEW.id, 'name', NEW.name, 'sheet', NEW.sheet));
END;

CREATE TRIGGER system_sheet_removed AFTER DELETE ON system_sheet BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'system_sheet', OLD.id, NULL, json_object(
    'id', OLD.id, 'name', OLD.name, 'sheet', OLD.sheet), NULL);
END;

CREATE TRIGGER wall_sheet_added AFTER INSERT ON wall_sheet BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'wall_sheet', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'stage', NEW.stage, 'name', NEW.name, 'system', NEW.system, 'sheet', NEW.sheet));
END;

CREATE TRIGGER wall_sheet_changed AFTER UPDATE ON wall_sheet BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'wall_sheet', NEW.id, NULL, json_object(
    'id', OLD.id, 'stage', OLD.stage, 'name', OLD.name, 'system', OLD.system, 'sheet', OLD.sheet), json_object(
    'id', NEW.id, 'stage', NEW.stage, 'name', NEW.name, 'system', NEW.system, 'sheet', NEW.sheet));
END;

CREATE TRIGGER wall_sheet_removed AFTER DELETE ON wall_sheet BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'wall_sheet', OLD.id, NULL, json_object(
    'id', OLD.id, 'stage', OLD.stage, 'name', OLD.name, 'system', OLD.system, 'sheet', OLD.sheet), NULL);
END;

-- Every wall with its stage and system, in the order of the work.
CREATE VIEW stage_walls AS
SELECT stage.name AS stage, wall_sheet.name AS wall, system_sheet.name AS system, wall_sheet.sheet
FROM wall_sheet
JOIN stage ON stage.id = wall_sheet.stage
JOIN system_sheet ON system_sheet.id = wall_sheet.system
ORDER BY stage.position, wall_sheet.id;
