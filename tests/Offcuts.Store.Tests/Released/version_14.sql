-- A yard as version 14 of the file left it: what a person would get from .dump. Never changed once version 14 is released.
PRAGMA foreign_keys=OFF;
BEGIN TRANSACTION;
CREATE TABLE stage (
  id        INTEGER PRIMARY KEY,
  position  INTEGER NOT NULL CHECK (position >= 1),
  name      TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (length(name) BETWEEN 1 AND 60),
  begins_on TEXT CHECK (begins_on IS date(begins_on))
) STRICT;
INSERT INTO stage VALUES(1,1,'footing',NULL);
INSERT INTO stage VALUES(2,2,'outer walls','2027-03-01');
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
, rip INTEGER NOT NULL DEFAULT 0 CHECK (rip IN (0, 1))) STRICT;
INSERT INTO required_cut VALUES(1,2,1,'stud','2x4',752856,755904,12,'structural','no',0);
INSERT INTO required_cut VALUES(2,2,2,'brace','2x10',325120,325120,2,'bracing','any',0);
CREATE TABLE hardware_need (
  id       INTEGER PRIMARY KEY,
  stage    INTEGER NOT NULL REFERENCES stage (id),
  position INTEGER NOT NULL CHECK (position >= 1),
  name     TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 60),
  hardware TEXT NOT NULL CHECK (length(hardware) BETWEEN 1 AND 60),
  unit     TEXT NOT NULL CHECK (length(unit) BETWEEN 1 AND 60),
  count    INTEGER NOT NULL CHECK (count BETWEEN 1 AND 2147483647)
) STRICT;
INSERT INTO hardware_need VALUES(1,2,1,'ties','snap tie','box',3);
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
INSERT INTO piece VALUES(1,'Y4MNV9W','2x10',1105408,0,'sound','[[243840,292608]]',0,0,0,'',0,0,0,0,'north rack','',NULL,NULL,'','in yard',NULL);
INSERT INTO piece VALUES(2,'HDCXA5M','2x10',325120,0,'sound','[]',0,0,0,'',0,0,0,0,'','','Y4MNV9W',NULL,'from the garden wall','reserved',2);
INSERT INTO piece VALUES(3,'2N35R25','foam 2-1/2x12 II',780288,0,'sound','[]',0,0,0,'',0,0,0,0,'','footing',NULL,32512,'','in yard',NULL);
CREATE TABLE bin (
  id       INTEGER PRIMARY KEY,
  code     TEXT NOT NULL UNIQUE CHECK (length(code) = 7 AND code NOT GLOB '*[^2345679ACDEFHJKMNPRTVWXY]*'),
  hardware TEXT NOT NULL CHECK (length(hardware) BETWEEN 1 AND 60),
  unit     TEXT NOT NULL DEFAULT 'each' CHECK (length(unit) BETWEEN 1 AND 60),
  quantity INTEGER NOT NULL CHECK (quantity BETWEEN 0 AND 2147483647),
  place    TEXT NOT NULL DEFAULT '' CHECK (length(place) <= 60),
  note     TEXT NOT NULL DEFAULT '' CHECK (length(note) <= 500)
) STRICT;
INSERT INTO bin VALUES(1,'DRY2DK7','snap tie','box',5,'shed','half of them bent');
CREATE TABLE blank (
  id   INTEGER PRIMARY KEY,
  code TEXT NOT NULL UNIQUE CHECK (length(code) = 7 AND code NOT GLOB '*[^2345679ACDEFHJKMNPRTVWXY]*')
) STRICT;
INSERT INTO blank VALUES(1,'VYN4EKM');
CREATE TABLE label_queue (
  id   INTEGER PRIMARY KEY,
  code TEXT NOT NULL UNIQUE CHECK (length(code) = 7 AND code NOT GLOB '*[^2345679ACDEFHJKMNPRTVWXY]*')
) STRICT;
INSERT INTO label_queue VALUES(1,'HDCXA5M');
INSERT INTO label_queue VALUES(2,'DRY2DK7');
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
INSERT INTO price VALUES(1,'2x4',0,'',780288,0,425,2,40,'Sägewerk Höß','2026-11-01');
INSERT INTO price VALUES(2,'snap tie',1,'box',0,0,1990,NULL,NULL,'',NULL);
CREATE TABLE setting (
  id                         INTEGER PRIMARY KEY CHECK (id = 1),
  unit                       TEXT NOT NULL CHECK (unit IN ('inch', 'millimetre')),
  currency_sign              TEXT NOT NULL CHECK (length(currency_sign) <= 10),
  tax_thousandths_of_percent INTEGER NOT NULL CHECK (tax_thousandths_of_percent BETWEEN 0 AND 2147483647),
  kerf_320ths_mm             INTEGER NOT NULL CHECK (kerf_320ths_mm BETWEEN 0 AND 320000000000),
  keep_320ths_mm             INTEGER NOT NULL CHECK (keep_320ths_mm BETWEEN 0 AND 320000000000),
  species                    TEXT NOT NULL CHECK (length(species) BETWEEN 1 AND 60),
  specific_gravity           TEXT NOT NULL CHECK (CAST(specific_gravity AS REAL) > 0)
, foam_days INTEGER NOT NULL DEFAULT 60 CHECK (foam_days BETWEEN 0 AND 3650), covered_places TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(covered_places) AND json_type(covered_places) = 'array')) STRICT;
INSERT INTO setting VALUES(1,'millimetre','€',8250,1024,96000,'larch from our own wood','0.55',60,'[]');
CREATE TABLE kerf (
  id             INTEGER PRIMARY KEY,
  family         TEXT NOT NULL UNIQUE CHECK (family IN ('lumber', 'rebar', 'foam', 'sheet', 'stick', 'hardware')),
  kerf_320ths_mm INTEGER NOT NULL CHECK (kerf_320ths_mm BETWEEN 0 AND 320000000000)
) STRICT;
INSERT INTO kerf VALUES(1,'rebar',0);
INSERT INTO kerf VALUES(2,'foam',32);
CREATE TABLE keep (
  id             INTEGER PRIMARY KEY,
  material       TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (length(material) BETWEEN 1 AND 60),
  keep_320ths_mm INTEGER NOT NULL CHECK (keep_320ths_mm BETWEEN 0 AND 320000000000)
) STRICT;
INSERT INTO keep VALUES(1,'2x10',195072);
CREATE TABLE use_rule (
  id              INTEGER PRIMARY KEY,
  use             TEXT NOT NULL UNIQUE CHECK (use IN ('structural', 'nonstructural', 'bracing', 'rough')),
  worst_condition TEXT NOT NULL CHECK (worst_condition IN ('sound', 'fair', 'poor')),
  needs_stamp     INTEGER NOT NULL CHECK (needs_stamp IN (0, 1))
) STRICT;
INSERT INTO use_rule VALUES(1,'structural','sound',1);
INSERT INTO use_rule VALUES(2,'nonstructural','fair',0);
INSERT INTO use_rule VALUES(3,'bracing','sound',0);
INSERT INTO use_rule VALUES(4,'rough','fair',1);
CREATE TABLE plan (
  id       INTEGER PRIMARY KEY AUTOINCREMENT,
  made_on  TEXT NOT NULL CHECK (made_on = date(made_on)),
  document TEXT NOT NULL CHECK (json_valid(document)),
  hardware TEXT NOT NULL DEFAULT 'waiting' CHECK (hardware IN ('waiting', 'done', 'dropped'))
) STRICT;
INSERT INTO "plan" VALUES(1,'2026-11-25','{"schema":1,"stages":["outer walls","porch"],"tiers":{"unfilled":{"value":2,"bound":1},"unfilled_by_stage":[{"value":2,"bound":1},{"value":0,"bound":0}],"spend_cents":{"value":425,"bound":400},"value_given_up_cents":{"value":-120,"bound":-130},"saw_cuts":5},"pieces":[{"source":{"code":"Y4MNV9W","material":"2x10","length_320ths_mm":1105408,"width_320ths_mm":0,"condition":"sound","bad_spots_320ths_mm":[[243840,292608]],"trim_left_320ths_mm":4064,"trim_right_320ths_mm":0,"treated":false,"treated_with":"","stamped":false,"nails":true,"concrete":false,"oiled":false,"place":"north rack","from_stage":"outer walls","cut_from":"","first_line_320ths_mm":null,"note":"","state":"reserved","reserved_for":"outer walls"},"bought":null,"cuts":[{"stage":"outer walls","cut":"stud","start_320ths_mm":4064,"length_320ths_mm":235712,"use":"structural"}],"remainders":[{"start_320ths_mm":240792,"length_320ths_mm":3040,"kept":false}],"untouched_320ths_mm":[[292608,1105408]],"saw_cuts":2},{"source":null,"bought":{"material":"2x4","length_320ths_mm":780288,"treated":false,"cents":425,"lead_days":2,"limit":40,"supplier":"Sägewerk Höß","seen_on":"2026-11-01"},"cuts":[{"stage":"outer walls","cut":"brace","start_320ths_mm":0,"length_320ths_mm":325120,"use":"bracing"},{"stage":"porch","cut":"post","start_320ths_mm":326136,"length_320ths_mm":243840,"use":"nonstructural"}],"remainders":[{"start_320ths_mm":570992,"length_320ths_mm":209296,"kept":true}],"untouched_320ths_mm":[],"saw_cuts":2}],"hardware":[{"stage":"outer walls","name":"ties","hardware":"snap tie","unit":"box","count":3,"from_yard":1,"to_buy":1,"cents":1990}],"unfilled":[{"stage":"outer walls","cut":"stud","count":2,"reason":"no 2x4 is long enough: the longest is short by 4\""}],"savings":{"all_new_cents":5100,"spend_cents":2415,"all_new_proven":false,"unpriced":["#4"]},"unpriced":["#4","Kantholz »schräg«"]}','done');
CREATE TABLE history (
  number INTEGER PRIMARY KEY CHECK (number >= 1),
  at     TEXT NOT NULL CHECK (at GLOB '????-??-??T??:??:??*'),
  what   TEXT NOT NULL CHECK (length(what) BETWEEN 1 AND 300),
  undoes INTEGER UNIQUE REFERENCES history (number) CHECK (undoes < number)
) STRICT;
INSERT INTO history VALUES(1,'2026-11-25T07:30:00.0000000+00:00','catalogued a piece that was none',NULL);
INSERT INTO history VALUES(2,'2026-11-25T07:30:00.0000000+00:00','took back: catalogued a piece that was none',1);
INSERT INTO history VALUES(3,'2026-11-25T07:30:00.0000000+00:00','a little of everything',NULL);
INSERT INTO history VALUES(4,'2026-11-25T07:30:00.0000000+00:00','renamed walls',NULL);
INSERT INTO history VALUES(5,'2026-11-25T07:30:00.0000000+00:00','cut otherwise',NULL);
INSERT INTO history VALUES(6,'2026-11-25T07:30:00.0000000+00:00','counted hardware out',NULL);
CREATE TABLE open_entry (
  id    INTEGER PRIMARY KEY CHECK (id = 1),
  entry INTEGER NOT NULL REFERENCES history (number)
) STRICT;
CREATE TABLE system_sheet (
  id    INTEGER PRIMARY KEY,
  name  TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (length(name) BETWEEN 1 AND 60),
  sheet TEXT NOT NULL CHECK (length(sheet) BETWEEN 1 AND 1000000 AND sheet LIKE 'system %')
) STRICT;
CREATE TABLE wall_sheet (
  id     INTEGER PRIMARY KEY,
  stage  INTEGER NOT NULL REFERENCES stage (id),
  name   TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (length(name) BETWEEN 1 AND 20),
  system INTEGER NOT NULL REFERENCES system_sheet (id),
  sheet  TEXT NOT NULL CHECK (length(sheet) BETWEEN 1 AND 1000000 AND sheet LIKE 'wall %')
) STRICT;
CREATE TABLE wall_plan (
  id     INTEGER PRIMARY KEY,
  wall   INTEGER NOT NULL UNIQUE REFERENCES wall_sheet (id),
  plan   INTEGER NOT NULL UNIQUE REFERENCES plan (id),
  laying TEXT NOT NULL CHECK (json_valid(laying))
) STRICT;
CREATE TABLE wall_course (
  id               INTEGER PRIMARY KEY,
  wall             INTEGER NOT NULL REFERENCES wall_sheet (id),
  run              TEXT NOT NULL CHECK (length(run) BETWEEN 1 AND 100),
  course           INTEGER NOT NULL CHECK (course >= 1),
  joints_320ths_mm TEXT NOT NULL CHECK (json_valid(joints_320ths_mm)), pieces TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(pieces)), only_cut INTEGER NOT NULL DEFAULT 0 CHECK (only_cut IN (0, 1)),
  UNIQUE (wall, run, course)
) STRICT;
CREATE TABLE IF NOT EXISTS "plan_step" (
  id     INTEGER PRIMARY KEY,
  plan   INTEGER NOT NULL REFERENCES plan (id),
  piece  INTEGER NOT NULL CHECK (piece BETWEEN 0 AND 2147483647),
  state  TEXT NOT NULL CHECK (state IN ('waiting', 'done', 'done otherwise', 'dropped')),
  actual TEXT CHECK (actual IS NULL OR json_valid(actual)),
  UNIQUE (plan, piece),
  CHECK ((state = 'done otherwise') = (actual IS NOT NULL))
) STRICT;
INSERT INTO plan_step VALUES(1,1,0,'done otherwise','{"source":{"code":"Y4MNV9W","material":"2x10","length_320ths_mm":1105408,"width_320ths_mm":0,"condition":"sound","bad_spots_320ths_mm":[[243840,292608]],"trim_left_320ths_mm":4064,"trim_right_320ths_mm":0,"treated":false,"treated_with":"","stamped":false,"nails":true,"concrete":false,"oiled":false,"place":"north rack","from_stage":"walls","cut_from":"","first_line_320ths_mm":null,"note":"","state":"reserved","reserved_for":"walls"},"bought":null,"cuts":[],"remainders":[{"start_320ths_mm":0,"length_320ths_mm":162560,"kept":true}],"untouched_320ths_mm":[],"saw_cuts":1}');
INSERT INTO plan_step VALUES(2,1,1,'done',NULL);
CREATE TABLE IF NOT EXISTS "change" (
  number     INTEGER PRIMARY KEY,
  entry      INTEGER NOT NULL REFERENCES history (number),
  table_name TEXT NOT NULL,
  row_id     INTEGER NOT NULL,
  code       TEXT,
  before     TEXT CHECK (before IS NULL OR json_valid(before)),
  after      TEXT CHECK (after IS NULL OR json_valid(after)),
  CHECK (before IS NOT NULL OR after IS NOT NULL)
) STRICT;
INSERT INTO change VALUES(1,1,'piece',1,'74FRMEC',NULL,'{"id":1,"code":"74FRMEC","material":"2x4","length_320ths_mm":780288,"width_320ths_mm":0,"condition":"sound","bad_spots_320ths_mm":"[]","trim_left_320ths_mm":0,"trim_right_320ths_mm":0,"treated":0,"treated_with":"","stamped":0,"nails":0,"concrete":0,"oiled":0,"place":"gone again","from_stage":"","cut_from":null,"first_line_320ths_mm":null,"note":"","state":"in yard","reserved_for":null}');
INSERT INTO change VALUES(2,2,'piece',1,'74FRMEC','{"id":1,"code":"74FRMEC","material":"2x4","length_320ths_mm":780288,"width_320ths_mm":0,"condition":"sound","bad_spots_320ths_mm":"[]","trim_left_320ths_mm":0,"trim_right_320ths_mm":0,"treated":0,"treated_with":"","stamped":0,"nails":0,"concrete":0,"oiled":0,"place":"gone again","from_stage":"","cut_from":null,"first_line_320ths_mm":null,"note":"","state":"in yard","reserved_for":null}',NULL);
INSERT INTO change VALUES(3,3,'stage',1,NULL,NULL,'{"id":1,"position":1,"name":"footing","begins_on":null}');
INSERT INTO change VALUES(4,3,'stage',2,NULL,NULL,'{"id":2,"position":2,"name":"walls","begins_on":"2027-03-01"}');
INSERT INTO change VALUES(5,3,'required_cut',1,NULL,NULL,'{"id":1,"stage":2,"position":1,"name":"stud","material":"2x4","shortest_320ths_mm":752856,"longest_320ths_mm":755904,"count":12,"use":"structural","treated":"no","rip":0}');
INSERT INTO change VALUES(6,3,'required_cut',2,NULL,NULL,'{"id":2,"stage":2,"position":2,"name":"brace","material":"2x10","shortest_320ths_mm":325120,"longest_320ths_mm":325120,"count":2,"use":"bracing","treated":"any","rip":0}');
INSERT INTO change VALUES(7,3,'hardware_need',1,NULL,NULL,'{"id":1,"stage":2,"position":1,"name":"ties","hardware":"snap tie","unit":"box","count":3}');
INSERT INTO change VALUES(8,3,'bin',1,'DRY2DK7',NULL,'{"id":1,"code":"DRY2DK7","hardware":"snap tie","unit":"box","quantity":5,"place":"shed","note":"half of them bent"}');
INSERT INTO change VALUES(9,3,'piece',1,'Y4MNV9W',NULL,'{"id":1,"code":"Y4MNV9W","material":"2x10","length_320ths_mm":1105408,"width_320ths_mm":0,"condition":"sound","bad_spots_320ths_mm":"[[243840,292608]]","trim_left_320ths_mm":0,"trim_right_320ths_mm":0,"treated":0,"treated_with":"","stamped":0,"nails":0,"concrete":0,"oiled":0,"place":"north rack","from_stage":"","cut_from":null,"first_line_320ths_mm":null,"note":"","state":"in yard","reserved_for":null}');
INSERT INTO change VALUES(10,3,'piece',2,'HDCXA5M',NULL,'{"id":2,"code":"HDCXA5M","material":"2x10","length_320ths_mm":325120,"width_320ths_mm":0,"condition":"sound","bad_spots_320ths_mm":"[]","trim_left_320ths_mm":0,"trim_right_320ths_mm":0,"treated":0,"treated_with":"","stamped":0,"nails":0,"concrete":0,"oiled":0,"place":"","from_stage":"","cut_from":"Y4MNV9W","first_line_320ths_mm":null,"note":"from the garden wall","state":"reserved","reserved_for":2}');
INSERT INTO change VALUES(11,3,'piece',3,'2N35R25',NULL,'{"id":3,"code":"2N35R25","material":"foam 2-1/2x12 II","length_320ths_mm":780288,"width_320ths_mm":0,"condition":"sound","bad_spots_320ths_mm":"[]","trim_left_320ths_mm":0,"trim_right_320ths_mm":0,"treated":0,"treated_with":"","stamped":0,"nails":0,"concrete":0,"oiled":0,"place":"","from_stage":"footing","cut_from":null,"first_line_320ths_mm":32512,"note":"","state":"in yard","reserved_for":null}');
INSERT INTO change VALUES(12,3,'blank',1,'VYN4EKM',NULL,'{"id":1,"code":"VYN4EKM"}');
INSERT INTO change VALUES(13,3,'label_queue',1,'HDCXA5M',NULL,'{"id":1,"code":"HDCXA5M"}');
INSERT INTO change VALUES(14,3,'label_queue',2,'DRY2DK7',NULL,'{"id":2,"code":"DRY2DK7"}');
INSERT INTO change VALUES(15,3,'price',1,NULL,NULL,'{"id":1,"material":"2x4","counted":0,"unit":"","length_320ths_mm":780288,"treated":0,"cents":425,"lead_days":2,"most_available":40,"supplier":"Sägewerk Höß","seen_on":"2026-11-01"}');
INSERT INTO change VALUES(16,3,'price',2,NULL,NULL,'{"id":2,"material":"snap tie","counted":1,"unit":"box","length_320ths_mm":0,"treated":0,"cents":1990,"lead_days":null,"most_available":null,"supplier":"","seen_on":null}');
INSERT INTO change VALUES(17,3,'setting',1,NULL,'{"id":1,"unit":"inch","currency_sign":"$","tax_thousandths_of_percent":0,"kerf_320ths_mm":1016,"keep_320ths_mm":97536,"species":"spruce-pine-fir","specific_gravity":"0.42"}','{"id":1,"unit":"millimetre","currency_sign":"€","tax_thousandths_of_percent":8250,"kerf_320ths_mm":1024,"keep_320ths_mm":96000,"species":"larch from our own wood","specific_gravity":"0.55"}');
INSERT INTO change VALUES(18,3,'use_rule',1,NULL,'{"id":1,"use":"structural","worst_condition":"sound","needs_stamp":1}','{"id":1,"use":"structural","worst_condition":"sound","needs_stamp":1}');
INSERT INTO change VALUES(19,3,'use_rule',2,NULL,'{"id":2,"use":"nonstructural","worst_condition":"fair","needs_stamp":0}','{"id":2,"use":"nonstructural","worst_condition":"fair","needs_stamp":0}');
INSERT INTO change VALUES(20,3,'use_rule',3,NULL,'{"id":3,"use":"bracing","worst_condition":"sound","needs_stamp":0}','{"id":3,"use":"bracing","worst_condition":"sound","needs_stamp":0}');
INSERT INTO change VALUES(21,3,'use_rule',4,NULL,'{"id":4,"use":"rough","worst_condition":"poor","needs_stamp":0}','{"id":4,"use":"rough","worst_condition":"fair","needs_stamp":1}');
INSERT INTO change VALUES(22,3,'kerf',1,NULL,NULL,'{"id":1,"family":"rebar","kerf_320ths_mm":0}');
INSERT INTO change VALUES(23,3,'kerf',2,NULL,NULL,'{"id":2,"family":"foam","kerf_320ths_mm":32}');
INSERT INTO change VALUES(24,3,'keep',1,NULL,NULL,'{"id":1,"material":"2x10","keep_320ths_mm":195072}');
INSERT INTO change VALUES(25,3,'plan',1,NULL,NULL,'{"id":1,"made_on":"2026-11-25","document":"{\"schema\":1,\"stages\":[\"walls\",\"porch\"],\"tiers\":{\"unfilled\":{\"value\":2,\"bound\":1},\"unfilled_by_stage\":[{\"value\":2,\"bound\":1},{\"value\":0,\"bound\":0}],\"spend_cents\":{\"value\":425,\"bound\":400},\"value_given_up_cents\":{\"value\":-120,\"bound\":-130},\"saw_cuts\":5},\"pieces\":[{\"source\":{\"code\":\"Y4MNV9W\",\"material\":\"2x10\",\"length_320ths_mm\":1105408,\"width_320ths_mm\":0,\"condition\":\"sound\",\"bad_spots_320ths_mm\":[[243840,292608]],\"trim_left_320ths_mm\":4064,\"trim_right_320ths_mm\":0,\"treated\":false,\"treated_with\":\"\",\"stamped\":false,\"nails\":true,\"concrete\":false,\"oiled\":false,\"place\":\"north rack\",\"from_stage\":\"walls\",\"cut_from\":\"\",\"first_line_320ths_mm\":null,\"note\":\"\",\"state\":\"reserved\",\"reserved_for\":\"walls\"},\"bought\":null,\"cuts\":[{\"stage\":\"walls\",\"cut\":\"stud\",\"start_320ths_mm\":4064,\"length_320ths_mm\":235712,\"use\":\"structural\"}],\"remainders\":[{\"start_320ths_mm\":240792,\"length_320ths_mm\":3040,\"kept\":false}],\"untouched_320ths_mm\":[[292608,1105408]],\"saw_cuts\":2},{\"source\":null,\"bought\":{\"material\":\"2x4\",\"length_320ths_mm\":780288,\"treated\":false,\"cents\":425,\"lead_days\":2,\"limit\":40,\"supplier\":\"Sägewerk Höß\",\"seen_on\":\"2026-11-01\"},\"cuts\":[{\"stage\":\"walls\",\"cut\":\"brace\",\"start_320ths_mm\":0,\"length_320ths_mm\":325120,\"use\":\"bracing\"},{\"stage\":\"porch\",\"cut\":\"post\",\"start_320ths_mm\":326136,\"length_320ths_mm\":243840,\"use\":\"nonstructural\"}],\"remainders\":[{\"start_320ths_mm\":570992,\"length_320ths_mm\":209296,\"kept\":true}],\"untouched_320ths_mm\":[],\"saw_cuts\":2}],\"hardware\":[{\"stage\":\"walls\",\"name\":\"ties\",\"hardware\":\"snap tie\",\"unit\":\"box\",\"count\":3,\"from_yard\":1,\"to_buy\":1,\"cents\":1990}],\"unfilled\":[{\"stage\":\"walls\",\"cut\":\"stud\",\"count\":2,\"reason\":\"no 2x4 is long enough: the longest is short by 4\\\"\"}],\"savings\":{\"all_new_cents\":5100,\"spend_cents\":2415,\"all_new_proven\":false,\"unpriced\":[\"#4\"]},\"unpriced\":[\"#4\",\"Kantholz »schräg«\"]}","hardware":"waiting"}');
INSERT INTO change VALUES(26,3,'plan_step',1,NULL,NULL,'{"id":1,"plan":1,"piece":0,"state":"waiting","actual":null}');
INSERT INTO change VALUES(27,3,'plan_step',2,NULL,NULL,'{"id":2,"plan":1,"piece":1,"state":"waiting","actual":null}');
INSERT INTO change VALUES(28,3,'plan_step',2,NULL,'{"id":2,"plan":1,"piece":1,"state":"waiting","actual":null}','{"id":2,"plan":1,"piece":1,"state":"done","actual":null}');
INSERT INTO change VALUES(29,3,'ledger',1,NULL,NULL,'{"id":1,"day":"2026-11-25","stage":"walls","plan":1,"all_new_cents":1250,"spent_cents":425,"board_feet":"5.3333333333333333333333333333","panel_square_mm":"92903.04","weight_pounds":"12.5","wood_weight_pounds":"9.5","pieces_used":3,"hardware_used":7}');
INSERT INTO change VALUES(30,4,'stage',2,NULL,'{"id":2,"position":2,"name":"walls","begins_on":"2027-03-01"}','{"id":2,"position":2,"name":"outer walls","begins_on":"2027-03-01"}');
INSERT INTO change VALUES(31,4,'ledger',1,NULL,'{"id":1,"day":"2026-11-25","stage":"walls","plan":1,"all_new_cents":1250,"spent_cents":425,"board_feet":"5.3333333333333333333333333333","panel_square_mm":"92903.04","weight_pounds":"12.5","wood_weight_pounds":"9.5","pieces_used":3,"hardware_used":7}','{"id":1,"day":"2026-11-25","stage":"outer walls","plan":1,"all_new_cents":1250,"spent_cents":425,"board_feet":"5.3333333333333333333333333333","panel_square_mm":"92903.04","weight_pounds":"12.5","wood_weight_pounds":"9.5","pieces_used":3,"hardware_used":7}');
INSERT INTO change VALUES(32,4,'plan',1,NULL,'{"id":1,"made_on":"2026-11-25","document":"{\"schema\":1,\"stages\":[\"walls\",\"porch\"],\"tiers\":{\"unfilled\":{\"value\":2,\"bound\":1},\"unfilled_by_stage\":[{\"value\":2,\"bound\":1},{\"value\":0,\"bound\":0}],\"spend_cents\":{\"value\":425,\"bound\":400},\"value_given_up_cents\":{\"value\":-120,\"bound\":-130},\"saw_cuts\":5},\"pieces\":[{\"source\":{\"code\":\"Y4MNV9W\",\"material\":\"2x10\",\"length_320ths_mm\":1105408,\"width_320ths_mm\":0,\"condition\":\"sound\",\"bad_spots_320ths_mm\":[[243840,292608]],\"trim_left_320ths_mm\":4064,\"trim_right_320ths_mm\":0,\"treated\":false,\"treated_with\":\"\",\"stamped\":false,\"nails\":true,\"concrete\":false,\"oiled\":false,\"place\":\"north rack\",\"from_stage\":\"walls\",\"cut_from\":\"\",\"first_line_320ths_mm\":null,\"note\":\"\",\"state\":\"reserved\",\"reserved_for\":\"walls\"},\"bought\":null,\"cuts\":[{\"stage\":\"walls\",\"cut\":\"stud\",\"start_320ths_mm\":4064,\"length_320ths_mm\":235712,\"use\":\"structural\"}],\"remainders\":[{\"start_320ths_mm\":240792,\"length_320ths_mm\":3040,\"kept\":false}],\"untouched_320ths_mm\":[[292608,1105408]],\"saw_cuts\":2},{\"source\":null,\"bought\":{\"material\":\"2x4\",\"length_320ths_mm\":780288,\"treated\":false,\"cents\":425,\"lead_days\":2,\"limit\":40,\"supplier\":\"Sägewerk Höß\",\"seen_on\":\"2026-11-01\"},\"cuts\":[{\"stage\":\"walls\",\"cut\":\"brace\",\"start_320ths_mm\":0,\"length_320ths_mm\":325120,\"use\":\"bracing\"},{\"stage\":\"porch\",\"cut\":\"post\",\"start_320ths_mm\":326136,\"length_320ths_mm\":243840,\"use\":\"nonstructural\"}],\"remainders\":[{\"start_320ths_mm\":570992,\"length_320ths_mm\":209296,\"kept\":true}],\"untouched_320ths_mm\":[],\"saw_cuts\":2}],\"hardware\":[{\"stage\":\"walls\",\"name\":\"ties\",\"hardware\":\"snap tie\",\"unit\":\"box\",\"count\":3,\"from_yard\":1,\"to_buy\":1,\"cents\":1990}],\"unfilled\":[{\"stage\":\"walls\",\"cut\":\"stud\",\"count\":2,\"reason\":\"no 2x4 is long enough: the longest is short by 4\\\"\"}],\"savings\":{\"all_new_cents\":5100,\"spend_cents\":2415,\"all_new_proven\":false,\"unpriced\":[\"#4\"]},\"unpriced\":[\"#4\",\"Kantholz »schräg«\"]}","hardware":"waiting"}','{"id":1,"made_on":"2026-11-25","document":"{\"schema\":1,\"stages\":[\"outer walls\",\"porch\"],\"tiers\":{\"unfilled\":{\"value\":2,\"bound\":1},\"unfilled_by_stage\":[{\"value\":2,\"bound\":1},{\"value\":0,\"bound\":0}],\"spend_cents\":{\"value\":425,\"bound\":400},\"value_given_up_cents\":{\"value\":-120,\"bound\":-130},\"saw_cuts\":5},\"pieces\":[{\"source\":{\"code\":\"Y4MNV9W\",\"material\":\"2x10\",\"length_320ths_mm\":1105408,\"width_320ths_mm\":0,\"condition\":\"sound\",\"bad_spots_320ths_mm\":[[243840,292608]],\"trim_left_320ths_mm\":4064,\"trim_right_320ths_mm\":0,\"treated\":false,\"treated_with\":\"\",\"stamped\":false,\"nails\":true,\"concrete\":false,\"oiled\":false,\"place\":\"north rack\",\"from_stage\":\"outer walls\",\"cut_from\":\"\",\"first_line_320ths_mm\":null,\"note\":\"\",\"state\":\"reserved\",\"reserved_for\":\"outer walls\"},\"bought\":null,\"cuts\":[{\"stage\":\"outer walls\",\"cut\":\"stud\",\"start_320ths_mm\":4064,\"length_320ths_mm\":235712,\"use\":\"structural\"}],\"remainders\":[{\"start_320ths_mm\":240792,\"length_320ths_mm\":3040,\"kept\":false}],\"untouched_320ths_mm\":[[292608,1105408]],\"saw_cuts\":2},{\"source\":null,\"bought\":{\"material\":\"2x4\",\"length_320ths_mm\":780288,\"treated\":false,\"cents\":425,\"lead_days\":2,\"limit\":40,\"supplier\":\"Sägewerk Höß\",\"seen_on\":\"2026-11-01\"},\"cuts\":[{\"stage\":\"outer walls\",\"cut\":\"brace\",\"start_320ths_mm\":0,\"length_320ths_mm\":325120,\"use\":\"bracing\"},{\"stage\":\"porch\",\"cut\":\"post\",\"start_320ths_mm\":326136,\"length_320ths_mm\":243840,\"use\":\"nonstructural\"}],\"remainders\":[{\"start_320ths_mm\":570992,\"length_320ths_mm\":209296,\"kept\":true}],\"untouched_320ths_mm\":[],\"saw_cuts\":2}],\"hardware\":[{\"stage\":\"outer walls\",\"name\":\"ties\",\"hardware\":\"snap tie\",\"unit\":\"box\",\"count\":3,\"from_yard\":1,\"to_buy\":1,\"cents\":1990}],\"unfilled\":[{\"stage\":\"outer walls\",\"cut\":\"stud\",\"count\":2,\"reason\":\"no 2x4 is long enough: the longest is short by 4\\\"\"}],\"savings\":{\"all_new_cents\":5100,\"spend_cents\":2415,\"all_new_proven\":false,\"unpriced\":[\"#4\"]},\"unpriced\":[\"#4\",\"Kantholz »schräg«\"]}","hardware":"waiting"}');
INSERT INTO change VALUES(33,5,'plan_step',1,NULL,'{"id":1,"plan":1,"piece":0,"state":"waiting","actual":null}','{"id":1,"plan":1,"piece":0,"state":"done otherwise","actual":"{\"source\":{\"code\":\"Y4MNV9W\",\"material\":\"2x10\",\"length_320ths_mm\":1105408,\"width_320ths_mm\":0,\"condition\":\"sound\",\"bad_spots_320ths_mm\":[[243840,292608]],\"trim_left_320ths_mm\":4064,\"trim_right_320ths_mm\":0,\"treated\":false,\"treated_with\":\"\",\"stamped\":false,\"nails\":true,\"concrete\":false,\"oiled\":false,\"place\":\"north rack\",\"from_stage\":\"walls\",\"cut_from\":\"\",\"first_line_320ths_mm\":null,\"note\":\"\",\"state\":\"reserved\",\"reserved_for\":\"walls\"},\"bought\":null,\"cuts\":[],\"remainders\":[{\"start_320ths_mm\":0,\"length_320ths_mm\":162560,\"kept\":true}],\"untouched_320ths_mm\":[],\"saw_cuts\":1}"}');
INSERT INTO change VALUES(34,6,'plan',1,NULL,'{"id":1,"made_on":"2026-11-25","document":"{\"schema\":1,\"stages\":[\"outer walls\",\"porch\"],\"tiers\":{\"unfilled\":{\"value\":2,\"bound\":1},\"unfilled_by_stage\":[{\"value\":2,\"bound\":1},{\"value\":0,\"bound\":0}],\"spend_cents\":{\"value\":425,\"bound\":400},\"value_given_up_cents\":{\"value\":-120,\"bound\":-130},\"saw_cuts\":5},\"pieces\":[{\"source\":{\"code\":\"Y4MNV9W\",\"material\":\"2x10\",\"length_320ths_mm\":1105408,\"width_320ths_mm\":0,\"condition\":\"sound\",\"bad_spots_320ths_mm\":[[243840,292608]],\"trim_left_320ths_mm\":4064,\"trim_right_320ths_mm\":0,\"treated\":false,\"treated_with\":\"\",\"stamped\":false,\"nails\":true,\"concrete\":false,\"oiled\":false,\"place\":\"north rack\",\"from_stage\":\"outer walls\",\"cut_from\":\"\",\"first_line_320ths_mm\":null,\"note\":\"\",\"state\":\"reserved\",\"reserved_for\":\"outer walls\"},\"bought\":null,\"cuts\":[{\"stage\":\"outer walls\",\"cut\":\"stud\",\"start_320ths_mm\":4064,\"length_320ths_mm\":235712,\"use\":\"structural\"}],\"remainders\":[{\"start_320ths_mm\":240792,\"length_320ths_mm\":3040,\"kept\":false}],\"untouched_320ths_mm\":[[292608,1105408]],\"saw_cuts\":2},{\"source\":null,\"bought\":{\"material\":\"2x4\",\"length_320ths_mm\":780288,\"treated\":false,\"cents\":425,\"lead_days\":2,\"limit\":40,\"supplier\":\"Sägewerk Höß\",\"seen_on\":\"2026-11-01\"},\"cuts\":[{\"stage\":\"outer walls\",\"cut\":\"brace\",\"start_320ths_mm\":0,\"length_320ths_mm\":325120,\"use\":\"bracing\"},{\"stage\":\"porch\",\"cut\":\"post\",\"start_320ths_mm\":326136,\"length_320ths_mm\":243840,\"use\":\"nonstructural\"}],\"remainders\":[{\"start_320ths_mm\":570992,\"length_320ths_mm\":209296,\"kept\":true}],\"untouched_320ths_mm\":[],\"saw_cuts\":2}],\"hardware\":[{\"stage\":\"outer walls\",\"name\":\"ties\",\"hardware\":\"snap tie\",\"unit\":\"box\",\"count\":3,\"from_yard\":1,\"to_buy\":1,\"cents\":1990}],\"unfilled\":[{\"stage\":\"outer walls\",\"cut\":\"stud\",\"count\":2,\"reason\":\"no 2x4 is long enough: the longest is short by 4\\\"\"}],\"savings\":{\"all_new_cents\":5100,\"spend_cents\":2415,\"all_new_proven\":false,\"unpriced\":[\"#4\"]},\"unpriced\":[\"#4\",\"Kantholz »schräg«\"]}","hardware":"waiting"}','{"id":1,"made_on":"2026-11-25","document":"{\"schema\":1,\"stages\":[\"outer walls\",\"porch\"],\"tiers\":{\"unfilled\":{\"value\":2,\"bound\":1},\"unfilled_by_stage\":[{\"value\":2,\"bound\":1},{\"value\":0,\"bound\":0}],\"spend_cents\":{\"value\":425,\"bound\":400},\"value_given_up_cents\":{\"value\":-120,\"bound\":-130},\"saw_cuts\":5},\"pieces\":[{\"source\":{\"code\":\"Y4MNV9W\",\"material\":\"2x10\",\"length_320ths_mm\":1105408,\"width_320ths_mm\":0,\"condition\":\"sound\",\"bad_spots_320ths_mm\":[[243840,292608]],\"trim_left_320ths_mm\":4064,\"trim_right_320ths_mm\":0,\"treated\":false,\"treated_with\":\"\",\"stamped\":false,\"nails\":true,\"concrete\":false,\"oiled\":false,\"place\":\"north rack\",\"from_stage\":\"outer walls\",\"cut_from\":\"\",\"first_line_320ths_mm\":null,\"note\":\"\",\"state\":\"reserved\",\"reserved_for\":\"outer walls\"},\"bought\":null,\"cuts\":[{\"stage\":\"outer walls\",\"cut\":\"stud\",\"start_320ths_mm\":4064,\"length_320ths_mm\":235712,\"use\":\"structural\"}],\"remainders\":[{\"start_320ths_mm\":240792,\"length_320ths_mm\":3040,\"kept\":false}],\"untouched_320ths_mm\":[[292608,1105408]],\"saw_cuts\":2},{\"source\":null,\"bought\":{\"material\":\"2x4\",\"length_320ths_mm\":780288,\"treated\":false,\"cents\":425,\"lead_days\":2,\"limit\":40,\"supplier\":\"Sägewerk Höß\",\"seen_on\":\"2026-11-01\"},\"cuts\":[{\"stage\":\"outer walls\",\"cut\":\"brace\",\"start_320ths_mm\":0,\"length_320ths_mm\":325120,\"use\":\"bracing\"},{\"stage\":\"porch\",\"cut\":\"post\",\"start_320ths_mm\":326136,\"length_320ths_mm\":243840,\"use\":\"nonstructural\"}],\"remainders\":[{\"start_320ths_mm\":570992,\"length_320ths_mm\":209296,\"kept\":true}],\"untouched_320ths_mm\":[],\"saw_cuts\":2}],\"hardware\":[{\"stage\":\"outer walls\",\"name\":\"ties\",\"hardware\":\"snap tie\",\"unit\":\"box\",\"count\":3,\"from_yard\":1,\"to_buy\":1,\"cents\":1990}],\"unfilled\":[{\"stage\":\"outer walls\",\"cut\":\"stud\",\"count\":2,\"reason\":\"no 2x4 is long enough: the longest is short by 4\\\"\"}],\"savings\":{\"all_new_cents\":5100,\"spend_cents\":2415,\"all_new_proven\":false,\"unpriced\":[\"#4\"]},\"unpriced\":[\"#4\",\"Kantholz »schräg«\"]}","hardware":"done"}');
CREATE TABLE place (
  id         INTEGER PRIMARY KEY,
  name       TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (length(name) BETWEEN 1 AND 60),
  code       TEXT UNIQUE CHECK (length(code) = 7 AND code NOT GLOB '*[^2345679ACDEFHJKMNPRTVWXY]*'),
  counted_on TEXT CHECK (counted_on IS date(counted_on))
) STRICT;
CREATE TABLE bundle (
  id        INTEGER PRIMARY KEY,
  code      TEXT NOT NULL UNIQUE CHECK (length(code) = 7 AND code NOT GLOB '*[^2345679ACDEFHJKMNPRTVWXY]*'),
  name      TEXT NOT NULL DEFAULT '' CHECK (length(name) <= 60),
  place     TEXT NOT NULL DEFAULT '' CHECK (length(place) <= 60),
  opened_on TEXT CHECK (opened_on IS date(opened_on))
) STRICT;
CREATE TABLE bundle_piece (
  id     INTEGER PRIMARY KEY,
  bundle INTEGER NOT NULL REFERENCES bundle (id),
  piece  TEXT NOT NULL UNIQUE REFERENCES piece (code)
) STRICT;
CREATE TABLE void_code (
  id        INTEGER PRIMARY KEY,
  code      TEXT NOT NULL UNIQUE CHECK (length(code) = 7 AND code NOT GLOB '*[^2345679ACDEFHJKMNPRTVWXY]*'),
  was       TEXT NOT NULL CHECK (was IN ('blank', 'place')),
  voided_on TEXT NOT NULL CHECK (voided_on = date(voided_on))
) STRICT;
CREATE TABLE printer (
  id              INTEGER PRIMARY KEY,
  name            TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (length(name) BETWEEN 1 AND 60),
  right_320ths_mm INTEGER NOT NULL CHECK (right_320ths_mm BETWEEN -6400 AND 6400),
  down_320ths_mm  INTEGER NOT NULL CHECK (down_320ths_mm BETWEEN -6400 AND 6400)
) STRICT;
CREATE TABLE keep_back (
  id               INTEGER PRIMARY KEY,
  material         TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (length(material) BETWEEN 1 AND 60),
  length_320ths_mm INTEGER NOT NULL DEFAULT 0 CHECK (length_320ths_mm BETWEEN 0 AND 320000000000),
  count            INTEGER NOT NULL DEFAULT 0 CHECK (count BETWEEN 0 AND 2147483647),
  CHECK ((length_320ths_mm = 0) <> (count = 0))
) STRICT;
CREATE TABLE bed (
  id                       INTEGER PRIMARY KEY,
  name                     TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (length(name) BETWEEN 1 AND 60),
  longest_320ths_mm        INTEGER NOT NULL CHECK (longest_320ths_mm BETWEEN 1 AND 320000000000),
  weight_thousandths_lb    INTEGER NOT NULL CHECK (weight_thousandths_lb BETWEEN 1 AND 1000000000000),
  volume_thousandths_cu_ft INTEGER CHECK (volume_thousandths_cu_ft BETWEEN 1 AND 1000000000000)
) STRICT;
CREATE TABLE hand_over (
  id                    INTEGER PRIMARY KEY,
  transfer              TEXT NOT NULL UNIQUE CHECK (length(transfer) = 16 AND transfer NOT GLOB '*[^2345679ACDEFHJKMNPRTVWXY]*'),
  day                   TEXT NOT NULL CHECK (day = date(day)),
  kind                  TEXT NOT NULL CHECK (kind IN ('gift', 'loan', 'sale')),
  to_whom               TEXT NOT NULL CHECK (length(to_whom) BETWEEN 1 AND 60),
  price_cents           INTEGER CHECK (price_cents >= 0),
  due_on                TEXT CHECK (due_on IS date(due_on)),
  due                   TEXT NOT NULL DEFAULT '' CHECK (length(due) <= 500),
  worth_cents           INTEGER NOT NULL CHECK (worth_cents >= 0),
  weight_thousandths_lb INTEGER NOT NULL CHECK (weight_thousandths_lb >= 0),
  confirmed_on          TEXT CHECK (confirmed_on IS date(confirmed_on)),
  CHECK ((kind = 'sale') = (price_cents IS NOT NULL)),
  CHECK (kind = 'loan' OR (due_on IS NULL AND due = ''))
) STRICT;
CREATE TABLE hand_over_item (
  id        INTEGER PRIMARY KEY,
  hand_over INTEGER NOT NULL REFERENCES hand_over (id),
  code      TEXT NOT NULL CHECK (length(code) = 7 AND code NOT GLOB '*[^2345679ACDEFHJKMNPRTVWXY]*'),
  count     INTEGER NOT NULL CHECK (count BETWEEN 1 AND 2147483647),
  back      INTEGER NOT NULL DEFAULT 0 CHECK (back BETWEEN 0 AND count), settled INTEGER NOT NULL DEFAULT 0 CHECK (settled BETWEEN 0 AND count - back), settled_as TEXT NOT NULL DEFAULT '' CHECK (length(settled_as) <= 500), worth_cents INTEGER CHECK (worth_cents >= 0), weight_thousandths_lb INTEGER CHECK (weight_thousandths_lb >= 0),
  UNIQUE (hand_over, code)
) STRICT;
CREATE TABLE taken_in (
  id        INTEGER PRIMARY KEY,
  transfer  TEXT NOT NULL UNIQUE CHECK (length(transfer) = 16 AND transfer NOT GLOB '*[^2345679ACDEFHJKMNPRTVWXY]*'),
  day       TEXT NOT NULL CHECK (day = date(day)),
  from_whom TEXT NOT NULL CHECK (length(from_whom) <= 60),
  kind      TEXT NOT NULL CHECK (kind IN ('gift', 'loan', 'sale')),
  due_on    TEXT CHECK (due_on IS date(due_on)),
  due       TEXT NOT NULL DEFAULT '' CHECK (length(due) <= 500)
) STRICT;
CREATE TABLE brought (
  id       INTEGER PRIMARY KEY,
  code     TEXT NOT NULL UNIQUE CHECK (length(code) = 7 AND code NOT GLOB '*[^2345679ACDEFHJKMNPRTVWXY]*'),
  transfer TEXT NOT NULL CHECK (length(transfer) = 16 AND transfer NOT GLOB '*[^2345679ACDEFHJKMNPRTVWXY]*'),
  was      TEXT NOT NULL CHECK (length(was) = 7 AND was NOT GLOB '*[^2345679ACDEFHJKMNPRTVWXY]*'),
  history  TEXT NOT NULL CHECK (json_valid(history) AND json_type(history) = 'array')
, earlier TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(earlier) AND json_type(earlier) = 'array')) STRICT;
CREATE TABLE IF NOT EXISTS "ledger" (
  id              INTEGER PRIMARY KEY,
  day             TEXT NOT NULL CHECK (day = date(day)),
  stage           TEXT NOT NULL CHECK (length(stage) <= 60),
  plan            INTEGER REFERENCES plan (id),
  all_new_cents   INTEGER NOT NULL,
  spent_cents     INTEGER NOT NULL,
  board_feet      TEXT NOT NULL CHECK (ltrim(board_feet, '-') GLOB '[0-9]*' AND board_feet NOT GLOB '?*[^0-9.]*'),
  panel_square_mm TEXT NOT NULL CHECK (ltrim(panel_square_mm, '-') GLOB '[0-9]*' AND panel_square_mm NOT GLOB '?*[^0-9.]*'),
  weight_pounds   TEXT NOT NULL CHECK (ltrim(weight_pounds, '-') GLOB '[0-9]*' AND weight_pounds NOT GLOB '?*[^0-9.]*'),
  wood_weight_pounds TEXT NOT NULL CHECK (ltrim(wood_weight_pounds, '-') GLOB '[0-9]*' AND wood_weight_pounds NOT GLOB '?*[^0-9.]*'),
  pieces_used     INTEGER NOT NULL CHECK (pieces_used BETWEEN -2147483647 AND 2147483647),
  hardware_used   INTEGER NOT NULL CHECK (hardware_used BETWEEN 0 AND 2147483647)
) STRICT;
INSERT INTO ledger VALUES(1,'2026-11-25','outer walls',1,1250,425,'5.3333333333333333333333333333','92903.04','12.5','9.5',3,7);
DELETE FROM sqlite_sequence;
INSERT INTO sqlite_sequence VALUES('plan',1);
CREATE INDEX required_cut_by_stage ON required_cut (stage);
CREATE INDEX hardware_need_by_stage ON hardware_need (stage);
CREATE INDEX piece_by_cut_from ON piece (cut_from) WHERE cut_from IS NOT NULL;
CREATE INDEX piece_by_reserved_for ON piece (reserved_for) WHERE reserved_for IS NOT NULL;
CREATE TRIGGER piece_code_is_free BEFORE INSERT ON piece
WHEN EXISTS (SELECT 1 FROM bin WHERE code = NEW.code) OR EXISTS (SELECT 1 FROM blank WHERE code = NEW.code)
BEGIN SELECT RAISE(ABORT, 'this code belongs to a bin or a blank label'); END;
CREATE TRIGGER bin_code_is_free BEFORE INSERT ON bin
WHEN EXISTS (SELECT 1 FROM piece WHERE code = NEW.code) OR EXISTS (SELECT 1 FROM blank WHERE code = NEW.code)
BEGIN SELECT RAISE(ABORT, 'this code belongs to a piece or a blank label'); END;
CREATE TRIGGER blank_code_is_free BEFORE INSERT ON blank
WHEN EXISTS (SELECT 1 FROM piece WHERE code = NEW.code) OR EXISTS (SELECT 1 FROM bin WHERE code = NEW.code)
BEGIN SELECT RAISE(ABORT, 'this code belongs to a piece or a bin'); END;
CREATE TRIGGER piece_code_stays BEFORE UPDATE OF code ON piece WHEN NEW.code <> OLD.code
BEGIN SELECT RAISE(ABORT, 'a piece keeps its code'); END;
CREATE TRIGGER bin_code_stays BEFORE UPDATE OF code ON bin WHEN NEW.code <> OLD.code
BEGIN SELECT RAISE(ABORT, 'a bin keeps its code'); END;
CREATE TRIGGER blank_code_stays BEFORE UPDATE OF code ON blank WHEN NEW.code <> OLD.code
BEGIN SELECT RAISE(ABORT, 'a blank label keeps its code'); END;
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
CREATE TRIGGER piece_is_not_its_own_ancestor BEFORE UPDATE OF cut_from ON piece
WHEN NEW.cut_from IS NOT NULL AND EXISTS (
  WITH RECURSIVE ancestor (code) AS (
    VALUES (NEW.cut_from)
    UNION
    SELECT piece.cut_from FROM piece JOIN ancestor ON piece.code = ancestor.code WHERE piece.cut_from IS NOT NULL)
  SELECT 1 FROM ancestor WHERE code = NEW.code)
