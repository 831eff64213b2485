-- What was picked on a photograph to measure something, so that it can be opened and picked again. An exhibit of before
-- holds none.
ALTER TABLE exhibits ADD COLUMN "picked" TEXT
  CHECK (json_valid("picked") AND json_type("picked") = 'object');
