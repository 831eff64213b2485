-- The journal and the registers of a car record. Reference data is not kept here.

-- The journal is the source; every other table of this file is derived from it and can be made again.
-- `content` is canonical JSON (RFC 8785). The columns after `hash` are read out of it and can never disagree with it.
CREATE TABLE journal (
  number INTEGER PRIMARY KEY,
  content TEXT NOT NULL CHECK (json_valid(content) AND content ->> 'number' = number),
  previous_hash TEXT NOT NULL CHECK (length(previous_hash) = 64),
  hash TEXT NOT NULL CHECK (length(hash) = 64),
  command_id TEXT GENERATED ALWAYS AS (content ->> 'commandId') VIRTUAL NOT NULL UNIQUE,
  at TEXT GENERATED ALWAYS AS (content ->> 'at') VIRTUAL NOT NULL,
  who TEXT GENERATED ALWAYS AS (content ->> 'who') VIRTUAL NOT NULL,
  command TEXT GENERATED ALWAYS AS (content ->> 'command') VIRTUAL NOT NULL,
  label TEXT GENERATED ALWAYS AS (content ->> 'label') VIRTUAL NOT NULL
) STRICT;

-- Last number given in each numbered register. It only ever grows: a withdrawn or undone number is not given again.
CREATE TABLE number_counters (
  register TEXT PRIMARY KEY,
  last INTEGER NOT NULL CHECK (last > 0)
) STRICT;

CREATE TABLE particulars (
  "the" INTEGER PRIMARY KEY CHECK ("the" = 1),
  "title" TEXT NOT NULL,
  "maker" TEXT NOT NULL,
  "line" TEXT NOT NULL,
  "body" TEXT NOT NULL CHECK ("body" IN ('saloon2', 'saloon4', 'coupe', 'convertible', 'estate', 'pickup', 'van')),
  "steering" TEXT NOT NULL CHECK ("steering" IN ('left', 'right')),
  "market_of_first_sale" TEXT NOT NULL,
  "colour_now" TEXT NOT NULL,
  "construction" TEXT NOT NULL,
  "built_from" TEXT,
  "built_to" TEXT,
  "built_grounds" TEXT NOT NULL,
  "history" TEXT NOT NULL,
  "conditions" TEXT NOT NULL CHECK (json_valid("conditions") AND json_type("conditions") = 'array')
) STRICT;

CREATE TABLE commission (
  "the" INTEGER PRIMARY KEY CHECK ("the" = 1),
  "record_number" TEXT NOT NULL,
  "examiner" TEXT NOT NULL,
  "examiner_role" TEXT NOT NULL,
  "examiner_contact" TEXT NOT NULL,
  "examiner_competence" TEXT NOT NULL,
  "client" TEXT NOT NULL,
  "other_users" TEXT NOT NULL,
  "not_for_reliance" TEXT NOT NULL,
  "intended_use" TEXT NOT NULL
    CHECK ("intended_use" IN (
      'purchase', 'condition report', 'ledger of corrections', 'check of claims', 'insurance', 'sale',
      'dispute', 'other'
    )),
  "question" TEXT NOT NULL,
  "title_as_told" TEXT NOT NULL,
  "title_verified" INTEGER NOT NULL CHECK ("title_verified" IN (0, 1)),
  "effective_date" TEXT,
  "independence" TEXT NOT NULL,
  "helpers" TEXT NOT NULL,
  "review" TEXT NOT NULL,
  "retention_years" INTEGER NOT NULL CHECK ("retention_years" BETWEEN 0 AND 100),
  "assumptions" TEXT NOT NULL,
  "currency" TEXT NOT NULL CHECK ("currency" GLOB '[A-Z][A-Z][A-Z]'),
  "names" TEXT NOT NULL CHECK ("names" IN ('us', 'uk')),
  "length_unit" TEXT NOT NULL CHECK ("length_unit" IN ('mm', 'in')),
  "coating_unit" TEXT NOT NULL CHECK ("coating_unit" IN ('µm', 'mil')),
  "level" TEXT NOT NULL CHECK ("level" IN ('outside only', 'with openings', 'with inside', 'with underneath')),
  "positions_in_reports" INTEGER NOT NULL CHECK ("positions_in_reports" IN (0, 1))
) STRICT;

