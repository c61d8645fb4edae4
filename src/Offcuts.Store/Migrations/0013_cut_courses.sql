-- Version 13 of the yard file: a course that is cut and waits to be stacked is told from one that stands.

-- only_cut  1 while all of the course is cut and it waits to be stacked, 0 where it stands. Before this version both stood here alike.
ALTER TABLE wall_course ADD COLUMN only_cut INTEGER NOT NULL DEFAULT 0 CHECK (only_cut IN (0, 1));

DROP TRIGGER wall_course_added;
DROP TRIGGER wall_course_changed;
DROP TRIGGER wall_course_removed;

CREATE TRIGGER wall_course_added AFTER INSERT ON wall_course BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'wall_course', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'wall', NEW.wall, 'run', NEW.run, 'course', NEW.course, 'joints_320ths_mm', NEW.joints_320ths_mm, 'pieces', NEW.pieces, 'only_cut', NEW.only_cut));
END;

CREATE TRIGGER wall_course_changed AFTER UPDATE ON wall_course BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'wall_course', NEW.id, NULL, json_object(
    'id', OLD.id, 'wall', OLD.wall, 'run', OLD.run, 'course', OLD.course, 'joints_320ths_mm', OLD.joints_320ths_mm, 'pieces', OLD.pieces, 'only_cut', OLD.only_cut), json_object(
    'id', NEW.id, 'wall', NEW.wall, 'run', NEW.run, 'course', NEW.course, 'joints_320ths_mm', NEW.joints_320ths_mm, 'pieces', NEW.pieces, 'only_cut', NEW.only_cut));
END;

CREATE TRIGGER wall_course_removed AFTER DELETE ON wall_course BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'wall_course', OLD.id, NULL, json_object(
    'id', OLD.id, 'wall', OLD.wall, 'run', OLD.run, 'course', OLD.course, 'joints_320ths_mm', OLD.joints_320ths_mm, 'pieces', OLD.pieces, 'only_cut', OLD.only_cut), NULL);
END;
