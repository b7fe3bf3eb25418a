#include <algorithm>
#include <cmath>
#include <numbers>

#include "forecourse/base/api_units.h"
#include "forecourse/network/containment/sump_room.h"
#include "forecourse/parts/escape/orifice.h"
#include "forecourse/solvers/sequence/blow_down.h"
#include "forecourse/studies/incident/figures/figures.h"

namespace forecourse::studies {
namespace {

constexpr double ten_psi = pascal_from_psi(10.0);
constexpr double test_share = 1.5;  ///< \source [cfr_280, 280.44(b)] test at one and a half times operating pressure

class CrackTeller {
 public:
  CrackTeller(const Scene& scene, const release::Broken& broken)
      : scene_(scene), broken_(broken), law_{broken.opening.leak_coefficient, broken.opening.leak_exponent} {
    exponents();
  }

  CrackTold tell() {
    set_pressures();
    const double running = told_.running_pressure, holding = told_.holding_pressure;
    told_.at_running = rate(running);
    told_.at_holding = rate(holding);
    const Spread resting = at_rest();
    if (!scene_.request.holding_pressure) set_holding(resting);
    const double share = told_.running_share;
    const auto mean = [&](double at_running, double at_holding) {
      return share * at_running + (1.0 - share) * at_holding;
    };
    told_.mean = {mean(told_.at_running.low, resting.low), mean(told_.at_running.likely, resting.likely),
                  mean(told_.at_running.high, resting.high)};
    told_.at_10_psi = rate(ten_psi);
    told_.at_test = rate(test_share * running);
    set_hole();
    set_detection();
    set_filling();
    return told_;
  }

 private:
  void exponents() {
    std::size_t whole = 0;
    for (const site::LeakReading& reading : scene_.request.readings) whole += reading.rate && reading.at ? 1 : 0;
    const bool entered = scene_.request.exponent.has_value();
    told_.exponent_known = whole > 1 || entered || whole == 0;
    told_.exponent = {law_.exponent, law_.exponent, law_.exponent};
    if (!told_.exponent_known) told_.exponent = {0.5, law_.exponent, 1.0};
    if (whole > 0) {
      reading_pressure_ = scene_.request.readings.front().at->likely.si();
      reading_rate_ = scene_.request.readings.front().rate->likely.si();
    }
  }

  /// A rate at a pressure for the least, likely and greatest exponent.
  [[nodiscard]] Spread rate(double pressure) const {
    const auto at = [&](double exponent) {
      if (told_.exponent_known || !(reading_pressure_ > 0.0))
        return law_.coefficient * std::pow(pressure, law_.exponent);
      return reading_rate_ * std::pow(pressure / reading_pressure_, exponent);
    };
    const double a = at(told_.exponent.low), b = at(told_.exponent.high);
    return {std::min(a, b), at(told_.exponent.likely), std::max(a, b)};
  }

  void set_pressures() {
    const auto& r = scene_.request;
    const double weight = broken_.opening.weight;
    told_.running_pressure = broken_.running.supplied ? broken_.running.pressure.at(0.0).value - weight : 0.0;
    if (r.running_pressure) told_.running_pressure = r.running_pressure->likely.si();
    told_.holding_pressure = r.holding_pressure ? r.holding_pressure->likely.si() : 0.0;
    told_.running_share = r.running_share ? r.running_share->likely.si() : 1.0;
    if (r.runs_for && r.rests_for) {
      told_.running_share = r.runs_for->likely.si() / (r.runs_for->likely.si() + r.rests_for->likely.si());
    }
  }