BEGIN SELECT RAISE(ABORT, 'a piece can not be cut from itself'); END;
CREATE TRIGGER piece_stays BEFORE DELETE ON piece
WHEN NOT EXISTS (SELECT 1 FROM open_entry JOIN history ON history.number = open_entry.entry WHERE history.undoes IS NOT NULL)
BEGIN SELECT RAISE(ABORT, 'a piece is never removed: set its state'); END;
CREATE TRIGGER setting_stays BEFORE DELETE ON setting
BEGIN SELECT RAISE(ABORT, 'the settings stay'); END;
CREATE TRIGGER use_rule_stays BEFORE DELETE ON use_rule
BEGIN SELECT RAISE(ABORT, 'each use keeps its rule'); END;
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
CREATE TRIGGER stage_added AFTER INSERT ON stage BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'stage', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'position', NEW.position, 'name', NEW.name, 'begins_on', NEW.begins_on));
END;
CREATE TRIGGER stage_changed AFTER UPDATE ON stage BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'stage', NEW.id, NULL, json_object(
    'id', OLD.id, 'position', OLD.position, 'name', OLD.name, 'begins_on', OLD.begins_on), json_object(
    'id', NEW.id, 'position', NEW.position, 'name', NEW.name, 'begins_on', NEW.begins_on));
