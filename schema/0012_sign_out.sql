-- Lots that were out or treated as missed when a day was signed; NULL where nobody counted them.
ALTER TABLE day_sign ADD COLUMN lots_out INTEGER;
