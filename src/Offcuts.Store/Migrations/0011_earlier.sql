-- Version 11 of the yard file: where a piece had been before it came here the last time, so that every yard it was in knows it again.

-- earlier  the hand-overs by which it had gone before that, each with its code then: a JSON array of [transfer, code], oldest first
ALTER TABLE brought ADD COLUMN earlier TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(earlier) AND json_type(earlier) = 'array');

DROP TRIGGER brought_added;
DROP TRIGGER brought_changed;
DROP TRIGGER brought_removed;

CREATE TRIGGER brought_added AFTER INSERT ON brought BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'brought', NEW.id, NEW.code, NULL, json_object(
    'id', NEW.id, 'code', NEW.code, 'transfer', NEW.transfer, 'was', NEW.was, 'history', NEW.history, 'earlier', NEW.earlier));
END;

CREATE TRIGGER brought_changed AFTER UPDATE ON brought BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'brought', NEW.id, NEW.code, json_object(
    'id', OLD.id, 'code', OLD.code, 'transfer', OLD.transfer, 'was', OLD.was, 'history', OLD.history, 'earlier', OLD.earlier), json_object(
    'id', NEW.id, 'code', NEW.code, 'transfer', NEW.transfer, 'was', NEW.was, 'history', NEW.history, 'earlier', NEW.earlier));
END;

CREATE TRIGGER brought_removed AFTER DELETE ON brought BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'brought', OLD.id, OLD.code, json_object(
    'id', OLD.id, 'code', OLD.code, 'transfer', OLD.transfer, 'was', OLD.was, 'history', OLD.history, 'earlier', OLD.earlier), NULL);
END;
