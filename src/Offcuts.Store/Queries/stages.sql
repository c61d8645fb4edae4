-- [stages] Every stage, in the order of the work.
SELECT * FROM stage ORDER BY position, id;

-- [required_cuts] What stages need cut, in each stage's order.
SELECT * FROM required_cut ORDER BY position, id;

-- [hardware_needs] What stages need counted out, in each stage's order.
SELECT * FROM hardware_need ORDER BY position, id;

-- [stage_add]
INSERT INTO stage (position, name, begins_on) VALUES (1 + (SELECT count(*) FROM stage), :name, :begins_on) RETURNING id;

-- [stage_set]
UPDATE stage SET begins_on = :begins_on WHERE id = :id;

-- [stage_rename]
UPDATE stage SET name = :name WHERE id = :id;

-- [stage_place]
UPDATE stage SET position = :position WHERE id = :id;

-- [stage_remove]
DELETE FROM stage WHERE id = :id;

-- [stage_free_pieces]
UPDATE piece SET state = 'in yard', reserved_for = NULL WHERE reserved_for = :id;

-- [required_cuts_remove]
DELETE FROM required_cut WHERE stage = :stage;

-- [required_cut_add]
INSERT INTO required_cut (stage, position, name, material, shortest_320ths_mm, longest_320ths_mm, count, use, treated, rip)
VALUES (:stage, :position, :name, :material, :shortest, :longest, :count, :use, :treated, :rip);

-- [hardware_needs_remove]
DELETE FROM hardware_need WHERE stage = :stage;

-- [hardware_need_add]
INSERT INTO hardware_need (stage, position, name, hardware, unit, count)
VALUES (:stage, :position, :name, :hardware, :unit, :count);

-- [pieces_rename_stage]
UPDATE piece SET from_stage = :name WHERE from_stage = :old;

-- [ledger_rename_stage]
UPDATE ledger SET stage = :name WHERE stage = :old;
