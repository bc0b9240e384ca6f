-- One kitchen to a database. Moments are INTEGER epoch milliseconds (columns *_at), local days are
-- INTEGER days since 1970-01-01 (*_day), lengths of time are INTEGER milliseconds (*_ms),
-- temperatures are whole hundredths of a degree beside their scale (0 Celsius, 1 Fahrenheit), and
-- never converted. Words of a closed list are small INTEGER codes; class Codes has the lists.

-- 'Chil': tells this program's files from other SQLite files.
PRAGMA application_id = 1130916204;

CREATE TABLE kitchen (                            -- exactly one row
  id                  INTEGER PRIMARY KEY CHECK (id = 1),
  name                TEXT,
  zone                TEXT NOT NULL,              -- IANA time zone; day counts are days of this zone
  rule_set            TEXT NOT NULL,              -- id of the rule set its logs are judged by
  rules_version       TEXT NOT NULL,              -- of the figures that once judged all of it
  scale               INTEGER NOT NULL CHECK (scale IN (0, 1)),      -- the scale it prefers to see
  created_at          INTEGER NOT NULL
) STRICT;

-- A lot with what was last found of it. All from began_at on follows from log_entry and the rules
-- and can be made again from them; it is kept so that a list costs only what it returns.
CREATE TABLE lot (
  id                  INTEGER PRIMARY KEY,        -- order of arrival
  code                TEXT NOT NULL UNIQUE,       -- as on the label
  food                TEXT NOT NULL,
  category            TEXT NOT NULL,              -- key of the keeping list
  note                TEXT,
  created_at          INTEGER NOT NULL,
  began_at            INTEGER,                    -- NULL until its first entry is written
  closed_at           INTEGER,                    -- NULL while it is on hand
  phase               INTEGER,                    -- where it stands after its last entry
  place               TEXT,                       -- where its last entry with a place left it
  portions_made       INTEGER CHECK (portions_made >= 1),
  portions_left       INTEGER,
  rule_set            TEXT,                       -- the rule set that judged it last
  rule_set_version    TEXT,
  worst               INTEGER,                    -- worst verdict once all its findings have settled
  settled_at          INTEGER,                    -- when the last of its findings settles
  out_from_at         INTEGER,                    -- when the first finding settled out
  not_shown_from_at   INTEGER,                    -- when the first finding settled not-shown
  owed_from_at        INTEGER,                    -- from when on a corrective action is owed
  date_mark_last_day  INTEGER,
  missed_last_day     INTEGER,                    -- had passed before it was frozen: discard
  days_left_thawed    INTEGER,                    -- while frozen: days of the mark it will have
  chilled_last_day    INTEGER,
  discard_at          INTEGER,
  best_quality_day    INTEGER,
  quality_limit_day   INTEGER,
  governs             INTEGER,                    -- which of these dates counts now
  because             TEXT,                       -- the arithmetic, one step a line
  last_day            INTEGER,                    -- the earliest of its last days of safety
  use_first           INTEGER NOT NULL,           -- order of use: see UseFirst, which makes it
  CHECK ((began_at IS NULL) = (phase IS NULL)),
  CHECK ((worst IS NULL) = (settled_at IS NULL))
) STRICT;

CREATE INDEX lot_phase ON lot (phase, id);
-- Lots on hand only: these stay as small as the kitchen, however long its history grows.
CREATE INDEX lot_worst ON lot (worst, id) WHERE closed_at IS NULL AND worst IS NOT NULL;
CREATE INDEX lot_place ON lot (place, id) WHERE closed_at IS NULL AND place IS NOT NULL;
CREATE INDEX lot_out ON lot (out_from_at, id) WHERE closed_at IS NULL AND out_from_at IS NOT NULL;
CREATE INDEX lot_not_shown ON lot (not_shown_from_at, id)
  WHERE closed_at IS NULL AND not_shown_from_at IS NOT NULL;
CREATE INDEX lot_owed ON lot (owed_from_at, id)
  WHERE closed_at IS NULL AND owed_from_at IS NOT NULL;
CREATE INDEX lot_pending ON lot (settled_at, id)
  WHERE closed_at IS NULL AND settled_at IS NOT NULL;
CREATE INDEX lot_use_first ON lot (use_first, id) WHERE closed_at IS NULL;
CREATE INDEX lot_began ON lot (began_at, id) WHERE closed_at IS NULL AND began_at IS NOT NULL;
CREATE INDEX lot_best_quality ON lot (best_quality_day, id)
  WHERE closed_at IS NULL AND best_quality_day IS NOT NULL;
CREATE INDEX lot_last_day ON lot (last_day, id) WHERE closed_at IS NULL AND last_day IS NOT NULL;

-- The storage categories that lots have or had: without them their logs cannot be judged.
CREATE TABLE category_used (
  category            TEXT PRIMARY KEY            -- key of the keeping list
) STRICT, WITHOUT ROWID;

-- What a lot was divided from or made of.
CREATE TABLE lot_source (
  lot_id              INTEGER NOT NULL REFERENCES lot (id),
  position            INTEGER NOT NULL,           -- order in which the sources were named
  source_id           INTEGER NOT NULL REFERENCES lot (id),
  PRIMARY KEY (lot_id, position),
  CHECK (source_id <> lot_id)
) STRICT, WITHOUT ROWID;

