-- Version 4 of the yard file: how walls are filled, and which of their courses stand.

-- How a wall is filled. What is cut from what stands in its plan; laying is a JSON object that says which piece lies where: its fields
-- are those of the record LayingJson in this program's source, lengths in 1/320 mm. A wall has one at most.
CREATE TABLE wall_plan (
  id     INTEGER PRIMARY KEY,
  wall   INTEGER NOT NULL UNIQUE REFERENCES wall_sheet (id),
  plan   INTEGER NOT NULL UNIQUE REFERENCES plan (id),
  laying TEXT NOT NULL CHECK (json_valid(laying))
) STRICT;

-- A course of one face of a leg that stands. joints_320ths_mm is a JSON array: where its pieces meet, on the axis of the leg's runs.
CREATE TABLE wall_course (
  id               INTEGER PRIMARY KEY,
  wall             INTEGER NOT NULL REFERENCES wall_sheet (id),
  run              TEXT NOT NULL CHECK (length(run) BETWEEN 1 AND 100),
  course           INTEGER NOT NULL CHECK (course >= 1),
  joints_320ths_mm TEXT NOT NULL CHECK (json_valid(joints_320ths_mm)),
  UNIQUE (wall, run, course)
) STRICT;

CREATE TRIGGER wall_plan_added AFTER INSERT ON wall_plan BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'wall_plan', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'wall', NEW.wall, 'plan', NEW.plan, 'laying', NEW.laying));
END;

CREATE TRIGGER wall_plan_changed AFTER UPDATE ON wall_plan BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'wall_plan', NEW.id, NULL, json_object(
    'id', OLD.id, 'wall', OLD.wall, 'plan', OLD.plan, 'laying', OLD.laying), json_object(
    'id', NEW.id, 'wall', NEW.wall, 'plan', NEW.plan, 'laying', NEW.laying));
END;

CREATE TRIGGER wall_plan_removed AFTER DELETE ON wall_plan BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'wall_plan', OLD.id, NULL, json_object(
    'id', OLD.id, 'wall', OLD.wall, 'plan', OLD.plan, 'laying', OLD.laying), NULL);
END;

CREATE TRIGGER wall_course_added AFTER INSERT ON wall_course BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'wall_course', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'wall', NEW.wall, 'run', NEW.run, 'course', NEW.course, 'joints_320ths_mm', NEW.joints_320ths_mm));
END;

CREATE TRIGGER wall_course_changed AFTER UPDATE ON wall_course BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'wall_course', NEW.id, NULL, json_object(
    'id', OLD.id, 'wall', OLD.wall, 'run', OLD.run, 'course', OLD.course, 'joints_320ths_mm', OLD.joints_320ths_mm), json_object(
    'id', NEW.id, 'wall', NEW.wall, 'run', NEW.run, 'course', NEW.course, 'joints_320ths_mm', NEW.joints_320ths_mm));
END;

CREATE TRIGGER wall_course_removed AFTER DELETE ON wall_course BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'wall_course', OLD.id, NULL, json_object(
    'id', OLD.id, 'wall', OLD.wall, 'run', OLD.run, 'course', OLD.course, 'joints_320ths_mm', OLD.joints_320ths_mm), NULL);
END;

-- The courses of every wall that stand, in the order of the work.
CREATE VIEW stacked_courses AS
SELECT stage.name AS stage, wall_sheet.name AS wall, wall_course.run, wall_course.course
FROM wall_course
JOIN wall_sheet ON wall_sheet.id = wall_course.wall
JOIN stage ON stage.id = wall_sheet.stage
ORDER BY stage.position, wall_sheet.id, wall_course.course, wall_course.run;
