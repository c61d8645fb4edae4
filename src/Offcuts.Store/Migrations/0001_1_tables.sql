-- Version 1 of the yard file, first part: what the yard holds.
--
-- Lengths are whole numbers of 1/320 mm, because both 1/64 inch (127 of them) and 0.1 mm (32) are whole in it:
-- 1 inch is 8128, 1 foot 97536, 1 mm 320. Every such column ends in _320ths_mm. Money is whole cents, tax not included.
-- Yes is 1 and no is 0. Days are written 2026-11-25. An empty text means that nothing was said.
-- Rows are in the order of their id, the order in which they were entered, unless a column says otherwise.

-- The steps of the build. position is their order, from 1.
CREATE TABLE stage (
  id        INTEGER PRIMARY KEY,
  position  INTEGER NOT NULL CHECK (position >= 1),
  name      TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (length(name) BETWEEN 1 AND 60),
  begins_on TEXT CHECK (begins_on IS date(begins_on))
) STRICT;

-- What a stage needs cut. A cut is made at the shortest length; a whole piece up to the longest will do uncut.
CREATE TABLE required_cut (
  id                INTEGER PRIMARY KEY,
  stage             INTEGER NOT NULL REFERENCES stage (id),
  position          INTEGER NOT NULL CHECK (position >= 1),
  name              TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 60),
  material          TEXT NOT NULL CHECK (length(material) BETWEEN 1 AND 60),
  shortest_320ths_mm INTEGER NOT NULL CHECK (shortest_320ths_mm BETWEEN 1 AND 320000000000),
  longest_320ths_mm INTEGER NOT NULL CHECK (longest_320ths_mm BETWEEN shortest_320ths_mm AND 320000000000),
  count             INTEGER NOT NULL CHECK (count BETWEEN 1 AND 2147483647),
  use               TEXT NOT NULL CHECK (use IN ('structural', 'nonstructural', 'bracing', 'rough')),
  treated           TEXT NOT NULL CHECK (treated IN ('any', 'yes', 'no'))
) STRICT;

CREATE INDEX required_cut_by_stage ON required_cut (stage);

-- What a stage needs counted out.
CREATE TABLE hardware_need (
  id       INTEGER PRIMARY KEY,
  stage    INTEGER NOT NULL REFERENCES stage (id),
  position INTEGER NOT NULL CHECK (position >= 1),
  name     TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 60),
  hardware TEXT NOT NULL CHECK (length(hardware) BETWEEN 1 AND 60),
  unit     TEXT NOT NULL CHECK (length(unit) BETWEEN 1 AND 60),
  count    INTEGER NOT NULL CHECK (count BETWEEN 1 AND 2147483647)
) STRICT;

CREATE INDEX hardware_need_by_stage ON hardware_need (stage);

