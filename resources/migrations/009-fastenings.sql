-- What fastenings look like against what was expected of them. A part of before says nothing of it.
ALTER TABLE parts ADD COLUMN "fastening" TEXT
  CHECK (json_valid("fastening") AND json_type("fastening") = 'object');