  /// The mean while the pump rests: the line springs back through the leak, from the pressure at which it is held, down
  /// to that at which its tank feeds it. Where the line's spring is not determined it is held at the pressure entered.
  [[nodiscard]] Spread at_rest() const {
    const double rests = broken_.rests_for;
    const double from = scene_.request.holding_pressure ? told_.holding_pressure : told_.running_pressure;
    if (!(broken_.compliance > 0.0) || !(rests > 0.0) || !(from > 0.0)) return told_.at_holding;
    const Spread leak = rate(from);
    const double tank =
        broken_.stopped.supplied ? broken_.stopped.pressure.at(0.0).value - broken_.opening.weight : 0.0;
    const auto at = [&](double first, double exponent) {
      if (!(first > 0.0)) return 0.0;
      const solvers::sequence::LeakLaw law{first / std::pow(from, exponent), exponent};
      const auto released = [&](double time) {
        return solvers::sequence::blow_down(from, broken_.compliance, law, time).released;
      };
      const double to_tank = broken_.compliance * (from - tank);
      if (!(tank > 0.0) || released(rests) <= to_tank) return released(rests) / rests;
      double low = 0.0, high = rests;  // when the line is down to the pressure of its tank
      for (int i = 0; i < 60; ++i) {
        const double middle = 0.5 * (low + high);
        (released(middle) < to_tank ? low : high) = middle;
      }
      return (to_tank + (rests - low) * law.coefficient * std::pow(tank, exponent)) / rests;
    };
    const double likely = at(leak.likely, told_.exponent.likely);
    const double a = at(leak.low, told_.exponent.low), b = at(leak.high, told_.exponent.high);
    return {std::min({a, b, likely}), likely, std::max({a, b, likely})};
  }

  /// No holding pressure is entered: the one that would leak as much.
  void set_holding(const Spread& resting) {
    told_.at_holding = resting;
    if (resting.likely > 0.0 && told_.at_running.likely > 0.0) {
      told_.holding_pressure =
          told_.running_pressure * std::pow(resting.likely / told_.at_running.likely, 1.0 / told_.exponent.likely);
    }
  }

  void set_hole() {
    const EndGround& end = scene_.ground.ends.front();
    if (scene_.request.discharge_coefficient)
      told_.discharge_coefficient = scene_.request.discharge_coefficient->likely;
    const double density = scene_.ground.network.systems[end.system].fluid.density;
    if (!(told_.running_pressure > 0.0)) return;
    const double area =
        parts::orifice_area(told_.at_running.likely, told_.running_pressure, told_.discharge_coefficient, density);
    told_.hole_diameter = parts::hole_diameter(area);
  }

  void set_detection() {
    const site::LeakDetector* detector = detector_of(scene_, scene_.ground.ends.front());
    if (detector == nullptr) {
      told_.seen_reason = "no leak detector is listed";
      return;
    }
    if (!detector->detects || !detector->at) {
      told_.seen_reason = "what the leak detector detects, and at which pressure, is not entered";
      return;
    }
    told_.detects = detector->detects->likely.si();
    told_.detects_at = detector->at->likely.si();
    told_.at_detector = rate(*told_.detects_at);
    const double enough = *told_.detects * (1.0 - 1e-9);
    if (told_.at_detector.low >= enough) {
      told_.bound_to_be_seen = true;
      told_.seen_reason = "the leak at the detector's own pressure is at least what it detects";
    } else if (told_.at_detector.high < enough) {
      told_.bound_to_be_seen = false;
      told_.seen_reason = "the leak at the detector's own pressure is less than what it detects";
    } else {
      told_.seen_reason =
          "one reading does not tell: a hole would be on one side of what it detects, a slit on the other";
    }
  }

  void set_filling() {
    if (scene_.ground.sump == nullptr) return;
    const site::Sump& sump = *scene_.ground.sump;
    const auto room = network::sump_room(sump);
    if (!room || !(told_.mean.low > 0.0)) return;
    const auto time = [&](double volume) {
      return Spread{volume / told_.mean.high, volume / told_.mean.likely, volume / told_.mean.low};
    };
    const auto to_height = [&](std::optional<double> height) -> std::optional<Spread> {
      const auto volume = height ? parts::volume_at(*room, *height) : std::nullopt;
      return volume ? std::optional(time(*volume)) : std::nullopt;
    };
    told_.to_sensor = to_height(network::sensor_height(sump));
    told_.to_seal = to_height(network::lowest_seal(sump));
    told_.to_brim = time(parts::brim_volume(*room));
  }

  const Scene& scene_;
  const release::Broken& broken_;
  CrackLaw law_;
  double reading_pressure_ = 0.0;
  double reading_rate_ = 0.0;
  CrackTold told_;
};

}  // namespace

std::optional<CrackTold> crack_told(const Scene& scene) {
  if (scene.options.kind != IncidentKind::crack || scene.ground.ends.empty()) return std::nullopt;
  Inputs inputs;
  const release::Case given = make_case(scene, inputs, {});
  if (!(given.broken.front().opening.leak_coefficient > 0.0)) return std::nullopt;
  return CrackTeller(scene, given.broken.front()).tell();
}

}  // namespace forecourse::studies
