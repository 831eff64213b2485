-- What this car measures where somebody measured it; the plan is drawn from it. A record of before says nothing of it.
ALTER TABLE particulars ADD COLUMN "dimensions" TEXT NOT NULL DEFAULT '{}'
  CHECK (json_valid("dimensions") AND json_type("dimensions") = 'object');
