-- What a coating lies on where it was read, and the readings a correction cites before and after the work, as they stood
-- then. A spot of before says nothing of what lay below; a correction of before cites no readings.
ALTER TABLE spots ADD COLUMN "substrate" TEXT NOT NULL DEFAULT 'unknown'
  CHECK ("substrate" IN ('steel', 'zinc-coated steel', 'aluminium', 'lead-loaded seam', 'glass fibre', 'plastic', 'wood', 'unknown'));
ALTER TABLE corrections ADD COLUMN "coating" TEXT
  CHECK (json_valid("coating") AND json_type("coating") = 'object');
