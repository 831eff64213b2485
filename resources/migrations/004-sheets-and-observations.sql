-- Reference sheets as a record took them in, what was seen of their tells, and what a claim says in a sheet's own terms.
CREATE TABLE reference_sheets (
  "sheet_id" TEXT PRIMARY KEY,
  "title" TEXT NOT NULL,
  "edition" TEXT NOT NULL,
  "sha256" TEXT NOT NULL CHECK (length("sha256") = 64),
  "byte_length" INTEGER NOT NULL CHECK ("byte_length" > 0),
  "taken_at" TEXT NOT NULL
) STRICT;
CREATE TABLE observations (
  "tell" TEXT PRIMARY KEY,
  "state" TEXT NOT NULL
    CHECK ("state" IN ('seen', 'believed', 'measured', 'cannot be seen', 'disturbed')),
  "value" TEXT,
  "sure_percent" REAL CHECK ("sure_percent" BETWEEN 1 AND 99),
  "measured" TEXT CHECK (json_valid("measured") AND json_type("measured") = 'object'),
  "exhibits" TEXT NOT NULL CHECK (json_valid("exhibits") AND json_type("exhibits") = 'array'),
  "note" TEXT NOT NULL
) STRICT;
ALTER TABLE claims ADD COLUMN "asserts" TEXT NOT NULL DEFAULT '[]'
  CHECK (json_valid("asserts") AND json_type("asserts") = 'array');
ALTER TABLE claims ADD COLUMN "reliability" REAL CHECK ("reliability" BETWEEN 1 AND 99);
