-- Version 8 of the yard file: places with labels and the day they were last counted, bundles, labels that are void, and what printers are off by.

-- A place where things lie: a rack, a bay, a trailer. It is here once it has a label or was counted; a piece names its place by itself.
--   code        what its label says, where it has one
--   counted_on  the day it was last counted, where it ever was
CREATE TABLE place (
  id         INTEGER PRIMARY KEY,
  name       TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (length(name) BETWEEN 1 AND 60),
  code       TEXT UNIQUE CHECK (length(code) = 7 AND code NOT GLOB '*[^2345679ACDEFHJKMNPRTVWXY]*'),
  counted_on TEXT CHECK (counted_on IS date(counted_on))
) STRICT;

-- Pieces strapped together under one label. They keep codes of their own.
--   place      where the bundle lies; so do its pieces
--   opened_on  the day it was opened; nothing is in it from then on
CREATE TABLE bundle (
  id        INTEGER PRIMARY KEY,
  code      TEXT NOT NULL UNIQUE CHECK (length(code) = 7 AND code NOT GLOB '*[^2345679ACDEFHJKMNPRTVWXY]*'),
  name      TEXT NOT NULL DEFAULT '' CHECK (length(name) <= 60),
  place     TEXT NOT NULL DEFAULT '' CHECK (length(place) <= 60),
  opened_on TEXT CHECK (opened_on IS date(opened_on))
) STRICT;

-- What is in a bundle, in the order in which it was put in. A piece is in one bundle at most.
CREATE TABLE bundle_piece (
  id     INTEGER PRIMARY KEY,
  bundle INTEGER NOT NULL REFERENCES bundle (id),
  piece  TEXT NOT NULL UNIQUE REFERENCES piece (code)
) STRICT;

CREATE INDEX bundle_piece_by_bundle ON bundle_piece (bundle);

-- Codes that are on paper somewhere and must never be taken: spoiled labels. was says what such a label was for.
CREATE TABLE void_code (
  id        INTEGER PRIMARY KEY,
  code      TEXT NOT NULL UNIQUE CHECK (length(code) = 7 AND code NOT GLOB '*[^2345679ACDEFHJKMNPRTVWXY]*'),
  was       TEXT NOT NULL CHECK (was IN ('blank', 'place')),
  voided_on TEXT NOT NULL CHECK (voided_on = date(voided_on))
) STRICT;

-- What a printer must be corrected by, so that labels lie where the sheet has them: to the right and down, below 0 to the left and up.
CREATE TABLE printer (
  id              INTEGER PRIMARY KEY,
  name            TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (length(name) BETWEEN 1 AND 60),
  right_320ths_mm INTEGER NOT NULL CHECK (right_320ths_mm BETWEEN -6400 AND 6400),
  down_320ths_mm  INTEGER NOT NULL CHECK (down_320ths_mm BETWEEN -6400 AND 6400)
) STRICT;

-- A code belongs to one thing only, whatever kind of thing that is.
CREATE TRIGGER piece_code_is_of_no_place BEFORE INSERT ON piece
WHEN EXISTS (SELECT 1 FROM place WHERE code = NEW.code)
   OR EXISTS (SELECT 1 FROM bundle WHERE code = NEW.code)
   OR EXISTS (SELECT 1 FROM void_code WHERE code = NEW.code)
BEGIN SELECT RAISE(ABORT, 'this code belongs to a place, a bundle or a void label'); END;

CREATE TRIGGER bin_code_is_of_no_place BEFORE INSERT ON bin
WHEN EXISTS (SELECT 1 FROM place WHERE code = NEW.code)
   OR EXISTS (SELECT 1 FROM bundle WHERE code = NEW.code)
   OR EXISTS (SELECT 1 FROM void_code WHERE code = NEW.code)
BEGIN SELECT RAISE(ABORT, 'this code belongs to a place, a bundle or a void label'); END;

CREATE TRIGGER blank_code_is_of_no_place BEFORE INSERT ON blank
WHEN EXISTS (SELECT 1 FROM place WHERE code = NEW.code)
   OR EXISTS (SELECT 1 FROM bundle WHERE code = NEW.code)
   OR EXISTS (SELECT 1 FROM void_code WHERE code = NEW.code)
BEGIN SELECT RAISE(ABORT, 'this code belongs to a place, a bundle or a void label'); END;

