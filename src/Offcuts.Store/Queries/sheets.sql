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