END;
CREATE TRIGGER stage_removed AFTER DELETE ON stage BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'stage', OLD.id, NULL, json_object(
    'id', OLD.id, 'position', OLD.position, 'name', OLD.name, 'begins_on', OLD.begins_on), NULL);
END;
CREATE TRIGGER hardware_need_added AFTER INSERT ON hardware_need BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'hardware_need', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'stage', NEW.stage, 'position', NEW.position, 'name', NEW.name, 'hardware', NEW.hardware, 'unit', NEW.unit,
    'count', NEW.count));
END;
CREATE TRIGGER hardware_need_changed AFTER UPDATE ON hardware_need BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'hardware_need', NEW.id, NULL, json_object(
    'id', OLD.id, 'stage', OLD.stage, 'position', OLD.position, 'name', OLD.name, 'hardware', OLD.hardware, 'unit', OLD.unit,
    'count', OLD.count), json_object(
    'id', NEW.id, 'stage', NEW.stage, 'position', NEW.position, 'name', NEW.name, 'hardware', NEW.hardware, 'unit', NEW.unit,
    'count', NEW.count));
END;
CREATE TRIGGER hardware_need_removed AFTER DELETE ON hardware_need BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'hardware_need', OLD.id, NULL, json_object(
    'id', OLD.id, 'stage', OLD.stage, 'position', OLD.position, 'name', OLD.name, 'hardware', OLD.hardware, 'unit', OLD.unit,
    'count', OLD.count), NULL);
