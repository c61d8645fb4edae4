-- Version 1 of the yard file, second part: rules that look at more than one row. Each refuses with a sentence.

-- A code belongs to one thing only: a piece, a bin, or a blank label.
CREATE TRIGGER piece_code_is_free BEFORE INSERT ON piece
WHEN EXISTS (SELECT 1 FROM bin WHERE code = NEW.code) OR EXISTS (SELECT 1 FROM blank WHERE code = NEW.code)
BEGIN SELECT RAISE(ABORT, 'this code belongs to a bin or a blank label'); END;

CREATE TRIGGER bin_code_is_free BEFORE INSERT ON bin
WHEN EXISTS (SELECT 1 FROM piece WHERE code = NEW.code) OR EXISTS (SELECT 1 FROM blank WHERE code = NEW.code)
BEGIN SELECT RAISE(ABORT, 'this code belongs to a piece or a blank label'); END;

CREATE TRIGGER blank_code_is_free BEFORE INSERT ON blank
WHEN EXISTS (SELECT 1 FROM piece WHERE code = NEW.code) OR EXISTS (SELECT 1 FROM bin WHERE code = NEW.code)
BEGIN SELECT RAISE(ABORT, 'this code belongs to a piece or a bin'); END;

-- A code stays with its thing: the label is on the wood.
CREATE TRIGGER piece_code_stays BEFORE UPDATE OF code ON piece WHEN NEW.code <> OLD.code
BEGIN SELECT RAISE(ABORT, 'a piece keeps its code'); END;

CREATE TRIGGER bin_code_stays BEFORE UPDATE OF code ON bin WHEN NEW.code <> OLD.code
BEGIN SELECT RAISE(ABORT, 'a bin keeps its code'); END;

CREATE TRIGGER blank_code_stays BEFORE UPDATE OF code ON blank WHEN NEW.code <> OLD.code
BEGIN SELECT RAISE(ABORT, 'a blank label keeps its code'); END;

-- A bad spot ends after it starts, inside the piece.
CREATE TRIGGER piece_bad_spots_when_added BEFORE INSERT ON piece
WHEN NEW.bad_spots_320ths_mm <> '[]' AND EXISTS (
  SELECT 1 FROM json_each(NEW.bad_spots_320ths_mm) AS spot
  WHERE (json_type(spot.value, '$[0]') = 'integer' AND json_type(spot.value, '$[1]') = 'integer'
         AND 0 <= spot.value ->> 0 AND spot.value ->> 0 < spot.value ->> 1 AND spot.value ->> 1 <= NEW.length_320ths_mm) IS NOT TRUE)
BEGIN SELECT RAISE(ABORT, 'a bad spot lies inside its piece and ends after it starts'); END;

CREATE TRIGGER piece_bad_spots_when_changed BEFORE UPDATE OF bad_spots_320ths_mm, length_320ths_mm ON piece
WHEN NEW.bad_spots_320ths_mm <> '[]' AND EXISTS (
  SELECT 1 FROM json_each(NEW.bad_spots_320ths_mm) AS spot
  WHERE (json_type(spot.value, '$[0]') = 'integer' AND json_type(spot.value, '$[1]') = 'integer'
         AND 0 <= spot.value ->> 0 AND spot.value ->> 0 < spot.value ->> 1 AND spot.value ->> 1 <= NEW.length_320ths_mm) IS NOT TRUE)
BEGIN SELECT RAISE(ABORT, 'a bad spot lies inside its piece and ends after it starts'); END;

-- What was cut from a piece is never more than the piece: lengths together, of a sheet areas together. A piece of another
-- material (a board ripped into two) is not measured against it.
CREATE VIEW piece_overcut AS
SELECT parent.code
FROM piece AS parent
JOIN piece AS child ON child.cut_from = parent.code AND child.material = parent.material COLLATE NOCASE
GROUP BY parent.code
HAVING sum(child.length_320ths_mm * 1.0 * max(child.width_320ths_mm, 1)) > parent.length_320ths_mm * 1.0 * max(parent.width_320ths_mm, 1);

CREATE TRIGGER piece_family_when_added AFTER INSERT ON piece
WHEN NEW.cut_from IS NOT NULL AND EXISTS (SELECT 1 FROM piece_overcut WHERE code = NEW.cut_from)
BEGIN SELECT RAISE(ABORT, 'more was cut from a piece than there is of it'); END;

CREATE TRIGGER piece_family_when_changed AFTER UPDATE OF length_320ths_mm, width_320ths_mm, material, cut_from ON piece
WHEN EXISTS (SELECT 1 FROM piece_overcut WHERE code = NEW.cut_from) OR EXISTS (SELECT 1 FROM piece_overcut WHERE code = NEW.code)
BEGIN SELECT RAISE(ABORT, 'more was cut from a piece than there is of it'); END;

-- No piece is its own ancestor.
CREATE TRIGGER piece_is_not_its_own_ancestor BEFORE UPDATE OF cut_from ON piece
WHEN NEW.cut_from IS NOT NULL AND EXISTS (
  WITH RECURSIVE ancestor (code) AS (
    VALUES (NEW.cut_from)
    UNION
    SELECT piece.cut_from FROM piece JOIN ancestor ON piece.code = ancestor.code WHERE piece.cut_from IS NOT NULL)
  SELECT 1 FROM ancestor WHERE code = NEW.code)
BEGIN SELECT RAISE(ABORT, 'a piece can not be cut from itself'); END;

-- A piece leaves by its state, the settings stay one row, and each use keeps its rule; only an undo takes back what was never
-- meant to be.
CREATE TRIGGER piece_stays BEFORE DELETE ON piece
WHEN NOT EXISTS (SELECT 1 FROM open_entry JOIN history ON history.number = open_entry.entry WHERE history.undoes IS NOT NULL)
BEGIN SELECT RAISE(ABORT, 'a piece is never removed: set its state'); END;

CREATE TRIGGER setting_stays BEFORE DELETE ON setting
BEGIN SELECT RAISE(ABORT, 'the settings stay'); END;

CREATE TRIGGER use_rule_stays BEFORE DELETE ON use_rule
BEGIN SELECT RAISE(ABORT, 'each use keeps its rule'); END;

-- The history only grows.
CREATE TRIGGER history_stays BEFORE DELETE ON history
BEGIN SELECT RAISE(ABORT, 'the history is never changed'); END;

CREATE TRIGGER history_is_final BEFORE UPDATE ON history
BEGIN SELECT RAISE(ABORT, 'the history is never changed'); END;

CREATE TRIGGER history_is_not_replaced BEFORE INSERT ON history
WHEN EXISTS (SELECT 1 FROM history WHERE number = NEW.number OR undoes = NEW.undoes)
BEGIN SELECT RAISE(ABORT, 'the history is never changed'); END;

CREATE TRIGGER history_grows_by_one AFTER INSERT ON history
WHEN NEW.number > 1 AND NOT EXISTS (SELECT 1 FROM history WHERE number = NEW.number - 1)
BEGIN SELECT RAISE(ABORT, 'entries of the history are numbered without a gap'); END;

CREATE TRIGGER change_stays BEFORE DELETE ON change
BEGIN SELECT RAISE(ABORT, 'the history is never changed'); END;

CREATE TRIGGER change_is_final BEFORE UPDATE ON change
BEGIN SELECT RAISE(ABORT, 'the history is never changed'); END;

CREATE TRIGGER change_is_not_replaced BEFORE INSERT ON change
WHEN EXISTS (SELECT 1 FROM change WHERE number = NEW.number)
BEGIN SELECT RAISE(ABORT, 'the history is never changed'); END;
