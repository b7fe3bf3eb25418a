#include <algorithm>
#include <cmath>

#include "forecourse/base/constants.h"
#include "forecourse/parts/escape/leak_rate.h"
#include "forecourse/parts/escape/orifice.h"
#include "forecourse/site/places.h"
#include "forecourse/studies/line_test/line_inputs.h"
#include "forecourse/studies/line_test/shut_line.h"

namespace forecourse::studies {
namespace {

constexpr double minute = 60.0;
/// Discharge coefficient of the hole that a leak is told as. \source common practice, no source
constexpr double sharp_discharge = 0.61;

template <class Q>
std::optional<double> si(const site::Maybe<Q>& entered) {
  return entered ? std::optional(entered->likely.si()) : std::nullopt;
}

parts::Estimate ordered(double a, double b) { return {std::min(a, b), std::max(a, b)}; }

constexpr const char* hourly = "hourly";

class DetectorTeller {
 public:
  DetectorTeller(const LineInputs& in, const LineTest& line, const std::optional<parts::CoolingLaw>& law,
                 const std::vector<double>& quiet)
      : in_(in), line_(line), law_(law), quiet_(quiet) {}

  DetectorTold tell(const std::string& pump, const site::LeakDetector& detector) {
    out_.pump = pump;
    out_.where = detector.where;
    if (detector.kind)
      out_.kind = detector.kind->value == site::LeakDetectorKind::mechanical ? "mechanical" : "electronic";
    out_.detects = si(detector.detects);
    out_.at = si(detector.at);
    out_.acts_within = si(detector.acts_within);
    out_.tested = detector.tested;
    if (out_.at) out_.limit = rates_at(hourly_rate(), hourly_pressure(), *out_.at);
    detection(hourly, out_.detects, out_.at, out_.acts_within);
    for (std::size_t i = 0; i < detector.quiet_tests.size(); ++i) {
      const site::QuietTest& test = detector.quiet_tests[i];
      detection("quiet test " + std::to_string(i + 1), si(test.detects), si(test.at), si(test.takes));
    }
    tell_catches(detector);
    tell_restart(detector);
    if (out_.kind.empty()) out_.notes.emplace_back("its kind is not entered");
    return std::move(out_);
  }

 private:
  static parts::Estimate rates_at(double rate, double from, double to) {
    if (to <= 0.0) return {};
    const parts::Estimate found = parts::leak_rate_between({from, rate}, to);
    return ordered(found.low, found.high);
  }

  [[nodiscard]] double warmest() const { return std::max(line_.thermal.warmer.low, line_.thermal.warmer.high); }

  void detection(std::string name, std::optional<double> detects, std::optional<double> at,
                 std::optional<double> takes) {
    DetectionTold told;
    told.name = std::move(name);
    told.detects = detects;
    told.at = at;
    told.takes = takes;
    if (detects && at && line_.held) told.at_held = rates_at(*detects, *at, *line_.held);
    if (!detects) {
      told.words = "enter what it detects";
    } else if (!law_) {
      told.words = line_.thermal.problem;
    } else {
      const double warm = std::max(0.0, warmest());
      told.false_until = thermal_wait(line_, warm, *law_, *detects);
      const double size = std::max(std::abs(line_.thermal.warmer.low), std::abs(line_.thermal.warmer.high));
      if (takes) told.quiet_needed = thermal_wait(line_, size, *law_, 0.5 * *detects) + *takes;
      judge_quiet(told);
    }
    out_.detections.push_back(std::move(told));
  }

  void judge_quiet(DetectionTold& told) const {
    if (!told.quiet_needed) {
      told.words = told.name == hourly ? "enter within what time it acts (acts_within)"
                                       : "enter for how long the line must stand still (takes)";
      return;
    }
    if (quiet_.empty()) {
      told.words = "how long the line stands still in a day is not known: give --quiet, or enter opens and closes";
      return;
    }
    told.quiet_enough = static_cast<int>(
        std::count_if(quiet_.begin(), quiet_.end(), [&](double q) { return q >= *told.quiet_needed; }));
    told.words = *told.quiet_enough > 0
                     ? "the line stands still for long enough"
                     : "no quiet time is long enough: it does not come to a result it can be held to";
  }

  void add_catch(std::string where, double pressure, bool held = false) {
    const parts::Estimate rates = rates_at(hourly_rate(), hourly_pressure(), pressure);
    const double sharp =
        parts::leak_rate(parts::leak_law({hourly_pressure(), hourly_rate()}, parts::sharp_hole_exponent), pressure);
    const double laminar = sharp == rates.low ? rates.high : rates.low;
    out_.catches.push_back({std::move(where), pressure, sharp, laminar, sharp * minute, held});
  }

  /// The inlets of dispensers that the line leads to.
  [[nodiscard]] std::vector<std::string> inlets() const {
    std::vector<std::string> out;
    for (const site::Dispenser& dispenser : in_.site.dispensers) {
      for (const site::Inlet& inlet : dispenser.inlets) {
        std::string name = site::place_name(dispenser, inlet);
        const bool leads_to = std::any_of(in_.system.places.begin(), in_.system.places.end(),
                                          [&](const network::Place& place) { return place.id == name; });
        if (leads_to) out.push_back(std::move(name));
      }
    }
    return out;
  }

