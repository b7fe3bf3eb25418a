-- What version 1 of the store wrote; never changed.
CREATE TABLE imports (
  id INTEGER PRIMARY KEY,
  source TEXT NOT NULL CHECK (source <> ''),
  at TEXT NOT NULL
) STRICT;
CREATE TABLE dips (
  id INTEGER PRIMARY KEY,
  import INTEGER NOT NULL REFERENCES imports (id),
  line INTEGER NOT NULL,
  "day" TEXT NOT NULL CHECK ("day" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  "time" TEXT NOT NULL CHECK ("time" = '' OR "time" GLOB '[0-2][0-9]:[0-5][0-9]*'),
  "tank" TEXT NOT NULL CHECK ("tank" <> ''),
  "depth" TEXT NOT NULL CHECK (("depth" = '') = ("depth_si" IS NULL)),
  "depth_si" REAL CHECK ("depth_si" >= 0),
  "water" TEXT NOT NULL CHECK (("water" = '') = ("water_si" IS NULL)),
  "water_si" REAL CHECK ("water_si" >= 0),
  "volume" TEXT NOT NULL CHECK (("volume" = '') = ("volume_si" IS NULL)),
  "volume_si" REAL CHECK ("volume_si" >= 0),
  "temperature" TEXT NOT NULL CHECK (("temperature" = '') = ("temperature_si" IS NULL)),
  "temperature_si" REAL,
  "by" TEXT NOT NULL,
  CHECK ("depth" <> '' OR "volume" <> ''),
  UNIQUE ("day", "time", "tank", "by")
) STRICT;
CREATE TABLE deliveries (
  id INTEGER PRIMARY KEY,
  import INTEGER NOT NULL REFERENCES imports (id),
  line INTEGER NOT NULL,
  "day" TEXT NOT NULL CHECK ("day" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  "time" TEXT NOT NULL CHECK ("time" = '' OR "time" GLOB '[0-2][0-9]:[0-5][0-9]*'),
  "tank" TEXT NOT NULL CHECK ("tank" <> ''),
  "product" TEXT NOT NULL,
  "gross" TEXT NOT NULL CHECK (("gross" = '') = ("gross_si" IS NULL)),
  "gross_si" REAL CHECK ("gross_si" >= 0),
  "net" TEXT NOT NULL CHECK (("net" = '') = ("net_si" IS NULL)),
  "net_si" REAL CHECK ("net_si" >= 0),
  "temperature" TEXT NOT NULL CHECK (("temperature" = '') = ("temperature_si" IS NULL)),
  "temperature_si" REAL,
  "density" TEXT NOT NULL CHECK (("density" = '') = ("density_si" IS NULL)),
  "density_si" REAL CHECK ("density_si" >= 0),
  "duration" TEXT NOT NULL CHECK (("duration" = '') = ("duration_si" IS NULL)),
  "duration_si" REAL CHECK ("duration_si" >= 0),
  "ticket" TEXT NOT NULL,
  CHECK ("gross" <> '' OR "net" <> ''),
  UNIQUE ("day", "time", "tank", "ticket")
) STRICT;
CREATE TABLE sales (
  id INTEGER PRIMARY KEY,
  import INTEGER NOT NULL REFERENCES imports (id),
  line INTEGER NOT NULL,
  "day" TEXT NOT NULL CHECK ("day" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  "time" TEXT NOT NULL CHECK ("time" = '' OR "time" GLOB '[0-2][0-9]:[0-5][0-9]*'),
  "hose" TEXT NOT NULL,
  "product" TEXT NOT NULL,
  "tank" TEXT NOT NULL,
  "volume" TEXT NOT NULL CHECK (("volume" = '') = ("volume_si" IS NULL)),
  "volume_si" REAL CHECK ("volume_si" >= 0),
  "totalizer" TEXT NOT NULL CHECK (("totalizer" = '') = ("totalizer_si" IS NULL)),
  "totalizer_si" REAL CHECK ("totalizer_si" >= 0),
  "fueling_time" TEXT NOT NULL CHECK (("fueling_time" = '') = ("fueling_time_si" IS NULL)),
  "fueling_time_si" REAL CHECK ("fueling_time_si" >= 0),
  CHECK ("hose" <> '' OR "product" <> '' OR "tank" <> ''),
  CHECK ("volume" <> '' OR "totalizer" <> ''),
  UNIQUE ("day", "time", "hose", "product", "tank")
) STRICT;
CREATE TABLE returns (
  id INTEGER PRIMARY KEY,
  import INTEGER NOT NULL REFERENCES imports (id),
  line INTEGER NOT NULL,
  "day" TEXT NOT NULL CHECK ("day" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  "time" TEXT NOT NULL CHECK ("time" = '' OR "time" GLOB '[0-2][0-9]:[0-5][0-9]*'),
  "tank" TEXT NOT NULL CHECK ("tank" <> ''),
  "volume" TEXT NOT NULL CHECK (("volume" = '') = ("volume_si" IS NULL)),
  "volume_si" REAL CHECK ("volume_si" >= 0),
  "note" TEXT NOT NULL,
  CHECK ("volume" <> ''),
  UNIQUE ("day", "time", "tank", "note")
) STRICT;
CREATE TABLE tests (
  id INTEGER PRIMARY KEY,
  import INTEGER NOT NULL REFERENCES imports (id),
  line INTEGER NOT NULL,
  "day" TEXT NOT NULL CHECK ("day" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  "time" TEXT NOT NULL CHECK ("time" = '' OR "time" GLOB '[0-2][0-9]:[0-5][0-9]*'),
  "kind" TEXT NOT NULL CHECK ("kind" <> ''),
  "part" TEXT NOT NULL CHECK ("part" <> ''),
  "passed" TEXT NOT NULL CHECK ("passed" IN ('', 'yes', 'no')),
  "pressure" TEXT NOT NULL CHECK (("pressure" = '') = ("pressure_si" IS NULL)),
  "pressure_si" REAL,
  "flow" TEXT NOT NULL CHECK (("flow" = '') = ("flow_si" IS NULL)),
  "flow_si" REAL,
  "volume" TEXT NOT NULL CHECK (("volume" = '') = ("volume_si" IS NULL)),
  "volume_si" REAL,
  "expected" TEXT NOT NULL CHECK (("expected" = '') = ("expected_si" IS NULL)),
  "expected_si" REAL,
  "duration" TEXT NOT NULL CHECK (("duration" = '') = ("duration_si" IS NULL)),
  "duration_si" REAL CHECK ("duration_si" >= 0),
  "temperature" TEXT NOT NULL CHECK (("temperature" = '') = ("temperature_si" IS NULL)),
  "temperature_si" REAL,
  "by" TEXT NOT NULL,
  "note" TEXT NOT NULL,
  UNIQUE ("day", "time", "kind", "part")
) STRICT;
CREATE TABLE inspections (
  id INTEGER PRIMARY KEY,
  import INTEGER NOT NULL REFERENCES imports (id),
  line INTEGER NOT NULL,
  "day" TEXT NOT NULL CHECK ("day" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  "time" TEXT NOT NULL CHECK ("time" = '' OR "time" GLOB '[0-2][0-9]:[0-5][0-9]*'),
  "kind" TEXT NOT NULL CHECK ("kind" <> ''),
  "by" TEXT NOT NULL,
  "part" TEXT NOT NULL,
  "what" TEXT NOT NULL,
  "in_order" TEXT NOT NULL CHECK ("in_order" IN ('', 'yes', 'no')),
  "note" TEXT NOT NULL,
  UNIQUE ("day", "time", "kind", "by", "part", "what")
) STRICT;
CREATE TABLE incidents (
  id INTEGER PRIMARY KEY,
  import INTEGER NOT NULL REFERENCES imports (id),
  line INTEGER NOT NULL,
  "day" TEXT NOT NULL CHECK ("day" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  "time" TEXT NOT NULL CHECK ("time" = '' OR "time" GLOB '[0-2][0-9]:[0-5][0-9]*'),
  "kind" TEXT NOT NULL CHECK ("kind" <> ''),
  "part" TEXT NOT NULL,
  "released" TEXT NOT NULL CHECK (("released" = '') = ("released_si" IS NULL)),
  "released_si" REAL CHECK ("released_si" >= 0),
  "reported" TEXT NOT NULL CHECK ("reported" IN ('', 'yes', 'no')),
  "note" TEXT NOT NULL,
  "step_day" TEXT NOT NULL CHECK ("step_day" = '' OR "step_day" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  "step_time" TEXT NOT NULL CHECK ("step_time" = '' OR "step_time" GLOB '[0-2][0-9]:[0-5][0-9]*'),
  "step_part" TEXT NOT NULL,
  "step_what" TEXT NOT NULL,
  UNIQUE ("day", "time", "kind", "part", "step_day", "step_time", "step_part", "step_what")
) STRICT;
INSERT INTO imports (id, source, at) VALUES (1, 'dips.csv', '2026-11-24T09:00');
INSERT INTO dips (import, line, "day", "time", "tank", "depth", "depth_si", "water", "water_si", "volume", "volume_si", "temperature", "temperature_si", "by")
  VALUES (1, 2, '2026-11-02', '06:30', 'T1', '71 1/4 in', 1.80975, '1/2 in', 0.0127, '', NULL, '', NULL, 'stick'),
         (1, 3, '2026-11-03', '06:30', 'T1', '70 in', 1.778, '', NULL, '', NULL, '', NULL, 'stick');
PRAGMA application_id = 1718579811;
PRAGMA user_version = 1;