CREATE TRIGGER place_code_is_free BEFORE INSERT ON place
WHEN EXISTS (SELECT 1 FROM piece WHERE code = NEW.code)
   OR EXISTS (SELECT 1 FROM bin WHERE code = NEW.code)
   OR EXISTS (SELECT 1 FROM blank WHERE code = NEW.code)
   OR EXISTS (SELECT 1 FROM bundle WHERE code = NEW.code)
   OR EXISTS (SELECT 1 FROM void_code WHERE code = NEW.code)
BEGIN SELECT RAISE(ABORT, 'this code belongs to something else'); END;

CREATE TRIGGER bundle_code_is_free BEFORE INSERT ON bundle
WHEN EXISTS (SELECT 1 FROM piece WHERE code = NEW.code)
   OR EXISTS (SELECT 1 FROM bin WHERE code = NEW.code)
   OR EXISTS (SELECT 1 FROM blank WHERE code = NEW.code)
   OR EXISTS (SELECT 1 FROM place WHERE code = NEW.code)
   OR EXISTS (SELECT 1 FROM void_code WHERE code = NEW.code)
BEGIN SELECT RAISE(ABORT, 'this code belongs to something else'); END;

CREATE TRIGGER void_code_code_is_free BEFORE INSERT ON void_code
WHEN EXISTS (SELECT 1 FROM piece WHERE code = NEW.code)
   OR EXISTS (SELECT 1 FROM bin WHERE code = NEW.code)
   OR EXISTS (SELECT 1 FROM blank WHERE code = NEW.code)
   OR EXISTS (SELECT 1 FROM place WHERE code = NEW.code)
   OR EXISTS (SELECT 1 FROM bundle WHERE code = NEW.code)
BEGIN SELECT RAISE(ABORT, 'this code belongs to something else'); END;

CREATE TRIGGER place_code_stays_free BEFORE UPDATE OF code ON place
WHEN NEW.code IS NOT OLD.code AND (EXISTS (SELECT 1 FROM piece WHERE code = NEW.code)
   OR EXISTS (SELECT 1 FROM bin WHERE code = NEW.code)
   OR EXISTS (SELECT 1 FROM blank WHERE code = NEW.code)
   OR EXISTS (SELECT 1 FROM bundle WHERE code = NEW.code)
   OR EXISTS (SELECT 1 FROM void_code WHERE code = NEW.code))
BEGIN SELECT RAISE(ABORT, 'this code belongs to something else'); END;

CREATE TRIGGER bundle_code_stays BEFORE UPDATE OF code ON bundle WHEN NEW.code <> OLD.code
BEGIN SELECT RAISE(ABORT, 'a bundle keeps its code'); END;

CREATE TRIGGER place_added AFTER INSERT ON place BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'place', NEW.id, NEW.code, NULL, json_object(
    'id', NEW.id, 'name', NEW.name, 'code', NEW.code, 'counted_on', NEW.counted_on));
END;

CREATE TRIGGER place_changed AFTER UPDATE ON place BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'place', NEW.id, coalesce(NEW.code, OLD.code), json_object(
    'id', OLD.id, 'name', OLD.name, 'code', OLD.code, 'counted_on', OLD.counted_on), json_object(
    'id', NEW.id, 'name', NEW.name, 'code', NEW.code, 'counted_on', NEW.counted_on));
END;

CREATE TRIGGER place_removed AFTER DELETE ON place BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'place', OLD.id, OLD.code, json_object(
    'id', OLD.id, 'name', OLD.name, 'code', OLD.code, 'counted_on', OLD.counted_on), NULL);
END;

CREATE TRIGGER bundle_added AFTER INSERT ON bundle BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'bundle', NEW.id, NEW.code, NULL, json_object(
    'id', NEW.id, 'code', NEW.code, 'name', NEW.name, 'place', NEW.place, 'opened_on', NEW.opened_on));
END;

CREATE TRIGGER bundle_changed AFTER UPDATE ON bundle BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'bundle', NEW.id, NEW.code, json_object(
    'id', OLD.id, 'code', OLD.code, 'name', OLD.name, 'place', OLD.place, 'opened_on', OLD.opened_on), json_object(
    'id', NEW.id, 'code', NEW.code, 'name', NEW.name, 'place', NEW.place, 'opened_on', NEW.opened_on));
END;

