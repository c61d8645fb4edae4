-- [system_sheets] Every system sheet, in the order of entry.
SELECT id, name, sheet FROM system_sheet ORDER BY id;

-- [system_sheet_add]
INSERT INTO system_sheet (name, sheet) VALUES (:name, :sheet) RETURNING id;

-- [system_sheet_set]
UPDATE system_sheet SET name = :name, sheet = :sheet WHERE id = :id;

-- [system_sheet_remove]
DELETE FROM system_sheet WHERE id = :id;

-- [wall_sheets] Every wall, in the order of the work.
SELECT wall_sheet.id, stage.name AS stage, wall_sheet.stage AS stage_id, wall_sheet.name, wall_sheet.system, wall_sheet.sheet
FROM wall_sheet
JOIN stage ON stage.id = wall_sheet.stage
ORDER BY stage.position, wall_sheet.id;

-- [wall_sheet_add]
INSERT INTO wall_sheet (stage, name, system, sheet) VALUES (:stage, :name, :system, :sheet) RETURNING id;

-- [wall_sheet_set]
UPDATE wall_sheet SET stage = :stage, name = :name, system = :system, sheet = :sheet WHERE id = :id;

-- [wall_sheet_remove]
DELETE FROM wall_sheet WHERE id = :id;

-- [wall_sheets_remove]
DELETE FROM wall_sheet WHERE stage = :stage;

-- [wall_plans] How every wall is filled, in the order of the work.
SELECT wall_plan.id, wall_sheet.name AS wall, wall_plan.wall AS wall_id, wall_plan.plan, wall_plan.laying
FROM wall_plan
JOIN wall_sheet ON wall_sheet.id = wall_plan.wall
JOIN stage ON stage.id = wall_sheet.stage
ORDER BY stage.position, wall_sheet.id;

-- [wall_plan_add]
INSERT INTO wall_plan (wall, plan, laying) VALUES (:wall, :plan, :laying);

-- [wall_plan_set]
UPDATE wall_plan SET laying = :laying WHERE id = :id;

-- [wall_plan_remove]
DELETE FROM wall_plan WHERE id = :id;

-- [wall_courses] Every course that stands or is cut and waits to be stacked, in the order of the work.
SELECT wall_course.id, wall_sheet.name AS wall, wall_course.run, wall_course.course, wall_course.joints_320ths_mm, wall_course.pieces, wall_course.only_cut
FROM wall_course
JOIN wall_sheet ON wall_sheet.id = wall_course.wall
JOIN stage ON stage.id = wall_sheet.stage
ORDER BY stage.position, wall_sheet.id, wall_course.course, wall_course.id;

-- [wall_course_add]
INSERT INTO wall_course (wall, run, course, joints_320ths_mm, pieces, only_cut) VALUES (:wall, :run, :course, :joints, :pieces, :only_cut);

-- [wall_course_stands] A course that was cut, once it is stacked.
UPDATE wall_course SET joints_320ths_mm = :joints, pieces = :pieces, only_cut = 0 WHERE wall = :wall AND run = :run AND course = :course AND only_cut = 1;

-- [wall_courses_remove]
DELETE FROM wall_course WHERE wall = :wall;
