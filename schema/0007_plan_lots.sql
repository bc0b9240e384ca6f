-- Which lot is which dish of a plan: said once, where the batch is begun from the plan.
CREATE TABLE plan_lot (
  plan                TEXT NOT NULL REFERENCES plan (code),
  dish                TEXT NOT NULL,              -- as the plan names it
  lot                 TEXT NOT NULL REFERENCES lot (code),
  PRIMARY KEY (plan, dish)
) STRICT, WITHOUT ROWID;

-- Else every new lot would have the whole table read, for whatever might refer to it.
CREATE INDEX plan_lot_lot ON plan_lot (lot);
