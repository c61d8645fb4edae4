-- Version 1 of the yard file, fourth part: views for people. The program does not read them.

-- Every piece in inches and millimetres, with the stage by its name.
CREATE VIEW yard_pieces AS
SELECT
  piece.code,
  piece.material,
  piece.length_320ths_mm / 8128.0 AS length_in,
  piece.length_320ths_mm / 320.0 AS length_mm,
  piece.width_320ths_mm / 8128.0 AS width_in,
  piece.condition,
  piece.trim_left_320ths_mm / 8128.0 AS trim_left_in,
  piece.trim_right_320ths_mm / 8128.0 AS trim_right_in,
  piece.treated,
  piece.treated_with,
  piece.stamped,
  piece.nails,
  piece.concrete,
  piece.oiled,
  piece.place,
  piece.from_stage,
  piece.cut_from,
  piece.first_line_320ths_mm / 8128.0 AS first_line_in,
  piece.note,
  piece.state,
  stage.name AS reserved_for
FROM piece
LEFT JOIN stage ON stage.id = piece.reserved_for
ORDER BY piece.id;

-- Every bad spot, from the piece's marked end.
CREATE VIEW yard_bad_spots AS
SELECT
  piece.code,
  (spot.value ->> 0) / 8128.0 AS start_in,
  (spot.value ->> 1) / 8128.0 AS end_in,
  (spot.value ->> 0) / 320.0 AS start_mm,
  (spot.value ->> 1) / 320.0 AS end_mm
FROM piece, json_each(piece.bad_spots_320ths_mm) AS spot
ORDER BY piece.id, start_mm;

-- What every stage needs, in the order of the work.
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
  need.treated
FROM stage
JOIN (
  SELECT stage, 1 AS kind, position, name, material, shortest_320ths_mm / 8128.0 AS shortest_in,
    longest_320ths_mm / 8128.0 AS longest_in, count, use, treated
  FROM required_cut
  UNION ALL
  SELECT stage, 2, position, name, hardware, NULL, NULL, count, NULL, NULL
  FROM hardware_need
) AS need ON need.stage = stage.id
ORDER BY stage.position, need.kind, need.position;

-- Every price, in whole units of money.
CREATE VIEW price_list AS
SELECT material, unit, length_320ths_mm / 8128.0 AS length_in, treated, cents / 100.0 AS price, lead_days, most_available, supplier, seen_on
FROM price
ORDER BY counted, material, length_320ths_mm, treated;

-- Every cut of every kept plan, with how far its piece has come. A piece without a code is one to buy.
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
  (cut.value ->> '$.length_320ths_mm') / 8128.0 AS length_in
FROM plan
JOIN json_each(plan.document, '$.pieces') AS piece
JOIN plan_step ON plan_step.plan = plan.id AND plan_step.piece = piece.key
JOIN json_each(piece.value, '$.cuts') AS cut
ORDER BY plan.id, plan_step.piece, start_in;

-- What every kept plan buys.
CREATE VIEW plan_shopping AS
SELECT
  plan.id AS plan,
  piece.value ->> '$.bought.material' AS material,
  (piece.value ->> '$.bought.length_320ths_mm') / 8128.0 AS length_in,
  count(*) AS count,
  sum(piece.value ->> '$.bought.cents') / 100.0 AS cost
FROM plan
JOIN json_each(plan.document, '$.pieces') AS piece
WHERE piece.value ->> '$.bought.material' IS NOT NULL
GROUP BY plan.id, material, length_in
ORDER BY plan.id, material, length_in;

-- What was saved, stage by stage.
CREATE VIEW ledger_by_stage AS
SELECT
  stage,
  sum(all_new_cents - spent_cents) / 100.0 AS saved,
  sum(CAST(board_feet AS REAL)) AS board_feet,
  sum(CAST(panel_square_mm AS REAL)) / 92903.04 AS panel_square_feet,
  sum(CAST(weight_pounds AS REAL)) AS weight_pounds,
  sum(pieces_used) AS pieces_used,
  sum(hardware_used) AS hardware_used
FROM ledger
GROUP BY stage
ORDER BY min(id);

-- The history, with what was taken back marked.
CREATE VIEW history_list AS
SELECT
  entry.number,
  entry.at,
  entry.what,
  entry.undoes,
  EXISTS (SELECT 1 FROM history AS later WHERE later.undoes = entry.number) AS undone,
  (SELECT count(*) FROM change WHERE change.entry = entry.number) AS rows_changed
FROM history AS entry
ORDER BY entry.number;