-- Boards, bars, panels, sheets: everything with a length and a label of its own. A piece that leaves keeps its row;
-- its state says what became of it.
--   code          six characters drawn by chance and an ISO/IEC 7064 MOD 37,36 check character
--   width         the second side of a sheet, else 0
--   bad_spots     stretches nothing is cut from, as a JSON list of [start, end], from the marked end, in 1/320 mm
--   trim          what must come off the marked (left) and the other (right) end
--   from_stage    the stage whose form it came off, in the user's words
--   cut_from      the piece it was cut from
--   first_line    foam: from the marked end to its first pattern line
--   reserved_for  the stage it is kept for, while its state is 'reserved'
CREATE TABLE piece (
  id                   INTEGER PRIMARY KEY,
  code                 TEXT NOT NULL UNIQUE CHECK (length(code) = 7 AND code NOT GLOB '*[^2345679ACDEFHJKMNPRTVWXY]*'),
  material             TEXT NOT NULL CHECK (length(material) BETWEEN 1 AND 60),
  length_320ths_mm     INTEGER NOT NULL CHECK (length_320ths_mm BETWEEN 1 AND 320000000000),
  width_320ths_mm      INTEGER NOT NULL DEFAULT 0 CHECK (width_320ths_mm BETWEEN 0 AND 320000000000),
  condition            TEXT NOT NULL DEFAULT 'sound' CHECK (condition IN ('sound', 'fair', 'poor')),
  bad_spots_320ths_mm  TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(bad_spots_320ths_mm) AND json_type(bad_spots_320ths_mm) = 'array'),
  trim_left_320ths_mm  INTEGER NOT NULL DEFAULT 0 CHECK (trim_left_320ths_mm >= 0),
  trim_right_320ths_mm INTEGER NOT NULL DEFAULT 0 CHECK (trim_right_320ths_mm >= 0),
  treated              INTEGER NOT NULL DEFAULT 0 CHECK (treated IN (0, 1)),
  treated_with         TEXT NOT NULL DEFAULT '' CHECK (length(treated_with) <= 60),
  stamped              INTEGER NOT NULL DEFAULT 0 CHECK (stamped IN (0, 1)),
  nails                INTEGER NOT NULL DEFAULT 0 CHECK (nails IN (0, 1)),
  concrete             INTEGER NOT NULL DEFAULT 0 CHECK (concrete IN (0, 1)),
  oiled                INTEGER NOT NULL DEFAULT 0 CHECK (oiled IN (0, 1)),
  place                TEXT NOT NULL DEFAULT '' CHECK (length(place) <= 60),
  from_stage           TEXT NOT NULL DEFAULT '' CHECK (length(from_stage) <= 60),
  cut_from             TEXT REFERENCES piece (code) CHECK (cut_from <> code),
  first_line_320ths_mm INTEGER CHECK (first_line_320ths_mm BETWEEN 0 AND length_320ths_mm),
  note                 TEXT NOT NULL DEFAULT '' CHECK (length(note) <= 500),
  state                TEXT NOT NULL DEFAULT 'in yard'
                       CHECK (state IN ('in yard', 'reserved', 'used', 'handed over', 'scrapped', 'missing')),
  reserved_for         INTEGER REFERENCES stage (id),
  CHECK (trim_left_320ths_mm + trim_right_320ths_mm < length_320ths_mm),
  CHECK ((state = 'reserved') = (reserved_for IS NOT NULL))
) STRICT;

CREATE INDEX piece_by_cut_from ON piece (cut_from) WHERE cut_from IS NOT NULL;
CREATE INDEX piece_by_reserved_for ON piece (reserved_for) WHERE reserved_for IS NOT NULL;

-- Heaps of things that are counted: ties, brackets, bolts. quantity is in units of unit.
CREATE TABLE bin (
  id       INTEGER PRIMARY KEY,
  code     TEXT NOT NULL UNIQUE CHECK (length(code) = 7 AND code NOT GLOB '*[^2345679ACDEFHJKMNPRTVWXY]*'),
  hardware TEXT NOT NULL CHECK (length(hardware) BETWEEN 1 AND 60),
  unit     TEXT NOT NULL DEFAULT 'each' CHECK (length(unit) BETWEEN 1 AND 60),
  quantity INTEGER NOT NULL CHECK (quantity BETWEEN 0 AND 2147483647),
  place    TEXT NOT NULL DEFAULT '' CHECK (length(place) <= 60),
  note     TEXT NOT NULL DEFAULT '' CHECK (length(note) <= 500)
) STRICT;

-- Codes that were printed before their piece exists and that no piece has taken yet.
CREATE TABLE blank (
  id   INTEGER PRIMARY KEY,
  code TEXT NOT NULL UNIQUE CHECK (length(code) = 7 AND code NOT GLOB '*[^2345679ACDEFHJKMNPRTVWXY]*')
) STRICT;

-- Codes whose label waits to be printed.
CREATE TABLE label_queue (
  id   INTEGER PRIMARY KEY,
  code TEXT NOT NULL UNIQUE CHECK (length(code) = 7 AND code NOT GLOB '*[^2345679ACDEFHJKMNPRTVWXY]*')
) STRICT;