END;
CREATE TRIGGER piece_added AFTER INSERT ON piece BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'piece', NEW.id, NEW.code, NULL, json_object(
    'id', NEW.id, 'code', NEW.code, 'material', NEW.material, 'length_320ths_mm', NEW.length_320ths_mm,
    'width_320ths_mm', NEW.width_320ths_mm, 'condition', NEW.condition, 'bad_spots_320ths_mm', NEW.bad_spots_320ths_mm,
    'trim_left_320ths_mm', NEW.trim_left_320ths_mm, 'trim_right_320ths_mm', NEW.trim_right_320ths_mm, 'treated', NEW.treated,
    'treated_with', NEW.treated_with, 'stamped', NEW.stamped, 'nails', NEW.nails, 'concrete', NEW.concrete, 'oiled', NEW.oiled,
    'place', NEW.place, 'from_stage', NEW.from_stage, 'cut_from', NEW.cut_from,
    'first_line_320ths_mm', NEW.first_line_320ths_mm, 'note', NEW.note, 'state', NEW.state, 'reserved_for', NEW.reserved_for));
END;
CREATE TRIGGER piece_changed AFTER UPDATE ON piece BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'piece', NEW.id, NEW.code, json_object(
    'id', OLD.id, 'code', OLD.code, 'material', OLD.material, 'length_320ths_mm', OLD.length_320ths_mm,
    'width_320ths_mm', OLD.width_320ths_mm, 'condition', OLD.condition, 'bad_spots_320ths_mm', OLD.bad_spots_320ths_mm,
    'trim_left_320ths_mm', OLD.trim_left_320ths_mm, 'trim_right_320ths_mm', OLD.trim_right_320ths_mm, 'treated', OLD.treated,
    'treated_with', OLD.treated_with, 'stamped', OLD.stamped, 'nails', OLD.nails, 'concrete', OLD.concrete, 'oiled', OLD.oiled,
    'place', OLD.place, 'from_stage', OLD.from_stage, 'cut_from', OLD.cut_from,
    'first_line_320ths_mm', OLD.first_line_320ths_mm, 'note', OLD.note, 'state', OLD.state, 'reserved_for', OLD.reserved_for), json_object(
    'id', NEW.id, 'code', NEW.code, 'material', NEW.material, 'length_320ths_mm', NEW.length_320ths_mm,
    'width_320ths_mm', NEW.width_320ths_mm, 'condition', NEW.condition, 'bad_spots_320ths_mm', NEW.bad_spots_320ths_mm,
    'trim_left_320ths_mm', NEW.trim_left_320ths_mm, 'trim_right_320ths_mm', NEW.trim_right_320ths_mm, 'treated', NEW.treated,
    'treated_with', NEW.treated_with, 'stamped', NEW.stamped, 'nails', NEW.nails, 'concrete', NEW.concrete, 'oiled', NEW.oiled,
    'place', NEW.place, 'from_stage', NEW.from_stage, 'cut_from', NEW.cut_from,
    'first_line_320ths_mm', NEW.first_line_320ths_mm, 'note', NEW.note, 'state', NEW.state, 'reserved_for', NEW.reserved_for));
