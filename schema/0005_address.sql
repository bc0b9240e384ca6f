-- What stands in the code of a label: "http://" or "https://", a name, and a port if one is needed.
ALTER TABLE kitchen ADD COLUMN address TEXT;

-- Lets a calendar program read the feed of deadlines and nothing else; only its hash is kept.
CREATE TABLE feed_key (
  key_hash            TEXT PRIMARY KEY,           -- SHA-256 in hexadecimal
  created_at          INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