-- What can be bought: one row for each material, store length and treatment. Counted things have the length 0 and a unit.
--   lead_days       days from order to delivery, where known
--   most_available  how many can be had, where there is a limit
--   seen_on         the day the price was seen, where known
CREATE TABLE price (
  id               INTEGER PRIMARY KEY,
  material         TEXT NOT NULL COLLATE NOCASE CHECK (length(material) BETWEEN 1 AND 60),
  counted          INTEGER NOT NULL CHECK (counted IN (0, 1)),
  unit             TEXT NOT NULL DEFAULT '' CHECK ((unit <> '') = counted AND length(unit) <= 60),
  length_320ths_mm INTEGER NOT NULL CHECK ((length_320ths_mm = 0) = counted AND length_320ths_mm BETWEEN 0 AND 320000000000),
  treated          INTEGER NOT NULL DEFAULT 0 CHECK (treated IN (0, 1)),
  cents            INTEGER NOT NULL CHECK (cents >= 0),
  lead_days        INTEGER CHECK (lead_days BETWEEN 0 AND 2147483647),
  most_available   INTEGER CHECK (most_available BETWEEN 0 AND 2147483647),
  supplier         TEXT NOT NULL DEFAULT '' CHECK (length(supplier) <= 60),
  seen_on          TEXT CHECK (seen_on IS date(seen_on)),
  UNIQUE (material, counted, length_320ths_mm, treated)
) STRICT;

-- What the user has set; exactly one row.
--   tax_thousandths_of_percent  8.25 % is 8250
--   kerf                        what a saw cut destroys, of every family that table kerf does not name
--   keep                        the shortest remainder worth a label, of every material that table keep does not name
--   species, specific_gravity   the softwood by which lumber is weighed; the gravity is oven-dry, a decimal as text
CREATE TABLE setting (
  id                         INTEGER PRIMARY KEY CHECK (id = 1),
  unit                       TEXT NOT NULL CHECK (unit IN ('inch', 'millimetre')),
  currency_sign              TEXT NOT NULL CHECK (length(currency_sign) <= 10),
  tax_thousandths_of_percent INTEGER NOT NULL CHECK (tax_thousandths_of_percent BETWEEN 0 AND 2147483647),
  kerf_320ths_mm             INTEGER NOT NULL CHECK (kerf_320ths_mm BETWEEN 0 AND 320000000000),
  keep_320ths_mm             INTEGER NOT NULL CHECK (keep_320ths_mm BETWEEN 0 AND 320000000000),
  species                    TEXT NOT NULL CHECK (length(species) BETWEEN 1 AND 60),
  specific_gravity           TEXT NOT NULL CHECK (CAST(specific_gravity AS REAL) > 0)
) STRICT;

CREATE TABLE kerf (
  id             INTEGER PRIMARY KEY,
  family         TEXT NOT NULL UNIQUE CHECK (family IN ('lumber', 'rebar', 'foam', 'sheet', 'stick', 'hardware')),
  kerf_320ths_mm INTEGER NOT NULL CHECK (kerf_320ths_mm BETWEEN 0 AND 320000000000)
) STRICT;

CREATE TABLE keep (
  id             INTEGER PRIMARY KEY,
  material       TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (length(material) BETWEEN 1 AND 60),
  keep_320ths_mm INTEGER NOT NULL CHECK (keep_320ths_mm BETWEEN 0 AND 320000000000)
) STRICT;

-- Which pieces may serve which use: a filing rule of the user's, not engineering.
CREATE TABLE use_rule (
  id              INTEGER PRIMARY KEY,
  use             TEXT NOT NULL UNIQUE CHECK (use IN ('structural', 'nonstructural', 'bracing', 'rough')),
  worst_condition TEXT NOT NULL CHECK (worst_condition IN ('sound', 'fair', 'poor')),
  needs_stamp     INTEGER NOT NULL CHECK (needs_stamp IN (0, 1))
) STRICT;

-- Cutting plans that were kept. document is the whole plan as JSON, with the pieces and prices as they were when it was
-- made; README.md beside this file's source tells its fields, and the views plan_cut and plan_shopping show it as a table.
-- A plan's number is never used again, not even after an undo.
CREATE TABLE plan (
  id       INTEGER PRIMARY KEY AUTOINCREMENT,
  made_on  TEXT NOT NULL CHECK (made_on = date(made_on)),
  document TEXT NOT NULL CHECK (json_valid(document)),
  hardware TEXT NOT NULL DEFAULT 'waiting' CHECK (hardware IN ('waiting', 'done', 'dropped'))
) STRICT;

-- How far each piece of a plan has come. piece counts the plan's pieces from 0. actual is what was really cut, as JSON like
-- a piece of the document, where that differs from the plan.
CREATE TABLE plan_step (
  id     INTEGER PRIMARY KEY,
  plan   INTEGER NOT NULL REFERENCES plan (id),
  piece  INTEGER NOT NULL CHECK (piece BETWEEN 0 AND 2147483647),
  state  TEXT NOT NULL CHECK (state IN ('waiting', 'done', 'done otherwise', 'dropped')),
  actual TEXT CHECK (json_valid(actual)),
  UNIQUE (plan, piece),
  CHECK ((state = 'done otherwise') = (actual IS NOT NULL))
) STRICT;

