#pragma once

#include "forecourse/site/records/moment.h"

namespace forecourse::site::records {

/// What was tested.
enum class TestKind {
  line_tightness,
  tank_tightness,
  leak_detector,
  shear_valve_trip,
  overfill_device,
  spill_container,
  sump,
  interstice,
  sensor,
  emergency_stop,
  flow,
  vent_valve,
  vapor_return,     ///< static pressure test of the room above the fuel
  vapor_recovery,   ///< at a dispenser
  gauge_leak_test,  ///< of a tank, by its gauge
  statistics,       ///< statistical reconciliation of a tank
  line_acceptance,  ///< pressure test of a new line, and its repetition
  protection,       ///< cathodic protection of a tank
  hand_held,        ///< gear that finds leaks; its part is "station"
};

/// A test of a part, with what was read. A test that was not made has no record.
struct Test {
  Moment at;
  TestKind kind = TestKind::line_tightness;
  Name part;    ///< id of the line, tank, pump, dispenser inlet, hose ...
  Fact passed;  ///< as the tester stated it
  std::optional<GaugePressure> pressure;
  std::optional<VolumeFlow> flow;  ///< leak rate or delivered flow
  std::optional<Volume> volume;    ///< read, against `expected`
  std::optional<Volume> expected;
  std::optional<Duration> duration;
  std::optional<Temperature> temperature;
  Name by;
  Name note;
};

}  // namespace forecourse::site::records
