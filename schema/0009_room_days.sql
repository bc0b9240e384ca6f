-- Days at room temperature at which the kitchen finds it good: about quality, and no limit.
ALTER TABLE food ADD COLUMN room_days INTEGER;    -- only of food that needs no cold for safety
