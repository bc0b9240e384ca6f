-- A dish may become several lots: a second pot is made where the first is too little.
CREATE TABLE plan_lot_each (
  plan                TEXT NOT NULL REFERENCES plan (code),
  dish                TEXT NOT NULL,              -- as the plan names it
  lot                 TEXT NOT NULL REFERENCES lot (code),
  PRIMARY KEY (plan, dish, lot)
) STRICT, WITHOUT ROWID;

INSERT INTO plan_lot_each (plan, dish, lot) SELECT plan, dish, lot FROM plan_lot;

DROP TABLE plan_lot;

ALTER TABLE plan_lot_each RENAME TO plan_lot;

-- Else every new lot would have the whole table read, for whatever might refer to it.
CREATE INDEX plan_lot_lot ON plan_lot (lot);

-- A lot that was taken away from a plan is not followed by the name of its food either.
CREATE TABLE plan_lot_away (
  plan                TEXT NOT NULL REFERENCES plan (code),
  lot                 TEXT NOT NULL REFERENCES lot (code),
  PRIMARY KEY (plan, lot)
) STRICT, WITHOUT ROWID;

CREATE INDEX plan_lot_away_lot ON plan_lot_away (lot);
