-- What was said of the allergens of a food, each time it changed: labels printed before did not
-- name what was not said. Rows are only ever added.
CREATE TABLE allergens_said (
  food                TEXT NOT NULL,
  said_at             INTEGER NOT NULL,
  allergens           TEXT NOT NULL,              -- keys of class Allergen, a space between
  other_allergens     TEXT,
  knows_before        INTEGER NOT NULL CHECK (knows_before IN (0, 1)),   -- 0: nobody kept it
  PRIMARY KEY (food, said_at)
) STRICT, WITHOUT ROWID;

-- Of foods said earlier only the last word is known.
INSERT INTO allergens_said (food, said_at, allergens, other_allergens, knows_before)
SELECT name, said_at, allergens, other_allergens, 0
FROM food;
