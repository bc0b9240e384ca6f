CREATE TABLE kitchen (                            -- one kitchen to a database: a single row
  id          INTEGER PRIMARY KEY CHECK (id = 1),
  name        TEXT,
  zone        TEXT NOT NULL,                      -- IANA time zone; day counts are days of this zone
  rule_set    TEXT NOT NULL,                      -- id of the rule set its logs are judged by
  created_at  INTEGER NOT NULL                    -- instant, epoch milliseconds
) STRICT;
