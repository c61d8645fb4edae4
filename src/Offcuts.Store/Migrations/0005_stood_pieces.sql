-- Version 5 of the yard file: a course that stands remembers its pieces.

-- pieces  a JSON array of what the course is laid from, from left to right: from and to on the axis of the leg's runs in 1/320 mm, the
--         code of the yard's piece it was cut from (none where it was bought), and whether it lies turned end for end. Empty where that
--         is not known.
ALTER TABLE wall_course ADD COLUMN pieces TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(pieces));

DROP TRIGGER wall_course_added;
DROP TRIGGER wall_course_changed;
DROP TRIGGER wall_course_removed;

CREATE TRIGGER wall_course_added AFTER INSERT ON wall_course BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'wall_course', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'wall', NEW.wall, 'run', NEW.run, 'course', NEW.course, 'joints_320ths_mm', NEW.joints_320ths_mm, 'pieces', NEW.pieces));
END;

CREATE TRIGGER wall_course_changed AFTER UPDATE ON wall_course BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'wall_course', NEW.id, NULL, json_object(
    'id', OLD.id, 'wall', OLD.wall, 'run', OLD.run, 'course', OLD.course, 'joints_320ths_mm', OLD.joints_320ths_mm, 'pieces', OLD.pieces), json_object(
    'id', NEW.id, 'wall', NEW.wall, 'run', NEW.run, 'course', NEW.course, 'joints_320ths_mm', NEW.joints_320ths_mm, 'pieces', NEW.pieces));
END;

CREATE TRIGGER wall_course_removed AFTER DELETE ON wall_course BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'wall_course', OLD.id, NULL, json_object(
    'id', OLD.id, 'wall', OLD.wall, 'run', OLD.run, 'course', OLD.course, 'joints_320ths_mm', OLD.joints_320ths_mm, 'pieces', OLD.pieces), NULL);
END;
