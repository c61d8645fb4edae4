-- Version 2 of the yard file: a cut may be sawn lengthwise out of a wider piece.

-- rip  1 where a wider board of the same thickness, or a taller panel of the same foam, may serve the cut.
ALTER TABLE required_cut ADD COLUMN rip INTEGER NOT NULL DEFAULT 0 CHECK (rip IN (0, 1));

DROP TRIGGER required_cut_added;
DROP TRIGGER required_cut_changed;
DROP TRIGGER required_cut_removed;

CREATE TRIGGER required_cut_added AFTER INSERT ON required_cut BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'required_cut', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'stage', NEW.stage, 'position', NEW.position, 'name', NEW.name, 'material', NEW.material,
    'shortest_320ths_mm', NEW.shortest_320ths_mm, 'longest_320ths_mm', NEW.longest_320ths_mm, 'count', NEW.count,
    'use', NEW.use, 'treated', NEW.treated, 'rip', NEW.rip));
END;

CREATE TRIGGER required_cut_changed AFTER UPDATE ON required_cut BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'required_cut', NEW.id, NULL, json_object(
    'id', OLD.id, 'stage', OLD.stage, 'position', OLD.position, 'name', OLD.name, 'material', OLD.material,
    'shortest_320ths_mm', OLD.shortest_320ths_mm, 'longest_320ths_mm', OLD.longest_320ths_mm, 'count', OLD.count,
    'use', OLD.use, 'treated', OLD.treated, 'rip', OLD.rip), json_object(
    'id', NEW.id, 'stage', NEW.stage, 'position', NEW.position, 'name', NEW.name, 'material', NEW.material,
    'shortest_320ths_mm', NEW.shortest_320ths_mm, 'longest_320ths_mm', NEW.longest_320ths_mm, 'count', NEW.count,
    'use', NEW.use, 'treated', NEW.treated, 'rip', NEW.rip));
END;

CREATE TRIGGER required_cut_removed AFTER DELETE ON required_cut BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'required_cut', OLD.id, NULL, json_object(
    'id', OLD.id, 'stage', OLD.stage, 'position', OLD.position, 'name', OLD.name, 'material', OLD.material,
    'shortest_320ths_mm', OLD.shortest_320ths_mm, 'longest_320ths_mm', OLD.longest_320ths_mm, 'count', OLD.count,
    'use', OLD.use, 'treated', OLD.treated, 'rip', OLD.rip), NULL);
END;

-- What every stage needs, in the order of the work.
DROP VIEW stage_needs;
CREATE VIEW stage_needs AS
SELECT
  stage.position AS stage_position,
  stage.name AS stage,
  stage.begins_on,
  need.name,
  need.material,
  need.shortest_in,
  need.longest_in,
  need.count,
  need.use,
  need.treated,
  need.rip
FROM stage
JOIN (
  SELECT stage, 1 AS kind, position, name, material, shortest_320ths_mm / 8128.0 AS shortest_in,
    longest_320ths_mm / 8128.0 AS longest_in, count, use, treated, rip
  FROM required_cut
  UNION ALL
  SELECT stage, 2, position, name, hardware, NULL, NULL, count, NULL, NULL, NULL
  FROM hardware_need
) AS need ON need.stage = stage.id
ORDER BY stage.position, need.kind, need.position;

-- Every cut of every kept plan, with how far its piece has come. A piece without a code is one to buy. ripped_into is the cut's own
-- material where it is sawn out of a wider piece, strip_kept_as what becomes of the strip beside it (nothing where it is scrap).
DROP VIEW plan_cut;
CREATE VIEW plan_cut AS
SELECT
  plan.id AS plan,
  plan.made_on,
  plan_step.piece AS piece_number,
  plan_step.state,
  piece.value ->> '$.source.code' AS code,
  coalesce(piece.value ->> '$.source.material', piece.value ->> '$.bought.material') AS material,
  cut.value ->> '$.stage' AS stage,
  cut.value ->> '$.cut' AS cut,
  (cut.value ->> '$.start_320ths_mm') / 8128.0 AS start_in,
  (cut.value ->> '$.length_320ths_mm') / 8128.0 AS length_in,
  cut.value ->> '$.rip.into' AS ripped_into,
  cut.value ->> '$.rip.kept_as' AS strip_kept_as
FROM plan
JOIN json_each(plan.document, '$.pieces') AS piece
JOIN plan_step ON plan_step.plan = plan.id AND plan_step.piece = piece.key
JOIN json_each(piece.value, '$.cuts') AS cut
ORDER BY plan.id, plan_step.piece, start_in;