  /// Where the leak of a test is simulated: the place that is entered, else the highest inlet of a dispenser; null: its
  /// height is not entered.
  [[nodiscard]] const network::Place* test_place(const site::LeakDetector& detector) const {
    if (!detector.tested_at.empty()) return placed(in_.system, detector.tested_at.text);
    const network::Place* out = nullptr;
    for (const std::string& inlet : inlets()) {
      const network::Place* place = placed(in_.system, inlet);
      if (place == nullptr) return nullptr;  // it may be the highest
      if (out == nullptr || place->elevation > out->elevation) out = place;
    }
    return out;
  }

  /// Of the pressure held where the detector is tested: less the height from the liquid in the tank to there.
  void add_held_catch(const site::LeakDetector& detector) {
    if (!line_.held) return;
    const network::Place* place = test_place(detector);
    if (place == nullptr) return add_catch("the pressure held, pump off", *line_.held, true);
    const double there = *network::held_line(in_.site, in_.system).held - in_.system.weight_of(place->elevation);
    if (there > 0.0) add_catch("the pressure held at " + place->id + ", pump off", there, true);
  }

  void tell_catches(const site::LeakDetector& detector) {
    out_.orifice = parts::hole_diameter(
        parts::orifice_area(hourly_rate(), hourly_pressure(), sharp_discharge, in_.system.fluid.density));
    add_catch("the published pressure", hourly_pressure());
    if (out_.at && *out_.at != hourly_pressure()) add_catch("its own test pressure", *out_.at);
    add_held_catch(detector);
    if (in_.options.pressure) add_catch("pressure of the line test", *in_.options.pressure);
  }

  void tell_restart(const site::LeakDetector& detector) {
    if (!in_.options.stopped || !line_.held) return;
    RestartTold told;
    told.stopped = *in_.options.stopped;
    if (!line_.compliance) {
      told.words = "not determined: " + line_.compliance_reason;
      out_.restart = std::move(told);
      return;
    }
    ShutLine shut;
    shut.volume = line_.volume;
    shut.compliance = *line_.compliance;
    shut.shrinks = line_.thermal.fuel_expansion - line_.thermal.line_expansion;
    shut.warmer = law_ ? warmest() : 0.0;
    shut.atmosphere = in_.site.atmospheric_pressure ? in_.site.atmospheric_pressure->likely.si() : standard_atmosphere;
    shut.first_pressure = *line_.held;
    if (line_.held_by.starts_with("pressure relief")) shut.relief = line_.held;
    const double leak = in_.options.leak.value_or(0.0);
    const double at = in_.options.leak_pressure.value_or(*line_.held);
    const parts::LeakLaw law = parts::leak_law({at, leak}, in_.options.exponent.value_or(parts::sharp_hole_exponent));
    const Fading fading = law_ ? fading_of(*law_, 0.0, told.stopped) : no_fading(told.stopped);
    told.lost = *line_.held - course_of(shut, law, fading).pressure.back();
    told.refill = std::max(0.0, told.lost) * shut.compliance;
    const auto restricted = si(detector.restricted);
    if (!restricted) {
      told.words = "enter restricted: the flow that it lets through until it has opened";
    } else if (const double against = parts::leak_rate(law, *line_.held); against >= *restricted) {
      told.stays_restricted = true;
      told.words = "the leak takes all that it lets through: it stays restricted, as it should";
    } else {
      told.refill_time = told.refill / (*restricted - 0.5 * against);
      told.words = "it opens once the line has its pressure again";
    }
    out_.restart = std::move(told);
  }

  const LineInputs& in_;
  const LineTest& line_;
  const std::optional<parts::CoolingLaw>& law_;
  const std::vector<double>& quiet_;
  DetectorTold out_;
};

}  // namespace

const network::Place* placed(const network::PipingSystem& system, const std::string& id) {
  if (!system.elevations_known) return nullptr;
  const auto found = std::find_if(system.places.begin(), system.places.end(), [&](const network::Place& place) {
    return place.id == id && place.elevation_entered;
  });
  return found == system.places.end() ? nullptr : &*found;
}

std::vector<DetectorTold> detectors_of(const LineInputs& in, const LineTest& line,
                                       const std::optional<parts::CoolingLaw>& law, const std::vector<double>& quiet) {
  std::vector<DetectorTold> out;
  for (const network::PumpPoint& point : in.system.pumps) {
    const auto& all = in.site.pumps;
    const auto pump = std::find_if(all.begin(), all.end(), [&](const site::Pump& p) { return p.id.text == point.id; });
    if (pump == all.end() || !point.running || !pump->leak_detector) continue;
    out.push_back(DetectorTeller(in, line, law, quiet).tell(pump->id.text, *pump->leak_detector));
  }
  return out;
}

}  // namespace forecourse::studies