END;
CREATE TRIGGER piece_removed AFTER DELETE ON piece BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'piece', OLD.id, OLD.code, json_object(
    'id', OLD.id, 'code', OLD.code, 'material', OLD.material, 'length_320ths_mm', OLD.length_320ths_mm,
    'width_320ths_mm', OLD.width_320ths_mm, 'condition', OLD.condition, 'bad_spots_320ths_mm', OLD.bad_spots_320ths_mm,
    'trim_left_320ths_mm', OLD.trim_left_320ths_mm, 'trim_right_320ths_mm', OLD.trim_right_320ths_mm, 'treated', OLD.treated,
    'treated_with', OLD.treated_with, 'stamped', OLD.stamped, 'nails', OLD.nails, 'concrete', OLD.concrete, 'oiled', OLD.oiled,
    'place', OLD.place, 'from_stage', OLD.from_stage, 'cut_from', OLD.cut_from,
    'first_line_320ths_mm', OLD.first_line_320ths_mm, 'note', OLD.note, 'state', OLD.state, 'reserved_for', OLD.reserved_for), NULL);
END;
CREATE TRIGGER bin_added AFTER INSERT ON bin BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'bin', NEW.id, NEW.code, NULL, json_object(
    'id', NEW.id, 'code', NEW.code, 'hardware', NEW.hardware, 'unit', NEW.unit, 'quantity', NEW.quantity, 'place', NEW.place,
    'note', NEW.note));