CREATE TABLE visits (
  "number" INTEGER PRIMARY KEY CHECK ("number" > 0),
  "began_at" TEXT NOT NULL,
  "ended_at" TEXT,
  "place" TEXT NOT NULL,
  "light" TEXT NOT NULL,
  "weather" TEXT NOT NULL,
  "surface" TEXT NOT NULL CHECK ("surface" IN ('dry', 'wet', 'dirty', 'wet and dirty')),
  "support" TEXT NOT NULL CHECK ("support" IN ('on the ground', 'on stands', 'on a lift')),
  "temperature_c" REAL CHECK ("temperature_c" BETWEEN -60 AND 70),
  "present" TEXT NOT NULL,
  "odometer" TEXT NOT NULL,
  "state_on_arrival" TEXT NOT NULL
) STRICT;

CREATE TABLE consents (
  "step" TEXT PRIMARY KEY
    CHECK ("step" IN (
      'lift the car', 'unscrew', 'wipe', 'borescope', 'pour water', 'connect a battery', 'start the engine', 'drive',
      'take a paint sample'
    )),
  "given" INTEGER NOT NULL CHECK ("given" IN (0, 1)),
  "by" TEXT NOT NULL,
  "on" TEXT,
  "done" TEXT NOT NULL
) STRICT;

CREATE TABLE car_numbers (
  "number" INTEGER PRIMARY KEY CHECK ("number" > 0),
  "kind" TEXT NOT NULL,
  "where" TEXT NOT NULL,
  "how_read" TEXT NOT NULL
    CHECK ("how_read" IN (
      'read character by character', 'from a photograph', 'from paper', 'told', 'not looked for', 'not found'
    )),
  "as_read" TEXT NOT NULL,
  "on_paper" TEXT NOT NULL,
  "paper" TEXT NOT NULL,
  "exhibits" TEXT NOT NULL CHECK (json_valid("exhibits") AND json_type("exhibits") = 'array'),
  "note" TEXT NOT NULL
) STRICT;

CREATE TABLE panels (
  "panel_id" TEXT PRIMARY KEY,
  "inspection" TEXT NOT NULL CHECK ("inspection" IN ('not inspected', 'not accessible', 'inspected')),
  "reason" TEXT NOT NULL,
  "metal" TEXT NOT NULL
    CHECK ("metal" IN (
      'original metal', 'repaired metal', 'patch panel', 'replacement skin', 'replacement panel',
      'filler over metal', 'filler in place of metal', 'not determined', 'not inspected'
    )),
  "paint" TEXT NOT NULL
    CHECK ("paint" IN (
      'factory finish', 'refinished', 'stripped', 'not determined', 'not inspected'
    )),
  "nothing_found" INTEGER NOT NULL CHECK ("nothing_found" IN (0, 1)),
  "back_seen" INTEGER NOT NULL CHECK ("back_seen" IN (0, 1)),
  "magnet_void" INTEGER NOT NULL CHECK ("magnet_void" IN (0, 1)),
  "note" TEXT NOT NULL,
  "changed_at" TEXT NOT NULL
) STRICT;

CREATE TABLE findings (
  "number" INTEGER PRIMARY KEY CHECK ("number" > 0),
  "panel_id" TEXT NOT NULL,
  "kind" TEXT NOT NULL
    CHECK ("kind" IN (
      'corrosion', 'perforation', 'filler', 'dent', 'crack', 'distortion', 'overspray', 'masking edge',
      'seam disturbed', 'weld', 'wrong or disturbed fastening', 'missing', 'added', 'wear', 'other'
    )),
  "layer" TEXT NOT NULL CHECK ("layer" IN ('paint', 'skin', 'inner')),
  "extent" TEXT CHECK (json_valid("extent") AND json_type("extent") = 'object'),
  "length_mm" REAL CHECK ("length_mm" BETWEEN 0 AND 30000),
  "width_mm" REAL CHECK ("width_mm" BETWEEN 0 AND 30000),
  "depth_mm" REAL CHECK ("depth_mm" BETWEEN 0 AND 30000),
  "size_uncertainty_mm" REAL CHECK ("size_uncertainty_mm" BETWEEN 0 AND 30000),
  "severity" TEXT NOT NULL CHECK ("severity" IN ('none', 'slight', 'marked', 'severe')),
  "urgency" TEXT NOT NULL CHECK ("urgency" IN ('none', 'later', 'within a year', 'before use', 'at once')),
  "action" TEXT NOT NULL
    CHECK ("action" IN (
      'record only', 'keep as it is', 'watch', 'examine further', 'clean and protect', 'repair', 'replace',
      'make safe'
    )),
  "learned" TEXT NOT NULL CHECK ("learned" IN ('seen', 'felt', 'measured', 'told', 'inferred')),
  "learned_from" TEXT NOT NULL,
  "grade" TEXT CHECK (json_valid("grade") AND json_type("grade") = 'object'),
  "suspected_cause" TEXT NOT NULL,
  "dangerous" INTEGER NOT NULL CHECK ("dangerous" IN (0, 1)),
  "exhibits" TEXT NOT NULL CHECK (json_valid("exhibits") AND json_type("exhibits") = 'array'),
  "note" TEXT NOT NULL
) STRICT;

