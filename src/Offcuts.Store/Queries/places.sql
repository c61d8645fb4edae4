-- [places] Every place that has a label or was counted, in the order of entry.
SELECT * FROM place ORDER BY id;

-- [place_names] Every place that has a label, was counted, or has something lying there.
SELECT name FROM place
UNION SELECT place FROM piece WHERE state IN ('in yard', 'reserved') AND place <> ''
UNION SELECT place FROM bin WHERE place <> '';

-- [place_add]
INSERT INTO place (name, code, counted_on) VALUES (:name, :code, :counted_on);

-- [place_set]
UPDATE place SET name = :name, code = :code, counted_on = :counted_on WHERE id = :id;

-- [bundles] Every bundle, opened or not, in the order of entry.
SELECT * FROM bundle ORDER BY id;

-- [bundle_pieces] What is in which bundle, in the order in which it was put in.
SELECT bundle, piece FROM bundle_piece ORDER BY id;

-- [bundle_add]
INSERT INTO bundle (code, name, place) VALUES (:code, :name, :place) RETURNING id;

-- [bundle_place]
UPDATE bundle SET place = :place WHERE id = :id;

-- [bundle_open]
UPDATE bundle SET opened_on = :day WHERE id = :id;

-- [bundle_open_empty] A bundle that nothing is in any more counts as opened.
UPDATE bundle SET opened_on = :day
WHERE opened_on IS NULL AND NOT EXISTS (SELECT 1 FROM bundle_piece WHERE bundle_piece.bundle = bundle.id);

-- [bundle_piece_add]
INSERT INTO bundle_piece (bundle, piece) VALUES (:bundle, :piece);

-- [bundle_pieces_remove]
DELETE FROM bundle_piece WHERE bundle = :bundle;

-- [bundle_piece_leaves] A piece that is gone, or lies elsewhere than its bundle, is in it no more.
DELETE FROM bundle_piece
WHERE piece = :code
  AND (:gone = 1 OR EXISTS (SELECT 1 FROM bundle WHERE bundle.id = bundle_piece.bundle AND bundle.place <> :place COLLATE NOCASE));

-- [void_codes] Every label that is void, in the order in which they became so.
SELECT code FROM void_code ORDER BY id;

-- [void_add]
INSERT INTO void_code (code, was, voided_on) VALUES (:code, :was, :day);

-- [blanks_printed] Blank labels that nothing has taken yet, with the moment when they were printed.
SELECT blank.code, max(history.at) AS at
FROM blank
JOIN change ON change.code = blank.code AND change.table_name = 'blank' AND change.before IS NULL
JOIN history ON history.number = change.entry AND history.undoes IS NULL
GROUP BY blank.id
ORDER BY blank.id;

-- [printers] What every printer must be corrected by, by name.
SELECT * FROM printer ORDER BY name COLLATE NOCASE;

-- [printer_add]
INSERT INTO printer (name, right_320ths_mm, down_320ths_mm) VALUES (:name, :right, :down);

-- [printer_set]
UPDATE printer SET name = :name, right_320ths_mm = :right, down_320ths_mm = :down WHERE id = :id;

-- [printer_remove]
DELETE FROM printer WHERE id = :id;
