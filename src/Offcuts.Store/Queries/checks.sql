-- [check_whole] What the database itself finds wrong; ok where it is nothing.
PRAGMA integrity_check(200);

-- [check_references] Rows that speak of something that is not there.
SELECT "table" AS table_name, coalesce(rowid, 0) AS row_id, parent FROM pragma_foreign_key_check LIMIT 1000;

-- [check_schema] Every table, rule and view.
SELECT name, coalesce(sql, '') AS sql FROM sqlite_schema ORDER BY name;

-- [check_overcut] Pieces of which more was cut than there is.
SELECT code FROM piece_overcut ORDER BY code;

-- [check_circles] Pieces that are among their own ancestors.
WITH RECURSIVE line (start, code) AS (
  SELECT code, cut_from FROM piece WHERE cut_from IS NOT NULL
  UNION
  SELECT line.start, piece.cut_from FROM line JOIN piece ON piece.code = line.code WHERE piece.cut_from IS NOT NULL)
SELECT start AS code FROM line WHERE start = code ORDER BY start;

-- [check_codes_twice] Codes that more than one thing has.
SELECT code FROM (
  SELECT code FROM piece UNION ALL SELECT code FROM bin UNION ALL SELECT code FROM blank
  UNION ALL SELECT code FROM place WHERE code IS NOT NULL UNION ALL SELECT code FROM bundle UNION ALL SELECT code FROM void_code)
GROUP BY code HAVING count(*) > 1 ORDER BY code;

-- [check_codes] Every code there is.
SELECT code FROM piece UNION ALL SELECT code FROM bin UNION ALL SELECT code FROM blank
UNION ALL SELECT code FROM place WHERE code IS NOT NULL UNION ALL SELECT code FROM bundle UNION ALL SELECT code FROM void_code;

-- [check_bins_below_zero]
SELECT code FROM bin WHERE quantity < 0 ORDER BY code;

-- [check_reservations] Pieces whose state and reservation don't fit.
SELECT code FROM piece WHERE (state = 'reserved') <> (reserved_for IS NOT NULL) ORDER BY code;

-- [check_labels_of_nothing] Labels that wait for what is not there.
SELECT code FROM label_queue AS waiting
WHERE NOT EXISTS (SELECT 1 FROM piece WHERE piece.code = waiting.code) AND NOT EXISTS (SELECT 1 FROM bin WHERE bin.code = waiting.code)
  AND NOT EXISTS (SELECT 1 FROM place WHERE place.code = waiting.code) AND NOT EXISTS (SELECT 1 FROM bundle WHERE bundle.code = waiting.code)
ORDER BY code;

-- [check_open_entries] 0 where no change was left open.
SELECT count(*) FROM open_entry;

-- [check_history_gaps] The number before each entry that has none before it.
SELECT number - 1 FROM history AS entry
WHERE number > 1 AND NOT EXISTS (SELECT 1 FROM history AS before WHERE before.number = entry.number - 1)
ORDER BY number;

-- [check_changes_without_entry]
SELECT DISTINCT entry FROM change WHERE NOT EXISTS (SELECT 1 FROM history WHERE history.number = change.entry) ORDER BY entry;

-- [check_steps] Plans with another number of steps than of pieces.
SELECT plan.id FROM plan
WHERE json_array_length(plan.document, '$.pieces') <> (SELECT count(*) FROM plan_step WHERE plan_step.plan = plan.id)
ORDER BY plan.id;

-- [check_last_images] Every row that the history knows, as it left it last; after is empty where it was removed.
SELECT table_name, row_id, max(number) AS number, after FROM change GROUP BY table_name, row_id ORDER BY table_name, row_id;

-- [count_piece] How many pieces, gone or not.
SELECT count(*) FROM piece;

-- [count_history] How many entries the history has.
SELECT count(*) FROM history;
