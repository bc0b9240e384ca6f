-- What is to be planned, as it was written, and what the last plan of it was. As few as the kitchen
-- has events; the last word on each stands.
CREATE TABLE plan (
  code                TEXT PRIMARY KEY,
  input               TEXT NOT NULL,              -- YAML or JSON, as it was given
  said_at             INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