CREATE TABLE gauges (
  "number" INTEGER PRIMARY KEY CHECK ("number" > 0),
  "name" TEXT NOT NULL,
  "serial" TEXT NOT NULL,
  "principle" TEXT NOT NULL CHECK ("principle" IN ('magnetic induction', 'eddy current', 'dual', 'ultrasonic')),
  "range_um" REAL CHECK ("range_um" BETWEEN 0 AND 100000),
  "error_um" REAL CHECK ("error_um" BETWEEN 0 AND 100000),
  "error_percent" REAL CHECK ("error_percent" BETWEEN 0 AND 100),
  "probe_diameter_mm" REAL CHECK ("probe_diameter_mm" BETWEEN 0 AND 200),
  "certified_on" TEXT,
  "certificate" TEXT NOT NULL
) STRICT;

CREATE TABLE spots (
  "number" INTEGER PRIMARY KEY CHECK ("number" > 0),
  "panel_id" TEXT NOT NULL,
  "view" TEXT NOT NULL
    CHECK ("view" IN (
      'left', 'roof', 'right', 'front', 'rear', 'under', 'openings', 'bay', 'floor'
    )),
  "at" TEXT CHECK (json_valid("at") AND json_type("at") = 'object'),
  "where" TEXT NOT NULL,
  "values" TEXT NOT NULL CHECK (json_valid("values") AND json_type("values") = 'array'),
  "entered_in" TEXT NOT NULL CHECK ("entered_in" IN ('µm', 'mil')),
  "gauge" INTEGER REFERENCES gauges ("number") DEFERRABLE INITIALLY DEFERRED,
  "mode" TEXT NOT NULL CHECK ("mode" IN ('magnetic', 'eddy current', 'ultrasonic', 'not noted')),
  "read_at" TEXT NOT NULL,
  "exhibits" TEXT NOT NULL CHECK (json_valid("exhibits") AND json_type("exhibits") = 'array'),
  "note" TEXT NOT NULL
) STRICT;

CREATE TABLE gauge_checks (
  "number" INTEGER PRIMARY KEY CHECK ("number" > 0),
  "gauge" INTEGER NOT NULL REFERENCES gauges ("number") DEFERRABLE INITIALLY DEFERRED,
  "when" TEXT NOT NULL CHECK ("when" IN ('before', 'during', 'after')),
  "at" TEXT NOT NULL,
  "shim_um" REAL NOT NULL CHECK ("shim_um" BETWEEN 0 AND 100000),
  "read_um" TEXT NOT NULL CHECK (json_valid("read_um") AND json_type("read_um") = 'array'),
  "note" TEXT NOT NULL
) STRICT;

CREATE TABLE parts (
  "part_id" TEXT PRIMARY KEY,
  "state" TEXT NOT NULL
    CHECK ("state" IN (
      'factory fitted', 'period accessory', 'right type, wrong date', 'new old stock', 'reproduction',
      'later fitment', 'home-made', 'missing', 'not determined', 'not seen'
    )),
  "number_as_read" TEXT NOT NULL,
  "date_as_read" TEXT NOT NULL,
  "marks" TEXT NOT NULL,
  "expected" TEXT NOT NULL,
  "learned" TEXT NOT NULL CHECK ("learned" IN ('seen', 'felt', 'measured', 'told', 'inferred')),
  "exhibits" TEXT NOT NULL CHECK (json_valid("exhibits") AND json_type("exhibits") = 'array'),
  "note" TEXT NOT NULL
) STRICT;

