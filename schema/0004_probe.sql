-- Thermometers, and how they were checked: once known, a probe may be found off long after.
CREATE TABLE probe (
  name                TEXT PRIMARY KEY,           -- name or number, as written beside a reading
  scales              INTEGER NOT NULL,           -- which scales it shows
  note                TEXT,
  said_at             INTEGER NOT NULL,
  retired_at          INTEGER
) STRICT, WITHOUT ROWID;

-- Rows are only ever added. A probe need not be described before it is checked.
CREATE TABLE probe_check (
  id                  INTEGER PRIMARY KEY,        -- order of writing
  probe               TEXT NOT NULL,
  method              INTEGER NOT NULL,
  reading             INTEGER,                    -- what it showed
  reading_scale       INTEGER CHECK (reading_scale IN (0, 1)),
  passed              INTEGER NOT NULL CHECK (passed IN (0, 1)),
  person              TEXT NOT NULL,              -- initials
  note                TEXT,
  checked_at          INTEGER NOT NULL,
  CHECK ((reading IS NULL) = (reading_scale IS NULL))
) STRICT;

CREATE INDEX probe_check_of_probe ON probe_check (probe, checked_at);

-- What is retired is offered no more, and still explains what was written of it.
ALTER TABLE food ADD COLUMN retired_at INTEGER;
ALTER TABLE food ADD COLUMN thawing TEXT;         -- what a label of a frozen lot says of it
ALTER TABLE place ADD COLUMN retired_at INTEGER;
ALTER TABLE person ADD COLUMN retired_at INTEGER;

-- Printed on every label, such as the words a cottage-food law asks for.
ALTER TABLE kitchen ADD COLUMN label_statement TEXT;
