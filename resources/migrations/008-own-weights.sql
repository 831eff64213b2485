-- Weights the user sets for the shares of originality, with who set them and when. A record of before has none: its panels
-- count by area and its parts by one.
CREATE TABLE own_weights (
  "weighs" TEXT PRIMARY KEY,
  "factor" REAL NOT NULL CHECK ("factor" BETWEEN 0 AND 1000),
  "reason" TEXT NOT NULL,
  "set_by" TEXT NOT NULL,
  "set_at" TEXT NOT NULL
) STRICT;
