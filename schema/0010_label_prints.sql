-- Labels that were made of a lot as a document, and the allergens that they named. Nobody knows
-- what came out on paper. Of each lot the newest few hundred are kept.
CREATE TABLE label_print (
  id                  INTEGER PRIMARY KEY,        -- order of making
  lot                 TEXT NOT NULL REFERENCES lot (code),
  made_at             INTEGER NOT NULL,
  labels              INTEGER NOT NULL CHECK (labels >= 1),
  leaves              INTEGER NOT NULL CHECK (leaves IN (0, 1)),         -- 1: for who buys or gets it
  allergens           TEXT NOT NULL,              -- keys of class Allergen, a space between
  other_allergens     TEXT                        -- in words, a line each
) STRICT;

CREATE INDEX label_print_lot ON label_print (lot, made_at);
