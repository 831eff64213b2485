-- Large byte strings: photographs as imported, issued reports. They are source, not derived from the journal.
-- While a string is still arriving its hash is NULL; such rows are cleared away when the record is next opened.
CREATE TABLE byte_strings (
  id INTEGER PRIMARY KEY,
  sha256 TEXT UNIQUE CHECK (length(sha256) = 64),
  byte_length INTEGER CHECK (byte_length >= 0),
  CHECK ((sha256 IS NULL) = (byte_length IS NULL))
) STRICT;

-- Chunks of 1 MiB, the last one shorter: a whole photograph as one value costs eight times the memory.
CREATE TABLE byte_chunks (
  byte_string INTEGER NOT NULL REFERENCES byte_strings (id) ON DELETE CASCADE,
  position INTEGER NOT NULL CHECK (position >= 0),
  bytes BLOB NOT NULL,
  PRIMARY KEY (byte_string, position)
) STRICT;

-- Small pictures made from an original; they can be made again.
CREATE TABLE renderings (
  original TEXT NOT NULL REFERENCES byte_strings (sha256),
  kind TEXT NOT NULL CHECK (kind IN ('thumbnail', 'report')),
  width_px INTEGER NOT NULL CHECK (width_px > 0),
  height_px INTEGER NOT NULL CHECK (height_px > 0),
  bytes BLOB NOT NULL,
  PRIMARY KEY (original, kind)
) STRICT;