CREATE TABLE claims (
  "number" INTEGER PRIMARY KEY CHECK ("number" > 0),
  "words" TEXT NOT NULL,
  "who" TEXT NOT NULL,
  "kind" TEXT NOT NULL
    CHECK ("kind" IN (
      'seller', 'advert', 'plate or badge', 'invoice', 'register', 'owner', 'other'
    )),
  "on" TEXT,
  "where" TEXT NOT NULL,
  "repeats" INTEGER CHECK ("repeats" > 0),
  "question" TEXT NOT NULL,
  "if_true" TEXT NOT NULL,
  "if_not" TEXT NOT NULL,
  "taken_as_given" TEXT NOT NULL,
  "verdict" TEXT NOT NULL CHECK ("verdict" IN ('supported', 'contradicted', 'not settled')),
  "strength" TEXT NOT NULL
    CHECK ("strength" IN (
      'not stated', 'no support', 'weak', 'moderate', 'moderately strong', 'strong', 'very strong',
      'extremely strong'
    )),
  "reasons" TEXT NOT NULL,
  "set_aside" TEXT NOT NULL,
  "would_settle" TEXT NOT NULL,
  "findings" TEXT NOT NULL CHECK (json_valid("findings") AND json_type("findings") = 'array'),
  "exhibits" TEXT NOT NULL CHECK (json_valid("exhibits") AND json_type("exhibits") = 'array')
) STRICT;

CREATE TABLE corrections (
  "number" INTEGER PRIMARY KEY CHECK ("number" > 0),
  "what" TEXT NOT NULL,
  "group" TEXT NOT NULL
    CHECK ("group" IN (
      'safety and legal', 'metal', 'coating', 'mechanical', 'trim and interior', 'papers'
    )),
  "findings" TEXT NOT NULL CHECK (json_valid("findings") AND json_type("findings") = 'array'),
  "state" TEXT NOT NULL CHECK ("state" IN ('planned', 'done', 'verified')),
  "cost" TEXT CHECK (json_valid("cost") AND json_type("cost") = 'object'),
  "by" TEXT NOT NULL,
  "materials" TEXT NOT NULL,
  "done_on" TEXT,
  "removed_parts_kept" TEXT NOT NULL,
  "reversible" TEXT NOT NULL CHECK ("reversible" IN ('yes', 'no', 'not determined')),
  "verified_by" TEXT NOT NULL,
  "verified_on" TEXT,
  "exhibits_before" TEXT NOT NULL CHECK (json_valid("exhibits_before") AND json_type("exhibits_before") = 'array'),
  "exhibits_after" TEXT NOT NULL CHECK (json_valid("exhibits_after") AND json_type("exhibits_after") = 'array'),
  "findings_after" TEXT NOT NULL CHECK (json_valid("findings_after") AND json_type("findings_after") = 'array'),
  "note" TEXT NOT NULL
) STRICT;

CREATE TABLE exhibits (
  "number" INTEGER PRIMARY KEY CHECK ("number" > 0),
  "kind" TEXT NOT NULL CHECK ("kind" IN ('photograph', 'document', 'measurement', 'statement', 'recording')),
  "caption" TEXT NOT NULL,
  "made_by" TEXT NOT NULL,
  "place" TEXT NOT NULL,
  "panel_id" TEXT,
  "view" TEXT CHECK ("view" IN ('left', 'roof', 'right', 'front', 'rear', 'under', 'openings', 'bay', 'floor')),
  "at" TEXT CHECK (json_valid("at") AND json_type("at") = 'object'),
  "in_report" INTEGER NOT NULL CHECK ("in_report" IN (0, 1)),
  "photograph" TEXT CHECK (json_valid("photograph") AND json_type("photograph") = 'object'),
  "measurement" TEXT CHECK (json_valid("measurement") AND json_type("measurement") = 'object'),
  "added_at" TEXT NOT NULL
) STRICT;

CREATE TABLE editions (
  "number" INTEGER PRIMARY KEY CHECK ("number" > 0),
  "report_number" TEXT NOT NULL,
  "issued_at" TEXT NOT NULL,
  "paper" TEXT NOT NULL CHECK ("paper" IN ('A4', 'Letter')),
  "reason" TEXT NOT NULL,
  "sha256" TEXT NOT NULL CHECK (length("sha256") = 64),
  "byte_length" INTEGER NOT NULL CHECK ("byte_length" > 0),
  "pages" INTEGER NOT NULL CHECK ("pages" > 0),
  "journal_number" INTEGER NOT NULL CHECK ("journal_number" >= 0),
  "journal_hash" TEXT NOT NULL CHECK (length("journal_hash") = 64)
) STRICT;