-- What was saved: one row for each act of carrying out and stage. Only what was done, never what was planned.
--   all_new_cents  what the cuts made would have cost bought entirely new, at their own best plan
--   spent_cents    what was spent on bought pieces and hardware
--   wood_weight_pounds  the part of weight_pounds that is lumber and plywood
-- board_feet, panel_square_mm and the weights are exact decimals, kept as text.
CREATE TABLE ledger (
  id              INTEGER PRIMARY KEY,
  day             TEXT NOT NULL CHECK (day = date(day)),
  stage           TEXT NOT NULL CHECK (length(stage) <= 60),
  plan            INTEGER REFERENCES plan (id),
  all_new_cents   INTEGER NOT NULL,
  spent_cents     INTEGER NOT NULL,
  board_feet      TEXT NOT NULL CHECK (board_feet GLOB '[0-9]*' AND board_feet NOT GLOB '*[^0-9.]*'),
  panel_square_mm TEXT NOT NULL CHECK (panel_square_mm GLOB '[0-9]*' AND panel_square_mm NOT GLOB '*[^0-9.]*'),
  weight_pounds   TEXT NOT NULL CHECK (weight_pounds GLOB '[0-9]*' AND weight_pounds NOT GLOB '*[^0-9.]*'),
  wood_weight_pounds TEXT NOT NULL CHECK (wood_weight_pounds GLOB '[0-9]*' AND wood_weight_pounds NOT GLOB '*[^0-9.]*'),
  pieces_used     INTEGER NOT NULL CHECK (pieces_used BETWEEN 0 AND 2147483647),
  hardware_used   INTEGER NOT NULL CHECK (hardware_used BETWEEN 0 AND 2147483647)
) STRICT;

CREATE INDEX ledger_by_plan ON ledger (plan) WHERE plan IS NOT NULL;

-- Every change of the yard, in order. undoes names the entry that this one took back; an entry is taken back once at most.
-- at is the local time with its offset from UTC.
CREATE TABLE history (
  number INTEGER PRIMARY KEY CHECK (number >= 1),
  at     TEXT NOT NULL CHECK (at GLOB '????-??-??T??:??:??*'),
  what   TEXT NOT NULL CHECK (length(what) BETWEEN 1 AND 300),
  undoes INTEGER UNIQUE REFERENCES history (number) CHECK (undoes < number)
) STRICT;

-- Every row that an entry of the history added (before is null), changed, or removed (after is null), as JSON by column.
-- Nothing else is needed to take an entry back. code is that of the piece, bin or label concerned.
CREATE TABLE change (
  number     INTEGER PRIMARY KEY,
  entry      INTEGER NOT NULL REFERENCES history (number),
  table_name TEXT NOT NULL,
  row_id     INTEGER NOT NULL,
  code       TEXT,
  before     TEXT CHECK (json_valid(before)),
  after      TEXT CHECK (json_valid(after)),
  CHECK (before IS NOT NULL OR after IS NOT NULL)
) STRICT;

CREATE INDEX change_by_entry ON change (entry);
CREATE INDEX change_by_code ON change (code) WHERE code IS NOT NULL;

-- The entry that is being written: one row inside a change, none at any other time. A row of the yard can only be
-- changed while an entry is open, so that nothing goes by the history.
CREATE TABLE open_entry (
  id    INTEGER PRIMARY KEY CHECK (id = 1),
  entry INTEGER NOT NULL REFERENCES history (number)
) STRICT;

-- A new yard's settings: the usual ones.
INSERT INTO setting (id, unit, currency_sign, tax_thousandths_of_percent, kerf_320ths_mm, keep_320ths_mm, species, specific_gravity)
VALUES (1, 'inch', '$', 0, 1016, 97536, 'spruce-pine-fir', '0.42');

INSERT INTO use_rule (use, worst_condition, needs_stamp)
VALUES ('structural', 'sound', 1), ('nonstructural', 'fair', 0), ('bracing', 'sound', 0), ('rough', 'poor', 0);