CREATE INDEX lot_source_source ON lot_source (source_id, lot_id);

-- What happened to a lot. Rows are only ever added. Clustered by lot: a lot is read and written
-- together, and an import costs half.
CREATE TABLE log_entry (
  lot_id              INTEGER NOT NULL REFERENCES lot (id),
  seq                 INTEGER NOT NULL,           -- order of writing within the lot, from 1
  entry               TEXT NOT NULL,              -- its id, unique among all entries and readings
  word                INTEGER NOT NULL,
  happened_at         INTEGER NOT NULL,
  written_at          INTEGER NOT NULL,
  temperature         INTEGER,
  temperature_scale   INTEGER CHECK (temperature_scale IN (0, 1)),
  how                 INTEGER,
  place               TEXT,
  air                 INTEGER,                    -- of the air or water around the food
  air_scale           INTEGER CHECK (air_scale IN (0, 1)),
  portions            INTEGER CHECK (portions >= 1),
  food                TEXT,
  category            TEXT,
  sources             TEXT,                       -- codes of lots as written, a space between
  recipient           TEXT,                       -- who got the portions
  until_at            INTEGER,                    -- a time marked on the food, or
  until_day           INTEGER,                    -- a date marked on it
  probe               TEXT,
  person              TEXT,
  note                TEXT,
  corrects            TEXT,                       -- id of the corrected entry, of the same lot
  PRIMARY KEY (lot_id, seq),
  CHECK ((temperature IS NULL) = (temperature_scale IS NULL)),
  CHECK ((air IS NULL) = (air_scale IS NULL)),
  CHECK (until_at IS NULL OR until_day IS NULL)
) STRICT, WITHOUT ROWID;

CREATE UNIQUE INDEX log_entry_entry ON log_entry (entry);
CREATE INDEX log_entry_corrects ON log_entry (lot_id, corrects) WHERE corrects IS NOT NULL;

-- What one rule says of one lot, as last assessed. It is pending until settles_at.
CREATE TABLE finding (
  lot_id              INTEGER NOT NULL REFERENCES lot (id),
  seq                 INTEGER NOT NULL,           -- order of the assessment, from 1
  rule                TEXT NOT NULL,              -- id within the rule set that judged the lot
  source              TEXT,                       -- code of the lot it came from, if that was judged
  opens_at            INTEGER NOT NULL,
  settles_at          INTEGER NOT NULL,
  settled             INTEGER NOT NULL CHECK (settled IN (0, 1, 3, 4)),     -- pending never stays
  deadline_at         INTEGER,
  calls               INTEGER NOT NULL CHECK (calls IN (0, 1)),      -- for a hand, once settled
  shortest_ms         INTEGER,
  longest_ms          INTEGER,
  estimate_ms         INTEGER,
  decisive            TEXT,                       -- id of the entry that decided
  evidence            TEXT NOT NULL,              -- ids of entries, a space between
  remarks             TEXT NOT NULL,              -- keys, a space between
  PRIMARY KEY (lot_id, seq)
) STRICT, WITHOUT ROWID;

-- "Due next" is what still settles badly if nothing is done; the report, what did between two
-- moments.
CREATE INDEX finding_calls ON finding (settles_at, lot_id, seq) WHERE calls = 1;

-- Readings of a refrigerator, a freezer, a hot-holding unit or a counter, and their corrections.
CREATE TABLE place_reading (
  id                  INTEGER PRIMARY KEY,        -- order of writing
  entry               TEXT NOT NULL UNIQUE,       -- its id, unique among all entries and readings
  place               TEXT NOT NULL,              -- where it counts, corrections applied
  place_written       TEXT,                       -- as written; NULL on a correction that keeps it
  word                INTEGER NOT NULL,
  happened_at         INTEGER NOT NULL,
  written_at          INTEGER NOT NULL,
  temperature         INTEGER,
  temperature_scale   INTEGER CHECK (temperature_scale IN (0, 1)),
  how                 INTEGER,
  air                 INTEGER,
  air_scale           INTEGER CHECK (air_scale IN (0, 1)),
  probe               TEXT,
  person              TEXT,
  note                TEXT,
  corrects            TEXT,
  CHECK ((temperature IS NULL) = (temperature_scale IS NULL)),
  CHECK ((air IS NULL) = (air_scale IS NULL))
) STRICT;

CREATE INDEX place_reading_place ON place_reading (place, happened_at, id);
CREATE INDEX place_reading_happened ON place_reading (happened_at, id);
CREATE INDEX place_reading_corrects ON place_reading (corrects) WHERE corrects IS NOT NULL;

-- A write that was answered once and is answered the same when it is sent again; kept 30 days.
CREATE TABLE idempotency_key (
  given_key           TEXT PRIMARY KEY,
  body_hash           TEXT NOT NULL,              -- SHA-256 of the request, in hexadecimal
  created_at          INTEGER NOT NULL,
  lot                 TEXT,                       -- code of the lot it made, where it made one
  entries             TEXT NOT NULL               -- ids of the entries it made, a space between
) STRICT, WITHOUT ROWID;

CREATE INDEX idempotency_key_created ON idempotency_key (created_at);

-- Who may use the service from another machine: only hashes of the keys are kept.
CREATE TABLE access_key (
  key_hash            TEXT PRIMARY KEY,           -- SHA-256 in hexadecimal
  created_at          INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
