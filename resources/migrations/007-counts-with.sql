-- With which other parts a part is counted as one, where the surveyor says so and not the parts list or a sheet. A part of
-- before is counted as they have it.
ALTER TABLE parts ADD COLUMN "counts_with" TEXT
  CHECK (json_valid("counts_with") AND json_type("counts_with") = 'object');
