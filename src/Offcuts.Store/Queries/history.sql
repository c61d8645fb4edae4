-- [history] The latest entries, newest first.
SELECT entry.number, entry.at, entry.what, entry.undoes,
  EXISTS (SELECT 1 FROM history AS later WHERE later.undoes = entry.number) AS undone
FROM history AS entry
ORDER BY entry.number DESC
LIMIT :most;

-- [history_of] Every entry that touched a code, newest first.
SELECT entry.number, entry.at, entry.what, entry.undoes,
  EXISTS (SELECT 1 FROM history AS later WHERE later.undoes = entry.number) AS undone
FROM history AS entry
WHERE entry.number IN (SELECT change.entry FROM change WHERE change.code = :code)
ORDER BY entry.number DESC;

-- [history_last_number] 0 where nothing was ever done.
SELECT coalesce(max(number), 0) FROM history;

-- [history_to_undo] The last entry that stands: a change, or a change done again, that was not taken back. what is that of the
-- change itself.
WITH RECURSIVE chain (number, steps, what) AS (
  SELECT number, 0, what FROM history WHERE undoes IS NULL
  UNION ALL
  SELECT later.number, chain.steps + 1, chain.what FROM chain JOIN history AS later ON later.undoes = chain.number)
SELECT entry.number, entry.at, chain.what, entry.undoes, 0 AS undone
FROM chain JOIN history AS entry ON entry.number = chain.number
WHERE chain.steps % 2 = 0 AND NOT EXISTS (SELECT 1 FROM history AS later WHERE later.undoes = entry.number)
ORDER BY entry.number DESC
LIMIT 1;

-- [history_to_redo] The last undo that stands, where no new change was made since. what is that of the change it took back.
WITH RECURSIVE chain (number, steps, what) AS (
  SELECT number, 0, what FROM history WHERE undoes IS NULL
  UNION ALL
  SELECT later.number, chain.steps + 1, chain.what FROM chain JOIN history AS later ON later.undoes = chain.number)
SELECT entry.number, entry.at, chain.what, entry.undoes, 0 AS undone
FROM chain JOIN history AS entry ON entry.number = chain.number
WHERE chain.steps % 2 = 1 AND NOT EXISTS (SELECT 1 FROM history AS later WHERE later.undoes = entry.number)
  AND entry.number > (SELECT max(number) FROM history WHERE undoes IS NULL)
ORDER BY entry.number DESC
LIMIT 1;

-- [history_add]
INSERT INTO history (number, at, what, undoes) VALUES (1 + (SELECT coalesce(max(number), 0) FROM history), :at, :what, :undoes)
RETURNING number;

-- [entry_open]
INSERT INTO open_entry (id, entry) VALUES (1, :entry);

-- [entry_close]
DELETE FROM open_entry;

-- [changes_backwards] What an entry changed, last first.
SELECT table_name, row_id, before, after FROM change WHERE entry = :entry ORDER BY number DESC;

-- [columns] The columns of a table.
SELECT name FROM pragma_table_info(:table);

-- [version] The version of the file.
SELECT user_version FROM pragma_user_version;