END;
CREATE TRIGGER bin_changed AFTER UPDATE ON bin BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'bin', NEW.id, NEW.code, json_object(
    'id', OLD.id, 'code', OLD.code, 'hardware', OLD.hardware, 'unit', OLD.unit, 'quantity', OLD.quantity, 'place', OLD.place,
    'note', OLD.note), json_object(
    'id', NEW.id, 'code', NEW.code, 'hardware', NEW.hardware, 'unit', NEW.unit, 'quantity', NEW.quantity, 'place', NEW.place,
    'note', NEW.note));
END;
CREATE TRIGGER bin_removed AFTER DELETE ON bin BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'bin', OLD.id, OLD.code, json_object(
    'id', OLD.id, 'code', OLD.code, 'hardware', OLD.hardware, 'unit', OLD.unit, 'quantity', OLD.quantity, 'place', OLD.place,
    'note', OLD.note), NULL);
END;
CREATE TRIGGER blank_added AFTER INSERT ON blank BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'blank', NEW.id, NEW.code, NULL, json_object(
    'id', NEW.id, 'code', NEW.code));
END;
CREATE TRIGGER blank_changed AFTER UPDATE ON blank BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'blank', NEW.id, NEW.code, json_object(
    'id', OLD.id, 'code', OLD.code), json_object(
    'id', NEW.id, 'code', NEW.code));
END;
CREATE TRIGGER blank_removed AFTER DELETE ON blank BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'blank', OLD.id, OLD.code, json_object(
    'id', OLD.id, 'code', OLD.code), NULL);
END;
CREATE TRIGGER label_queue_added AFTER INSERT ON label_queue BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'label_queue', NEW.id, NEW.code, NULL, json_object(
    'id', NEW.id, 'code', NEW.code));
END;
CREATE TRIGGER label_queue_changed AFTER UPDATE ON label_queue BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'label_queue', NEW.id, NEW.code, json_object(
    'id', OLD.id, 'code', OLD.code), json_object(
    'id', NEW.id, 'code', NEW.code));
END;
CREATE TRIGGER label_queue_removed AFTER DELETE ON label_queue BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'label_queue', OLD.id, OLD.code, json_object(
    'id', OLD.id, 'code', OLD.code), NULL);
END;
CREATE TRIGGER price_added AFTER INSERT ON price BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'price', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'material', NEW.material, 'counted', NEW.counted, 'unit', NEW.unit, 'length_320ths_mm', NEW.length_320ths_mm,
    'treated', NEW.treated, 'cents', NEW.cents, 'lead_days', NEW.lead_days, 'most_available', NEW.most_available,
    'supplier', NEW.supplier, 'seen_on', NEW.seen_on));
END;
CREATE TRIGGER price_changed AFTER UPDATE ON price BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'price', NEW.id, NULL, json_object(
    'id', OLD.id, 'material', OLD.material, 'counted', OLD.counted, 'unit', OLD.unit, 'length_320ths_mm', OLD.length_320ths_mm,
    'treated', OLD.treated, 'cents', OLD.cents, 'lead_days', OLD.lead_days, 'most_available', OLD.most_available,
    'supplier', OLD.supplier, 'seen_on', OLD.seen_on), json_object(
    'id', NEW.id, 'material', NEW.material, 'counted', NEW.counted, 'unit', NEW.unit, 'length_320ths_mm', NEW.length_320ths_mm,
    'treated', NEW.treated, 'cents', NEW.cents, 'lead_days', NEW.lead_days, 'most_available', NEW.most_available,
    'supplier', NEW.supplier, 'seen_on', NEW.seen_on));
END;
CREATE TRIGGER price_removed AFTER DELETE ON price BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'price', OLD.id, NULL, json_object(
    'id', OLD.id, 'material', OLD.material, 'counted', OLD.counted, 'unit', OLD.unit, 'length_320ths_mm', OLD.length_320ths_mm,
    'treated', OLD.treated, 'cents', OLD.cents, 'lead_days', OLD.lead_days, 'most_available', OLD.most_available,
    'supplier', OLD.supplier, 'seen_on', OLD.seen_on), NULL);
END;
CREATE TRIGGER setting_added AFTER INSERT ON setting BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'setting', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'unit', NEW.unit, 'currency_sign', NEW.currency_sign,
    'tax_thousandths_of_percent', NEW.tax_thousandths_of_percent, 'kerf_320ths_mm', NEW.kerf_320ths_mm,
    'keep_320ths_mm', NEW.keep_320ths_mm, 'species', NEW.species, 'specific_gravity', NEW.specific_gravity,
    'foam_days', NEW.foam_days, 'covered_places', NEW.covered_places));
END;
CREATE TRIGGER setting_changed AFTER UPDATE ON setting BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'setting', NEW.id, NULL, json_object(
    'id', OLD.id, 'unit', OLD.unit, 'currency_sign', OLD.currency_sign,
    'tax_thousandths_of_percent', OLD.tax_thousandths_of_percent, 'kerf_320ths_mm', OLD.kerf_320ths_mm,
    'keep_320ths_mm', OLD.keep_320ths_mm, 'species', OLD.species, 'specific_gravity', OLD.specific_gravity,
    'foam_days', OLD.foam_days, 'covered_places', OLD.covered_places), json_object(
    'id', NEW.id, 'unit', NEW.unit, 'currency_sign', NEW.currency_sign,
    'tax_thousandths_of_percent', NEW.tax_thousandths_of_percent, 'kerf_320ths_mm', NEW.kerf_320ths_mm,
    'keep_320ths_mm', NEW.keep_320ths_mm, 'species', NEW.species, 'specific_gravity', NEW.specific_gravity,
    'foam_days', NEW.foam_days, 'covered_places', NEW.covered_places));
END;
CREATE TRIGGER setting_removed AFTER DELETE ON setting BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'setting', OLD.id, NULL, json_object(
    'id', OLD.id, 'unit', OLD.unit, 'currency_sign', OLD.currency_sign,
    'tax_thousandths_of_percent', OLD.tax_thousandths_of_percent, 'kerf_320ths_mm', OLD.kerf_320ths_mm,
    'keep_320ths_mm', OLD.keep_320ths_mm, 'species', OLD.species, 'specific_gravity', OLD.specific_gravity,
    'foam_days', OLD.foam_days, 'covered_places', OLD.covered_places), NULL);
END;
CREATE TRIGGER kerf_added AFTER INSERT ON kerf BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'kerf', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'family', NEW.family, 'kerf_320ths_mm', NEW.kerf_320ths_mm));
END;
CREATE TRIGGER kerf_changed AFTER UPDATE ON kerf BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'kerf', NEW.id, NULL, json_object(
    'id', OLD.id, 'family', OLD.family, 'kerf_320ths_mm', OLD.kerf_320ths_mm), json_object(
    'id', NEW.id, 'family', NEW.family, 'kerf_320ths_mm', NEW.kerf_320ths_mm));
END;
CREATE TRIGGER kerf_removed AFTER DELETE ON kerf BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'kerf', OLD.id, NULL, json_object(
    'id', OLD.id, 'family', OLD.family, 'kerf_320ths_mm', OLD.kerf_320ths_mm), NULL);
END;
CREATE TRIGGER keep_added AFTER INSERT ON keep BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'keep', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'material', NEW.material, 'keep_320ths_mm', NEW.keep_320ths_mm));
END;
CREATE TRIGGER keep_changed AFTER UPDATE ON keep BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'keep', NEW.id, NULL, json_object(
    'id', OLD.id, 'material', OLD.material, 'keep_320ths_mm', OLD.keep_320ths_mm), json_object(
    'id', NEW.id, 'material', NEW.material, 'keep_320ths_mm', NEW.keep_320ths_mm));
