#include "forecourse/store/sqlite/migrations.h"

#include <array>

namespace forecourse::store {
namespace {

// Files of earlier versions are out there: what stands here is never changed, only added to.

constexpr const char* version_1 = R"sql(
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
)sql";

/// Results of studies that were kept.
constexpr const char* version_2 = R"sql(
CREATE TABLE results (
  key TEXT PRIMARY KEY,
  study TEXT NOT NULL,
  result TEXT NOT NULL
) STRICT, WITHOUT ROWID;
)sql";

/// Draws of provings. Tests of meters become draws; what they told besides goes into the note. One that told no volumes
/// is no draw, and becomes something that was looked at.
constexpr const char* version_3 = R"sql(
CREATE TABLE provings (
  id INTEGER PRIMARY KEY,
  import INTEGER NOT NULL REFERENCES imports (id),
  line INTEGER NOT NULL,
  "day" TEXT NOT NULL CHECK ("day" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  "time" TEXT NOT NULL CHECK ("time" = '' OR "time" GLOB '[0-2][0-9]:[0-5][0-9]*'),
  "hose" TEXT NOT NULL CHECK ("hose" <> ''),
  "draw" TEXT NOT NULL,
  "state" TEXT NOT NULL CHECK ("state" IN ('', 'as-found', 'as-left')),
  "indicated" TEXT NOT NULL CHECK (("indicated" = '') = ("indicated_si" IS NULL)),
  "indicated_si" REAL CHECK ("indicated_si" >= 0),
  "measured" TEXT NOT NULL CHECK (("measured" = '') = ("measured_si" IS NULL)),
  "measured_si" REAL CHECK ("measured_si" >= 0),
  "measure" TEXT NOT NULL CHECK (("measure" = '') = ("measure_si" IS NULL)),
  "measure_si" REAL CHECK ("measure_si" >= 0),
  "scale" TEXT NOT NULL CHECK (("scale" = '') = ("scale_si" IS NULL)),
  "scale_si" REAL,
  "measure_temperature" TEXT NOT NULL CHECK (("measure_temperature" = '') = ("measure_temperature_si" IS NULL)),
  "measure_temperature_si" REAL,
  "meter_temperature" TEXT NOT NULL CHECK (("meter_temperature" = '') = ("meter_temperature_si" IS NULL)),
  "meter_temperature_si" REAL,
  "reference_temperature" TEXT NOT NULL CHECK (("reference_temperature" = '') = ("reference_temperature_si" IS NULL)),
  "reference_temperature_si" REAL,
  "expansion" TEXT NOT NULL CHECK (("expansion" = '') = ("expansion_si" IS NULL)),
  "expansion_si" REAL CHECK ("expansion_si" >= 0),
  "flow" TEXT NOT NULL CHECK (("flow" = '') = ("flow_si" IS NULL)),
  "flow_si" REAL CHECK ("flow_si" >= 0),
  "by" TEXT NOT NULL,
  "note" TEXT NOT NULL,
  CHECK ("indicated" <> ''),
  CHECK ("measured" <> '' OR "measure" <> ''),
  UNIQUE ("day", "time", "hose", "draw", "state")
) STRICT;
INSERT INTO provings (import, line, "day", "time", "hose", "draw", "state", "indicated", "indicated_si", "measured",
                      "measured_si", "measure", "measure_si", "scale", "scale_si", "measure_temperature",
                      "measure_temperature_si", "meter_temperature", "meter_temperature_si", "reference_temperature",
                      "reference_temperature_si", "expansion", "expansion_si", "flow", "flow_si", "by", "note")
  SELECT import, line, "day", "time", "part", '', '', "volume", "volume_si", "expected", "expected_si", '', NULL, '',
         NULL, '', NULL, '', NULL, '', NULL, '', NULL, iif("flow_si" > 0, "flow", ''),
         iif("flow_si" > 0, "flow_si", NULL), "by",
         ltrim("note" || iif("passed" = '', '', '; passed: ' || "passed") ||
               iif("temperature" = '', '', '; fuel at ' || "temperature") ||
               iif("pressure" = '', '', '; at ' || "pressure") ||
               iif("duration" = '', '', '; took ' || "duration"), '; ')
  FROM tests WHERE "kind" = 'meter' AND "volume_si" > 0 AND "expected_si" > 0;
INSERT INTO inspections (import, line, "day", "time", "kind", "by", "part", "what", "in_order", "note")
  SELECT import, line, "day", "time", 'meter test', "by", "part", 'meter tested, without volumes', "passed",
         ltrim("note" || iif("volume" = '', '', '; read ' || "volume") ||
               iif("expected" = '', '', '; expected ' || "expected") ||
               iif("flow" = '', '', '; at ' || "flow") ||
               iif("temperature" = '', '', '; fuel at ' || "temperature") ||
               iif("pressure" = '', '', '; at ' || "pressure") ||
               iif("duration" = '', '', '; took ' || "duration"), '; ')
  FROM tests WHERE "kind" = 'meter' AND NOT coalesce("volume_si" > 0 AND "expected_si" > 0, 0);
DELETE FROM tests WHERE "kind" = 'meter';
)sql";

constexpr std::array<const char*, 3> all{version_1, version_2, version_3};

}  // namespace

std::span<const char* const> migrations() { return all; }

}  // namespace forecourse::store