CREATE TRIGGER bundle_removed AFTER DELETE ON bundle BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'bundle', OLD.id, OLD.code, json_object(
    'id', OLD.id, 'code', OLD.code, 'name', OLD.name, 'place', OLD.place, 'opened_on', OLD.opened_on), NULL);
END;

CREATE TRIGGER bundle_piece_added AFTER INSERT ON bundle_piece BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'bundle_piece', NEW.id, NEW.piece, NULL, json_object(
    'id', NEW.id, 'bundle', NEW.bundle, 'piece', NEW.piece));
END;

CREATE TRIGGER bundle_piece_changed AFTER UPDATE ON bundle_piece BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'bundle_piece', NEW.id, NEW.piece, json_object(
    'id', OLD.id, 'bundle', OLD.bundle, 'piece', OLD.piece), json_object(
    'id', NEW.id, 'bundle', NEW.bundle, 'piece', NEW.piece));
END;

CREATE TRIGGER bundle_piece_removed AFTER DELETE ON bundle_piece BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'bundle_piece', OLD.id, OLD.piece, json_object(
    'id', OLD.id, 'bundle', OLD.bundle, 'piece', OLD.piece), NULL);
END;

CREATE TRIGGER void_code_added AFTER INSERT ON void_code BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'void_code', NEW.id, NEW.code, NULL, json_object(
    'id', NEW.id, 'code', NEW.code, 'was', NEW.was, 'voided_on', NEW.voided_on));
END;

CREATE TRIGGER void_code_changed AFTER UPDATE ON void_code BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'void_code', NEW.id, NEW.code, json_object(
    'id', OLD.id, 'code', OLD.code, 'was', OLD.was, 'voided_on', OLD.voided_on), json_object(
    'id', NEW.id, 'code', NEW.code, 'was', NEW.was, 'voided_on', NEW.voided_on));
END;

CREATE TRIGGER void_code_removed AFTER DELETE ON void_code BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'void_code', OLD.id, OLD.code, json_object(
    'id', OLD.id, 'code', OLD.code, 'was', OLD.was, 'voided_on', OLD.voided_on), NULL);
END;

CREATE TRIGGER printer_added AFTER INSERT ON printer BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'printer', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'name', NEW.name, 'right_320ths_mm', NEW.right_320ths_mm, 'down_320ths_mm', NEW.down_320ths_mm));
END;

CREATE TRIGGER printer_changed AFTER UPDATE ON printer BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'printer', NEW.id, NULL, json_object(
    'id', OLD.id, 'name', OLD.name, 'right_320ths_mm', OLD.right_320ths_mm, 'down_320ths_mm', OLD.down_320ths_mm), json_object(
    'id', NEW.id, 'name', NEW.name, 'right_320ths_mm', NEW.right_320ths_mm, 'down_320ths_mm', NEW.down_320ths_mm));
END;

CREATE TRIGGER printer_removed AFTER DELETE ON printer BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'printer', OLD.id, NULL, json_object(
    'id', OLD.id, 'name', OLD.name, 'right_320ths_mm', OLD.right_320ths_mm, 'down_320ths_mm', OLD.down_320ths_mm), NULL);
END;

-- Every place that has a label, was counted, or has a piece or a bin at it, the one not counted for longest first.
CREATE VIEW yard_places AS
SELECT known.name, place.code, place.counted_on,
  (SELECT count(*) FROM piece WHERE piece.place = known.name COLLATE NOCASE AND piece.state IN ('in yard', 'reserved')) AS pieces,
  (SELECT count(*) FROM bin WHERE bin.place = known.name COLLATE NOCASE) AS bins
FROM (
  SELECT name FROM place
  UNION SELECT place FROM piece WHERE place <> '' AND state IN ('in yard', 'reserved')
  UNION SELECT place FROM bin WHERE place <> '') AS known
LEFT JOIN place ON place.name = known.name
GROUP BY known.name COLLATE NOCASE
ORDER BY place.counted_on, known.name COLLATE NOCASE;

-- What is in which bundle.
CREATE VIEW yard_bundles AS
SELECT bundle.code AS bundle, bundle.name, bundle.place, bundle.opened_on, piece.code AS piece, piece.material, piece.length_320ths_mm / 8128.0 AS length_in
FROM bundle
LEFT JOIN bundle_piece ON bundle_piece.bundle = bundle.id
LEFT JOIN piece ON piece.code = bundle_piece.piece
ORDER BY bundle.id, bundle_piece.id;