END;
CREATE TRIGGER keep_removed AFTER DELETE ON keep BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'keep', OLD.id, NULL, json_object(
    'id', OLD.id, 'material', OLD.material, 'keep_320ths_mm', OLD.keep_320ths_mm), NULL);
END;
CREATE TRIGGER use_rule_added AFTER INSERT ON use_rule BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'use_rule', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'use', NEW.use, 'worst_condition', NEW.worst_condition, 'needs_stamp', NEW.needs_stamp));
END;
CREATE TRIGGER use_rule_changed AFTER UPDATE ON use_rule BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'use_rule', NEW.id, NULL, json_object(
    'id', OLD.id, 'use', OLD.use, 'worst_condition', OLD.worst_condition, 'needs_stamp', OLD.needs_stamp), json_object(
    'id', NEW.id, 'use', NEW.use, 'worst_condition', NEW.worst_condition, 'needs_stamp', NEW.needs_stamp));
END;
CREATE TRIGGER use_rule_removed AFTER DELETE ON use_rule BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'use_rule', OLD.id, NULL, json_object(
    'id', OLD.id, 'use', OLD.use, 'worst_condition', OLD.worst_condition, 'needs_stamp', OLD.needs_stamp), NULL);
END;
CREATE TRIGGER plan_added AFTER INSERT ON plan BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'plan', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'made_on', NEW.made_on, 'document', NEW.document, 'hardware', NEW.hardware));
END;
CREATE TRIGGER plan_changed AFTER UPDATE ON plan BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'plan', NEW.id, NULL, json_object(
    'id', OLD.id, 'made_on', OLD.made_on, 'document', OLD.document, 'hardware', OLD.hardware), json_object(
    'id', NEW.id, 'made_on', NEW.made_on, 'document', NEW.document, 'hardware', NEW.hardware));
END;
CREATE TRIGGER plan_removed AFTER DELETE ON plan BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'plan', OLD.id, NULL, json_object(
    'id', OLD.id, 'made_on', OLD.made_on, 'document', OLD.document, 'hardware', OLD.hardware), NULL);
END;
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
CREATE VIEW yard_bad_spots AS
SELECT
  piece.code,
  (spot.value ->> 0) / 8128.0 AS start_in,
  (spot.value ->> 1) / 8128.0 AS end_in,
  (spot.value ->> 0) / 320.0 AS start_mm,
  (spot.value ->> 1) / 320.0 AS end_mm
FROM piece, json_each(piece.bad_spots_320ths_mm) AS spot
ORDER BY piece.id, start_mm;
CREATE VIEW price_list AS
SELECT material, unit, length_320ths_mm / 8128.0 AS length_in, treated, cents / 100.0 AS price, lead_days, most_available, supplier, seen_on
FROM price
ORDER BY counted, material, length_320ths_mm, treated;
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
CREATE INDEX wall_sheet_by_stage ON wall_sheet (stage);
CREATE INDEX wall_sheet_by_system ON wall_sheet (system);
CREATE TRIGGER system_sheet_added AFTER INSERT ON system_sheet BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'system_sheet', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'name', NEW.name, 'sheet', NEW.sheet));
END;
CREATE TRIGGER system_sheet_changed AFTER UPDATE ON system_sheet BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'system_sheet', NEW.id, NULL, json_object(
    'id', OLD.id, 'name', OLD.name, 'sheet', OLD.sheet), json_object(
    'id', NEW.id, 'name', NEW.name, 'sheet', NEW.sheet));
END;
CREATE TRIGGER system_sheet_removed AFTER DELETE ON system_sheet BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'system_sheet', OLD.id, NULL, json_object(
    'id', OLD.id, 'name', OLD.name, 'sheet', OLD.sheet), NULL);
END;
CREATE TRIGGER wall_sheet_added AFTER INSERT ON wall_sheet BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'wall_sheet', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'stage', NEW.stage, 'name', NEW.name, 'system', NEW.system, 'sheet', NEW.sheet));
END;
CREATE TRIGGER wall_sheet_changed AFTER UPDATE ON wall_sheet BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'wall_sheet', NEW.id, NULL, json_object(
    'id', OLD.id, 'stage', OLD.stage, 'name', OLD.name, 'system', OLD.system, 'sheet', OLD.sheet), json_object(
    'id', NEW.id, 'stage', NEW.stage, 'name', NEW.name, 'system', NEW.system, 'sheet', NEW.sheet));
END;
CREATE TRIGGER wall_sheet_removed AFTER DELETE ON wall_sheet BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'wall_sheet', OLD.id, NULL, json_object(
    'id', OLD.id, 'stage', OLD.stage, 'name', OLD.name, 'system', OLD.system, 'sheet', OLD.sheet), NULL);
END;
CREATE VIEW stage_walls AS
SELECT stage.name AS stage, wall_sheet.name AS wall, system_sheet.name AS system, wall_sheet.sheet
FROM wall_sheet
JOIN stage ON stage.id = wall_sheet.stage
JOIN system_sheet ON system_sheet.id = wall_sheet.system
ORDER BY stage.position, wall_sheet.id;
CREATE TRIGGER wall_plan_added AFTER INSERT ON wall_plan BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'wall_plan', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'wall', NEW.wall, 'plan', NEW.plan, 'laying', NEW.laying));
END;
CREATE TRIGGER wall_plan_changed AFTER UPDATE ON wall_plan BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'wall_plan', NEW.id, NULL, json_object(
    'id', OLD.id, 'wall', OLD.wall, 'plan', OLD.plan, 'laying', OLD.laying), json_object(
    'id', NEW.id, 'wall', NEW.wall, 'plan', NEW.plan, 'laying', NEW.laying));
END;
CREATE TRIGGER wall_plan_removed AFTER DELETE ON wall_plan BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'wall_plan', OLD.id, NULL, json_object(
    'id', OLD.id, 'wall', OLD.wall, 'plan', OLD.plan, 'laying', OLD.laying), NULL);
END;
CREATE VIEW stacked_courses AS
SELECT stage.name AS stage, wall_sheet.name AS wall, wall_course.run, wall_course.course
FROM wall_course
JOIN wall_sheet ON wall_sheet.id = wall_course.wall
JOIN stage ON stage.id = wall_sheet.stage
ORDER BY stage.position, wall_sheet.id, wall_course.course, wall_course.run;
CREATE TRIGGER plan_step_added AFTER INSERT ON plan_step BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'plan_step', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'plan', NEW.plan, 'piece', NEW.piece, 'state', NEW.state, 'actual', NEW.actual));
END;
CREATE TRIGGER plan_step_changed AFTER UPDATE ON plan_step BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'plan_step', NEW.id, NULL, json_object(
    'id', OLD.id, 'plan', OLD.plan, 'piece', OLD.piece, 'state', OLD.state, 'actual', OLD.actual), json_object(
    'id', NEW.id, 'plan', NEW.plan, 'piece', NEW.piece, 'state', NEW.state, 'actual', NEW.actual));
END;
CREATE TRIGGER plan_step_removed AFTER DELETE ON plan_step BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'plan_step', OLD.id, NULL, json_object(
    'id', OLD.id, 'plan', OLD.plan, 'piece', OLD.piece, 'state', OLD.state, 'actual', OLD.actual), NULL);
END;
CREATE INDEX change_by_entry ON change (entry);
CREATE INDEX change_by_code ON change (code) WHERE code IS NOT NULL;
CREATE TRIGGER change_stays BEFORE DELETE ON change
BEGIN SELECT RAISE(ABORT, 'the history is never changed'); END;
CREATE TRIGGER change_is_final BEFORE UPDATE ON change
BEGIN SELECT RAISE(ABORT, 'the history is never changed'); END;
CREATE TRIGGER change_is_not_replaced BEFORE INSERT ON change
WHEN EXISTS (SELECT 1 FROM change WHERE number = NEW.number)
BEGIN SELECT RAISE(ABORT, 'the history is never changed'); END;
CREATE INDEX bundle_piece_by_bundle ON bundle_piece (bundle);
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
CREATE VIEW yard_bundles AS
SELECT bundle.code AS bundle, bundle.name, bundle.place, bundle.opened_on, piece.code AS piece, piece.material, piece.length_320ths_mm / 8128.0 AS length_in
FROM bundle
LEFT JOIN bundle_piece ON bundle_piece.bundle = bundle.id
LEFT JOIN piece ON piece.code = bundle_piece.piece
ORDER BY bundle.id, bundle_piece.id;
CREATE INDEX hand_over_item_by_code ON hand_over_item (code);
CREATE TRIGGER keep_back_added AFTER INSERT ON keep_back BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'keep_back', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'material', NEW.material, 'length_320ths_mm', NEW.length_320ths_mm, 'count', NEW.count));
END;
CREATE TRIGGER keep_back_changed AFTER UPDATE ON keep_back BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'keep_back', NEW.id, NULL, json_object(
    'id', OLD.id, 'material', OLD.material, 'length_320ths_mm', OLD.length_320ths_mm, 'count', OLD.count), json_object(
    'id', NEW.id, 'material', NEW.material, 'length_320ths_mm', NEW.length_320ths_mm, 'count', NEW.count));
END;
CREATE TRIGGER keep_back_removed AFTER DELETE ON keep_back BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'keep_back', OLD.id, NULL, json_object(
    'id', OLD.id, 'material', OLD.material, 'length_320ths_mm', OLD.length_320ths_mm, 'count', OLD.count), NULL);
END;
CREATE TRIGGER bed_added AFTER INSERT ON bed BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'bed', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'name', NEW.name, 'longest_320ths_mm', NEW.longest_320ths_mm,
    'weight_thousandths_lb', NEW.weight_thousandths_lb, 'volume_thousandths_cu_ft', NEW.volume_thousandths_cu_ft));
END;
CREATE TRIGGER bed_changed AFTER UPDATE ON bed BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'bed', NEW.id, NULL, json_object(
    'id', OLD.id, 'name', OLD.name, 'longest_320ths_mm', OLD.longest_320ths_mm,
    'weight_thousandths_lb', OLD.weight_thousandths_lb, 'volume_thousandths_cu_ft', OLD.volume_thousandths_cu_ft), json_object(
    'id', NEW.id, 'name', NEW.name, 'longest_320ths_mm', NEW.longest_320ths_mm,
    'weight_thousandths_lb', NEW.weight_thousandths_lb, 'volume_thousandths_cu_ft', NEW.volume_thousandths_cu_ft));
END;
CREATE TRIGGER bed_removed AFTER DELETE ON bed BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'bed', OLD.id, NULL, json_object(
    'id', OLD.id, 'name', OLD.name, 'longest_320ths_mm', OLD.longest_320ths_mm,
    'weight_thousandths_lb', OLD.weight_thousandths_lb, 'volume_thousandths_cu_ft', OLD.volume_thousandths_cu_ft), NULL);
