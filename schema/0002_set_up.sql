-- What the kitchen says of itself, once and not in a log. Foods, places and people are as few as
-- the kitchen is large; the last word on each stands.
CREATE TABLE food (
  name                TEXT PRIMARY KEY,
  category            TEXT NOT NULL,              -- key of the keeping list
  portions            INTEGER CHECK (portions >= 1),      -- that it usually makes
  container           TEXT,
  place               TEXT,
  reheating           TEXT,                       -- what a label says of it
  allergens           TEXT NOT NULL,              -- keys of class Allergen, a space between
  other_allergens     TEXT,
  ingredients         TEXT,
  said_at             INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE place (
  name                TEXT PRIMARY KEY,
  kind                INTEGER NOT NULL,
  own_limit           INTEGER,                    -- stricter than that of the rule set
  own_limit_scale     INTEGER CHECK (own_limit_scale IN (0, 1)),
  rounds              INTEGER NOT NULL CHECK (rounds BETWEEN 0 AND 24),      -- readings a day
  said_at             INTEGER NOT NULL,
  CHECK ((own_limit IS NULL) = (own_limit_scale IS NULL))
) STRICT, WITHOUT ROWID;

CREATE TABLE person (
  initials            TEXT PRIMARY KEY,
  name                TEXT,
  said_at             INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

-- Who goes on with a lot after the shift. Rows are only ever added.
CREATE TABLE handover (
  id                  INTEGER PRIMARY KEY,        -- order of writing
  on_day              INTEGER NOT NULL,
  lot_id              INTEGER NOT NULL REFERENCES lot (id),
  person              TEXT NOT NULL,              -- initials of who takes it over
  note                TEXT,
  written_at          INTEGER NOT NULL
) STRICT;

CREATE INDEX handover_on_day ON handover (on_day, id);

-- Else every new lot would have the whole table read, for whoever might refer to it.
CREATE INDEX handover_of_lot ON handover (lot_id);

-- A day closed with the manager's sign, or opened again. Rows are only ever added.
CREATE TABLE day_sign (
  id                  INTEGER PRIMARY KEY,        -- order of writing
  on_day              INTEGER NOT NULL,
  word                INTEGER NOT NULL,
  person              TEXT NOT NULL,              -- initials
  note                TEXT,
  unfinished          INTEGER NOT NULL,           -- lots that were owed something or ran on then
  unread              INTEGER NOT NULL,           -- places read less often than they should be
  written_at          INTEGER NOT NULL
) STRICT;

CREATE INDEX day_sign_on_day ON day_sign (on_day, id);
