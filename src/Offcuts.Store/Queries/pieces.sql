-- [pieces_on_hand] What lies in the yard, free or reserved, in the order of entry.
SELECT piece.*, stage.name AS reserved_name
FROM piece
LEFT JOIN stage ON stage.id = piece.reserved_for
WHERE piece.state IN ('in yard', 'reserved')
ORDER BY piece.id;

-- [pieces_all] Every piece there ever was, in the order of entry.
SELECT piece.*, stage.name AS reserved_name
FROM piece
LEFT JOIN stage ON stage.id = piece.reserved_for
ORDER BY piece.id;

-- [piece] One piece.
SELECT piece.*, stage.name AS reserved_name
FROM piece
LEFT JOIN stage ON stage.id = piece.reserved_for
WHERE piece.code = :code;

-- [piece_family] Every piece that comes from the same first piece, that piece too.
WITH RECURSIVE
  ancestor (code, cut_from) AS (
    SELECT code, cut_from FROM piece WHERE code = :code
    UNION
    SELECT piece.code, piece.cut_from FROM piece JOIN ancestor ON piece.code = ancestor.cut_from),
  member (code) AS (
    SELECT code FROM ancestor WHERE cut_from IS NULL
    UNION
    SELECT piece.code FROM piece JOIN member ON piece.cut_from = member.code)
SELECT piece.*, stage.name AS reserved_name
FROM member
JOIN piece ON piece.code = member.code
LEFT JOIN stage ON stage.id = piece.reserved_for
ORDER BY piece.id;

-- [piece_add]
INSERT INTO piece (
  code, material, length_320ths_mm, width_320ths_mm, condition, bad_spots_320ths_mm, trim_left_320ths_mm, trim_right_320ths_mm,
  treated, treated_with, stamped, nails, concrete, oiled, place, from_stage, cut_from, first_line_320ths_mm, note, state, reserved_for)
VALUES (
  :code, :material, :length, :width, :condition, :bad_spots, :trim_left, :trim_right,
  :treated, :treated_with, :stamped, :nails, :concrete, :oiled, :place, :from_stage, :cut_from, :first_line, :note, :state, :reserved_for);

-- [piece_set]
UPDATE piece SET
  material = :material, length_320ths_mm = :length, width_320ths_mm = :width, condition = :condition,
  bad_spots_320ths_mm = :bad_spots, trim_left_320ths_mm = :trim_left, trim_right_320ths_mm = :trim_right,
  treated = :treated, treated_with = :treated_with, stamped = :stamped, nails = :nails, concrete = :concrete, oiled = :oiled,
  place = :place, from_stage = :from_stage, cut_from = :cut_from, first_line_320ths_mm = :first_line, note = :note,
  state = :state, reserved_for = :reserved_for
WHERE code = :code;

-- [pieces_of_parent] What was cut from a piece, in the order of entry.
SELECT piece.*, stage.name AS reserved_name
FROM piece
LEFT JOIN stage ON stage.id = piece.reserved_for
WHERE piece.cut_from = :code
ORDER BY piece.id;

-- [piece_is_ancestor] Whether a piece is the other one or comes before it in its family.
WITH RECURSIVE ancestor (code) AS (
  VALUES (:of)
  UNION
  SELECT piece.cut_from FROM piece JOIN ancestor ON piece.code = ancestor.code WHERE piece.cut_from IS NOT NULL)
SELECT EXISTS (SELECT 1 FROM ancestor WHERE code = :code);

-- [code_owner] What a code belongs to: a piece, a bin, a blank label, a place, a bundle, a label that is void, or nothing.
SELECT CASE
  WHEN EXISTS (SELECT 1 FROM piece WHERE code = :code) THEN 'piece'
  WHEN EXISTS (SELECT 1 FROM bin WHERE code = :code) THEN 'bin'
  WHEN EXISTS (SELECT 1 FROM blank WHERE code = :code) THEN 'blank'
  WHEN EXISTS (SELECT 1 FROM place WHERE code = :code) THEN 'place'
  WHEN EXISTS (SELECT 1 FROM bundle WHERE code = :code) THEN 'bundle'
  WHEN EXISTS (SELECT 1 FROM void_code WHERE code = :code) THEN 'void'
  ELSE 'nothing' END;

-- [code_was_issued] Whether anything ever had this code, undone or not.
SELECT EXISTS (SELECT 1 FROM change WHERE code = :code);

-- [codes_entered] When each of these codes first became a piece or a bin, by what was not taken back.
SELECT change.code, max(history.at) AS at
FROM change
JOIN history ON history.number = change.entry
WHERE change.code IN (SELECT value FROM json_each(:codes))
  AND change.table_name IN ('piece', 'bin') AND change.before IS NULL AND history.undoes IS NULL
GROUP BY change.code;