END;
CREATE TRIGGER hand_over_added AFTER INSERT ON hand_over BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'hand_over', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'transfer', NEW.transfer, 'day', NEW.day, 'kind', NEW.kind, 'to_whom', NEW.to_whom,
    'price_cents', NEW.price_cents, 'due_on', NEW.due_on, 'due', NEW.due, 'worth_cents', NEW.worth_cents,
    'weight_thousandths_lb', NEW.weight_thousandths_lb, 'confirmed_on', NEW.confirmed_on));
END;
CREATE TRIGGER hand_over_changed AFTER UPDATE ON hand_over BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'hand_over', NEW.id, NULL, json_object(
    'id', OLD.id, 'transfer', OLD.transfer, 'day', OLD.day, 'kind', OLD.kind, 'to_whom', OLD.to_whom,
    'price_cents', OLD.price_cents, 'due_on', OLD.due_on, 'due', OLD.due, 'worth_cents', OLD.worth_cents,
    'weight_thousandths_lb', OLD.weight_thousandths_lb, 'confirmed_on', OLD.confirmed_on), json_object(
    'id', NEW.id, 'transfer', NEW.transfer, 'day', NEW.day, 'kind', NEW.kind, 'to_whom', NEW.to_whom,
    'price_cents', NEW.price_cents, 'due_on', NEW.due_on, 'due', NEW.due, 'worth_cents', NEW.worth_cents,
    'weight_thousandths_lb', NEW.weight_thousandths_lb, 'confirmed_on', NEW.confirmed_on));
END;
CREATE TRIGGER hand_over_removed AFTER DELETE ON hand_over BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'hand_over', OLD.id, NULL, json_object(
    'id', OLD.id, 'transfer', OLD.transfer, 'day', OLD.day, 'kind', OLD.kind, 'to_whom', OLD.to_whom,
    'price_cents', OLD.price_cents, 'due_on', OLD.due_on, 'due', OLD.due, 'worth_cents', OLD.worth_cents,
    'weight_thousandths_lb', OLD.weight_thousandths_lb, 'confirmed_on', OLD.confirmed_on), NULL);
END;
CREATE TRIGGER taken_in_added AFTER INSERT ON taken_in BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'taken_in', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'transfer', NEW.transfer, 'day', NEW.day, 'from_whom', NEW.from_whom, 'kind', NEW.kind,
    'due_on', NEW.due_on, 'due', NEW.due));
END;
CREATE TRIGGER taken_in_changed AFTER UPDATE ON taken_in BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'taken_in', NEW.id, NULL, json_object(
    'id', OLD.id, 'transfer', OLD.transfer, 'day', OLD.day, 'from_whom', OLD.from_whom, 'kind', OLD.kind,
    'due_on', OLD.due_on, 'due', OLD.due), json_object(
    'id', NEW.id, 'transfer', NEW.transfer, 'day', NEW.day, 'from_whom', NEW.from_whom, 'kind', NEW.kind,
    'due_on', NEW.due_on, 'due', NEW.due));
END;
CREATE TRIGGER taken_in_removed AFTER DELETE ON taken_in BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'taken_in', OLD.id, NULL, json_object(
    'id', OLD.id, 'transfer', OLD.transfer, 'day', OLD.day, 'from_whom', OLD.from_whom, 'kind', OLD.kind,
    'due_on', OLD.due_on, 'due', OLD.due), NULL);
END;
CREATE TRIGGER brought_added AFTER INSERT ON brought BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'brought', NEW.id, NEW.code, NULL, json_object(
    'id', NEW.id, 'code', NEW.code, 'transfer', NEW.transfer, 'was', NEW.was, 'history', NEW.history, 'earlier', NEW.earlier));
END;
CREATE TRIGGER brought_changed AFTER UPDATE ON brought BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'brought', NEW.id, NEW.code, json_object(
    'id', OLD.id, 'code', OLD.code, 'transfer', OLD.transfer, 'was', OLD.was, 'history', OLD.history, 'earlier', OLD.earlier), json_object(
    'id', NEW.id, 'code', NEW.code, 'transfer', NEW.transfer, 'was', NEW.was, 'history', NEW.history, 'earlier', NEW.earlier));
END;
CREATE TRIGGER brought_removed AFTER DELETE ON brought BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'brought', OLD.id, OLD.code, json_object(
    'id', OLD.id, 'code', OLD.code, 'transfer', OLD.transfer, 'was', OLD.was, 'history', OLD.history, 'earlier', OLD.earlier), NULL);
END;
CREATE TRIGGER hand_over_item_added AFTER INSERT ON hand_over_item BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'hand_over_item', NEW.id, NEW.code, NULL, json_object(
    'id', NEW.id, 'hand_over', NEW.hand_over, 'code', NEW.code, 'count', NEW.count, 'back', NEW.back,
    'settled', NEW.settled, 'settled_as', NEW.settled_as, 'worth_cents', NEW.worth_cents, 'weight_thousandths_lb', NEW.weight_thousandths_lb));
END;
CREATE TRIGGER hand_over_item_changed AFTER UPDATE ON hand_over_item BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'hand_over_item', NEW.id, NEW.code, json_object(
    'id', OLD.id, 'hand_over', OLD.hand_over, 'code', OLD.code, 'count', OLD.count, 'back', OLD.back,
    'settled', OLD.settled, 'settled_as', OLD.settled_as, 'worth_cents', OLD.worth_cents, 'weight_thousandths_lb', OLD.weight_thousandths_lb), json_object(
    'id', NEW.id, 'hand_over', NEW.hand_over, 'code', NEW.code, 'count', NEW.count, 'back', NEW.back,
    'settled', NEW.settled, 'settled_as', NEW.settled_as, 'worth_cents', NEW.worth_cents, 'weight_thousandths_lb', NEW.weight_thousandths_lb));
END;
CREATE TRIGGER hand_over_item_removed AFTER DELETE ON hand_over_item BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'hand_over_item', OLD.id, OLD.code, json_object(
    'id', OLD.id, 'hand_over', OLD.hand_over, 'code', OLD.code, 'count', OLD.count, 'back', OLD.back,
    'settled', OLD.settled, 'settled_as', OLD.settled_as, 'worth_cents', OLD.worth_cents, 'weight_thousandths_lb', OLD.weight_thousandths_lb), NULL);
END;
CREATE VIEW handed_over AS
SELECT hand_over.id AS number, hand_over.day, hand_over.kind, hand_over.to_whom, hand_over_item.code,
  coalesce(piece.material, bin.hardware) AS material, piece.length_320ths_mm / 8128.0 AS length_in, piece.length_320ths_mm / 320.0 AS length_mm,
  hand_over_item.count, hand_over_item.back, hand_over_item.settled, hand_over_item.settled_as, hand_over_item.worth_cents, hand_over_item.weight_thousandths_lb / 1000.0 AS weight_lb,
  hand_over.price_cents, hand_over.due_on, hand_over.due, hand_over.confirmed_on
FROM hand_over
JOIN hand_over_item ON hand_over_item.hand_over = hand_over.id
LEFT JOIN piece ON piece.code = hand_over_item.code
LEFT JOIN bin ON bin.code = hand_over_item.code
ORDER BY hand_over.id, hand_over_item.id;
CREATE TRIGGER wall_course_added AFTER INSERT ON wall_course BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'wall_course', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'wall', NEW.wall, 'run', NEW.run, 'course', NEW.course, 'joints_320ths_mm', NEW.joints_320ths_mm, 'pieces', NEW.pieces, 'only_cut', NEW.only_cut));
END;
CREATE TRIGGER wall_course_changed AFTER UPDATE ON wall_course BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'wall_course', NEW.id, NULL, json_object(
    'id', OLD.id, 'wall', OLD.wall, 'run', OLD.run, 'course', OLD.course, 'joints_320ths_mm', OLD.joints_320ths_mm, 'pieces', OLD.pieces, 'only_cut', OLD.only_cut), json_object(
    'id', NEW.id, 'wall', NEW.wall, 'run', NEW.run, 'course', NEW.course, 'joints_320ths_mm', NEW.joints_320ths_mm, 'pieces', NEW.pieces, 'only_cut', NEW.only_cut));
END;
CREATE TRIGGER wall_course_removed AFTER DELETE ON wall_course BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'wall_course', OLD.id, NULL, json_object(
    'id', OLD.id, 'wall', OLD.wall, 'run', OLD.run, 'course', OLD.course, 'joints_320ths_mm', OLD.joints_320ths_mm, 'pieces', OLD.pieces, 'only_cut', OLD.only_cut), NULL);
END;
CREATE INDEX ledger_by_plan ON ledger (plan) WHERE plan IS NOT NULL;
CREATE TRIGGER ledger_added AFTER INSERT ON ledger BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'ledger', NEW.id, NULL, NULL, json_object(
    'id', NEW.id, 'day', NEW.day, 'stage', NEW.stage, 'plan', NEW.plan, 'all_new_cents', NEW.all_new_cents,
    'spent_cents', NEW.spent_cents, 'board_feet', NEW.board_feet, 'panel_square_mm', NEW.panel_square_mm,
    'weight_pounds', NEW.weight_pounds, 'wood_weight_pounds', NEW.wood_weight_pounds, 'pieces_used', NEW.pieces_used, 'hardware_used', NEW.hardware_used));
END;
CREATE TRIGGER ledger_changed AFTER UPDATE ON ledger BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'ledger', NEW.id, NULL, json_object(
    'id', OLD.id, 'day', OLD.day, 'stage', OLD.stage, 'plan', OLD.plan, 'all_new_cents', OLD.all_new_cents,
    'spent_cents', OLD.spent_cents, 'board_feet', OLD.board_feet, 'panel_square_mm', OLD.panel_square_mm,
    'weight_pounds', OLD.weight_pounds, 'wood_weight_pounds', OLD.wood_weight_pounds, 'pieces_used', OLD.pieces_used, 'hardware_used', OLD.hardware_used), json_object(
    'id', NEW.id, 'day', NEW.day, 'stage', NEW.stage, 'plan', NEW.plan, 'all_new_cents', NEW.all_new_cents,
    'spent_cents', NEW.spent_cents, 'board_feet', NEW.board_feet, 'panel_square_mm', NEW.panel_square_mm,
    'weight_pounds', NEW.weight_pounds, 'wood_weight_pounds', NEW.wood_weight_pounds, 'pieces_used', NEW.pieces_used, 'hardware_used', NEW.hardware_used));
END;
CREATE TRIGGER ledger_removed AFTER DELETE ON ledger BEGIN
  INSERT INTO change (entry, table_name, row_id, code, before, after)
  VALUES ((SELECT entry FROM open_entry), 'ledger', OLD.id, NULL, json_object(
    'id', OLD.id, 'day', OLD.day, 'stage', OLD.stage, 'plan', OLD.plan, 'all_new_cents', OLD.all_new_cents,
    'spent_cents', OLD.spent_cents, 'board_feet', OLD.board_feet, 'panel_square_mm', OLD.panel_square_mm,
    'weight_pounds', OLD.weight_pounds, 'wood_weight_pounds', OLD.wood_weight_pounds, 'pieces_used', OLD.pieces_used, 'hardware_used', OLD.hardware_used), NULL);
END;
COMMIT;
PRAGMA application_id = 1330004820;
PRAGMA user_version = 14;
