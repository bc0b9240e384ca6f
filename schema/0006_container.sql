-- What the food stands in and how deep: how fast it cools hangs on both.
ALTER TABLE log_entry ADD COLUMN container TEXT;
ALTER TABLE log_entry ADD COLUMN depth TEXT;      -- as read, with its unit: "2in", "5cm"
