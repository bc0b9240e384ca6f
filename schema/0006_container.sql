-- What the food stands in and how deep: how fast it cools hangs on both.
ALTER TABLE log_entry ADD COLUMN container TEXT;
ALTER TABLE log_entry ADD COLUMN depth TEXT;      -- as read, with its unit: "2in", "5cm"

-- Coolings of a period: what the kitchen can learn from. A rule is named by its topic first.
CREATE INDEX finding_cooling ON finding (settles_at, lot_id) WHERE rule LIKE 'cooling.%';
