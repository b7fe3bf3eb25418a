#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/base/context.h"
#include "forecourse/base/default_used.h"
#include "forecourse/base/diagnostic.h"
#include "forecourse/parts/escape/estimate.h"
#include "forecourse/site/site.h"
#include "forecourse/studies/line_test/options.h"

namespace forecourse::studies {

/// How temperature alone looks to a test of a line. A rate is positive where it looks like a leak.
struct ThermalTold {
  std::string problem;             ///< why it is not determined, and what to enter
  Between warmer;                  ///< fuel above the ground [K]
  std::string warmer_by;           ///< how it was come by
  double fuel_expansion = 0.0;     ///< [1/K]
  double line_expansion = 0.0;     ///< [1/K]
  bool by_time_constant = false;   ///< else by bore and ground
  double time_constant = 0.0;      ///< [s] entered, or the time to a share of 1/e in the ground
  std::optional<double> at_start;  ///< seeming rate at the beginning [m3/s]; empty: a step in the ground has none
  double limit = 0.0;              ///< [m3/s]
  double wait = 0.0;               ///< [s] until the seeming rate is no more than that
  bool firm = false;               ///< rests on nothing but what was entered or published
};

/// Seeming and real rates at a time after the fuel came.
struct RatePoint {
  double time = 0.0;      ///< [s]
  double thermal = 0.0;   ///< [m3/s]
  double measured = 0.0;  ///< with the leak, as a test at constant pressure reads it [m3/s]
};

/// A test that adds or takes fuel to hold the pressure, and calls a leak above half of what it is to find.
struct VolumeTestTold {
  double find = 0.0;           ///< [m3/s]
  double threshold = 0.0;      ///< [m3/s]
  std::optional<double> leak;  ///< entered, at the test pressure [m3/s]
  std::vector<RatePoint> points;
  std::optional<double> cancels_at;    ///< [s] the leak and the warming cancel: the test reads nothing
  std::optional<double> hidden_until;  ///< [s] before, the leak reads less than the threshold
  bool hidden_always = false;          ///< the leak itself is no more than the threshold
  std::optional<double> false_until;   ///< [s] before, a tight line reads more than the threshold
};

struct PressurePoint {
  double time = 0.0;        ///< [s] from the beginning of the test
  double pressure = 0.0;    ///< gauge, leak and temperature [Pa]
  double tight = 0.0;       ///< temperature alone [Pa]
  double leak_alone = 0.0;  ///< [Pa]
};

/// Leaks that one outcome of a pressure test is consistent with, at the test pressure.
struct DropProof {
  double drop = 0.0;              ///< [Pa]
  Between leak;                   ///< [m3/s]
  bool tight_line_drops = false;  ///< a tight line can show that drop as well
  bool only_tight = false;        ///< even a tight line drops further: the drop contradicts the temperatures
  bool none = false;              ///< the line gains pressure by more than any leak here loses
};

struct PressureTestTold {
  std::string problem;               ///< why it is not determined, and what to enter
  double pressure = 0.0;             ///< gauge [Pa]
  double wait = 0.0;                 ///< [s]
  double duration = 0.0;             ///< [s]
  std::optional<double> per_degree;  ///< [Pa/K] without a pocket
  std::optional<double> leak;        ///< [m3/s] at the test pressure
  std::vector<PressurePoint> points;
  double drop = 0.0;                ///< [Pa] with leak and temperature
  double tight_drop = 0.0;          ///< [Pa] temperature alone; negative: it rises
  double leak_drop = 0.0;           ///< [Pa] leak alone
  std::optional<double> to_air_at;  ///< [s] no pressure is left
  std::optional<DropProof> passed;  ///< the most that the test lets pass: leak.high
  std::optional<DropProof> failed;  ///< the least that fails: leak.low
  std::optional<DropProof> measured;
};

/// A rate that a leak detector must find, and what stands in its way.
struct DetectionTold {
  std::string name;                        ///< "hourly", "quiet test 1"
  std::optional<double> detects;           ///< [m3/s]
  std::optional<double> at;                ///< gauge [Pa]
  std::optional<double> takes;             ///< [s] without flow
  std::optional<parts::Estimate> at_held;  ///< the same leak at the pressure held [m3/s], by its form
  std::optional<double> false_until;       ///< [s] after the pump stopped, cooling alone looks like it
  std::optional<double> quiet_needed;      ///< [s] that wait and the test
  std::optional<int> quiet_enough;         ///< how many of the quiet times are long enough; empty: none entered
  std::string words;                       ///< what follows, or what to enter
};

/// What a leak of the published rate passes at a pressure of the site.
struct CatchTold {
  std::string where;      ///< "the pressure held at D1.regular, pump off"
  double pressure = 0.0;  ///< gauge [Pa]
  double rate = 0.0;      ///< of a sharp hole [m3/s]
  double laminar = 0.0;   ///< of a narrow crack [m3/s]
  double minute = 0.0;    ///< volume caught in a minute through the sharp hole [m3]
  bool held = false;      ///< the pressure is what the line holds with the pump off
};

struct RestartTold {
  double stopped = 0.0;               ///< [s]
  double lost = 0.0;                  ///< [Pa] of the pressure held, by leak and temperature
  double refill = 0.0;                ///< [m3] to bring the pressure back
  std::optional<double> refill_time;  ///< [s] at the restricted flow, against the leak
  bool stays_restricted = false;      ///< the leak takes all that the detector lets through
  std::string words;
};

struct DetectorTold {
  std::string pump;
  SourceSpan where{};
  std::string kind;                      ///< "mechanical", "electronic", empty: not entered
  std::optional<double> detects;         ///< [m3/s]
  std::optional<double> at;              ///< gauge [Pa]
  std::optional<double> acts_within;     ///< [s]
  std::optional<parts::Estimate> limit;  ///< the published rate at its own pressure, by the form of the leak [m3/s]
  std::optional<site::Date> tested;
  std::vector<DetectionTold> detections;
  std::vector<CatchTold> catches;
  double orifice = 0.0;  ///< [m] diameter of a sharp hole of the published rate, in this fuel
  std::optional<RestartTold> restart;
  std::vector<std::string> notes;
};

/// The line of one system under test.
struct LineTest {
  std::string system;
  std::string product;
  std::vector<std::string> lines;    ///< ids
  std::string problem;               ///< why nothing is determined; empty: something is
  double volume = 0.0;               ///< [m3] to the dispensers
  std::optional<double> compliance;  ///< [m3/Pa]
  std::string compliance_reason;
  std::optional<double> held;  ///< gauge [Pa]
  std::string held_at;         ///< pump at whose discharge; empty: at the height of the liquid in the tank
  std::string held_by;
  ThermalTold thermal;
  VolumeTestTold volume_test;
  PressureTestTold pressure_test;
  std::vector<DetectorTold> detectors;
};

struct LineTestResult {
  LineTestOptions options;  ///< as used
  std::string version;
  std::vector<LineTest> lines;
  std::vector<double> quiet;  ///< [s] as used
  std::string quiet_by;       ///< how they were come by
  std::vector<DefaultUsed> defaults;
  std::vector<Diagnostic> warnings;
  std::vector<Diagnostic> errors;  ///< of the options: nothing was computed
};

/// The published rates [m3/s] and pressure: 3 gal/h at 10 psi within an hour, 0.2 gal/h a month, 0.1 gal/h at one and a
/// half times the operating pressure.
/// \source [cfr_280, 280.44(a), 280.44(b), 280.43(i)]
[[nodiscard]] double hourly_rate();
[[nodiscard]] double hourly_pressure();  ///< gauge [Pa]
[[nodiscard]] double monthly_rate();
[[nodiscard]] double tightness_rate();
inline constexpr double tightness_pressure_factor = 1.5;
inline constexpr double hourly_time = 3600.0;  ///< [s]

/// What tests and leak detectors see of each line: seeming leaks by temperature, pressure per degree, what a drop of
/// pressure proves, quiet times, false trips, the expected catch of a simulated leak.
///
/// \error that of the temperature difference first; see docs/theory/line-test.md
/// \fails a line of which something needed is not entered says what to enter; a wrong option is an error
[[nodiscard]] LineTestResult study_line_test(const site::Site& site, const LineTestOptions& options,
                                             const Context& context = {});

}  // namespace forecourse::studies
