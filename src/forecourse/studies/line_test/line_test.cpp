#include "forecourse/studies/line_test/line_test.h"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "forecourse/base/api_units.h"
#include "forecourse/base/constants.h"
#include "forecourse/network/build.h"
#include "forecourse/studies/line_test/line_inputs.h"
#include "forecourse/studies/line_test/quiet_times.h"
#include "forecourse/studies/line_test/shut_line.h"

namespace forecourse::studies {
namespace {

constexpr double hour = 3600.0;
constexpr double usual_duration = hour;
constexpr std::size_t curve_points = 120;
constexpr double least_time = 60.0;  // of the curve: a step in the ground begins with an infinite rate

double gallons_per_hour(double rate) { return cubic_meters_from_gallons(rate) / hour; }

class LineTester {
 public:
  LineTester(const LineInputs& in, const std::vector<double>& quiet) : in_(in), quiet_(quiet) {}

  LineTest tell() {
    line_.system = in_.system.id;
    line_.product = in_.system.product;
    for (const network::Run& run : in_.system.runs) {
      if (run.kind == network::RunKind::line) line_.lines.push_back(run.id);
    }
    if (!in_.system.graph) {
      line_.problem = in_.system.problems.empty() ? "its piping is not complete" : in_.system.problems.front().message;
      return std::move(line_);
    }
    const network::HeldLine held = network::held_line(in_.site, in_.system);
    line_.held = held.held_pressure();
    line_.held_by = held.held_by;
    measure_at_discharge(held);
    tell_conduit(in_, line_);
    law_ = cooling_law(in_, line_.thermal);
    use_pressure_per_degree();
    tell_thermal();
    tell_volume_test();
    tell_pressure_test();
    line_.detectors = detectors_of(in_, line_, law_, quiet_);
    return std::move(line_);
  }

 private:
  [[nodiscard]] double shrinks() const { return line_.thermal.fuel_expansion - line_.thermal.line_expansion; }

  /// At the discharge of the first pump that runs, where its height is entered: as the flow study tells it.
  void measure_at_discharge(const network::HeldLine& held) {
    if (!held.held) return;
    for (const network::PumpPoint& pump : in_.system.pumps) {
      const network::Place* place = pump.running ? placed(in_.system, pump.id) : nullptr;
      if (place == nullptr) continue;
      line_.held = *held.held - in_.system.weight_of(place->elevation);
      line_.held_at = pump.id;
      return;
    }
  }

  void use_pressure_per_degree() {
    if (!in_.options.per_degree || !line_.thermal.problem.empty() || *in_.options.per_degree <= 0.0) return;
    line_.compliance = line_.volume * shrinks() / *in_.options.per_degree;
    line_.compliance_reason.clear();
  }

  void tell_thermal() {
    ThermalTold& told = line_.thermal;
    told.limit = in_.options.limit.value_or(0.5 * find());
    if (!law_) return;
    if (const auto* steady = std::get_if<parts::SteadyCooling>(&*law_)) {
      told.at_start = line_.volume * shrinks() * told.warmer.middle() / steady->time_constant;
    }
    told.wait = thermal_wait(line_, largest_difference(), *law_, told.limit);
  }

  [[nodiscard]] double largest_difference() const {
    return std::max(std::abs(line_.thermal.warmer.low), std::abs(line_.thermal.warmer.high));
  }
  [[nodiscard]] double find() const { return in_.options.find.value_or(tightness_rate()); }

  [[nodiscard]] std::optional<double> test_pressure() const {
    if (in_.options.pressure) return in_.options.pressure;
    return line_.held ? std::optional(tightness_pressure_factor * *line_.held) : std::nullopt;
  }

  [[nodiscard]] double exponent() const { return in_.options.exponent.value_or(parts::sharp_hole_exponent); }

  /// The leak that was entered, at a pressure; none entered: none.
  [[nodiscard]] std::optional<double> leak_at(double pressure) const {
    if (!in_.options.leak) return std::nullopt;
    const double at = in_.options.leak_pressure.value_or(pressure);
    return parts::leak_rate(parts::leak_law({at, *in_.options.leak}, exponent()), pressure);
  }

  void tell_volume_test() {
    VolumeTestTold& told = line_.volume_test;
    told.find = find();
    told.threshold = 0.5 * told.find;
    if (const auto pressure = test_pressure()) {
      told.leak = leak_at(*pressure);
    } else {
      told.leak = in_.options.leak;  // no pressure is known: as entered
    }
    if (!law_) return;
    const double warmer = line_.thermal.warmer.middle();
    tell_points(warmer);
    if (warmer > 0.0) told.false_until = thermal_wait(line_, warmer, *law_, told.threshold);
    if (!told.leak) return;
    told.hidden_always = *told.leak <= told.threshold && warmer <= 0.0;
    if (warmer >= 0.0) return;
    told.cancels_at = *told.leak > 0.0 ? std::optional(thermal_wait(line_, warmer, *law_, *told.leak)) : std::nullopt;
    if (*told.leak > told.threshold) {
      told.hidden_until = thermal_wait(line_, warmer, *law_, *told.leak - told.threshold);
    }
  }

  void tell_points(double warmer) {
    VolumeTestTold& told = line_.volume_test;
    const bool steady = std::holds_alternative<parts::SteadyCooling>(*law_);
    const double first = steady ? 0.0 : least_time;
    const double wait = thermal_wait(line_, warmer, *law_, 0.1 * told.threshold);
    const double last = std::max({wait, in_.options.wait.value_or(0.0) + duration(), 2.0 * hour});
    for (std::size_t i = 0; i <= curve_points; ++i) {
      const double share = static_cast<double>(i) / static_cast<double>(curve_points);
      const double time = first + (last - first) * share * share;  // closer where it changes fast
      const double rate = thermal_rate(line_, warmer, *law_, time);
      told.points.push_back({time, rate, rate + told.leak.value_or(0.0)});
    }
  }

  [[nodiscard]] double duration() const { return in_.options.duration.value_or(usual_duration); }

  void tell_pressure_test() {
    PressureTestTold& told = line_.pressure_test;
    told.duration = duration();
    told.wait = in_.options.wait.value_or(0.0);
    const auto pressure = test_pressure();
    if (!pressure) {
      told.problem = "the pressure of the test is not known (" + line_.held_by + "): give --pressure";
      return;
    }
    told.pressure = *pressure;
    if (!line_.compliance) {
      told.problem = "how the line yields to pressure is not known: " + line_.compliance_reason +
                     ", or give --compliance or --per-degree";
      return;
    }
    if (line_.thermal.problem.empty()) {
      told.per_degree = parts::pressure_per_degree(line_.thermal.fuel_expansion, line_.thermal.line_expansion,
                                                   *line_.compliance / line_.volume);
    }
    told.leak = leak_at(told.pressure);
    shut_ =
        shut_line(line_.thermal.problem.empty() ? line_.thermal.warmer.middle() : 0.0, in_.options.vapor.value_or(0.0));
    if (!law_) told.problem = line_.thermal.problem;  // the leak alone can still be told
    tell_courses();
    if (law_) tell_proofs();
  }

  [[nodiscard]] ShutLine shut_line(double warmer, double pocket) const {
    ShutLine out;
    out.volume = line_.volume;
    out.compliance = *line_.compliance;
    out.shrinks = line_.thermal.problem.empty() ? shrinks() : 0.0;
    out.warmer = warmer;
    out.atmosphere = in_.site.atmospheric_pressure ? in_.site.atmospheric_pressure->likely.si() : standard_atmosphere;
    out.pocket = pocket;
    out.first_pressure = line_.pressure_test.pressure;
    return out;
  }

  void tell_courses() {
    PressureTestTold& told = line_.pressure_test;
    const Fading none = no_fading(told.duration);
    const Fading fading = law_ ? fading_of(*law_, told.wait, told.duration) : none;
    const parts::LeakLaw leak = parts::leak_law({told.pressure, told.leak.value_or(0.0)}, exponent());
    const ShutLineCourse both = course_of(shut_, leak, fading);
    const ShutLineCourse tight = course_of(shut_, {0.0, exponent()}, fading);
    const ShutLineCourse alone = course_of(shut_, leak, none);
    for (std::size_t i = 0; i < both.pressure.size(); ++i) {
      told.points.push_back(
          {fading.step * static_cast<double>(i), both.pressure[i], tight.pressure[i], alone.pressure[i]});
    }
    told.drop = told.pressure - both.pressure.back();
    told.tight_drop = told.pressure - tight.pressure.back();
    told.leak_drop = told.pressure - alone.pressure.back();
    told.to_air_at = both.to_air_at;
  }

  /// All leaks that end a test at a drop, over what is not known: temperature, a pocket or none, the form of the leak.
  [[nodiscard]] DropProof proof(double drop) const {
    const PressureTestTold& told = line_.pressure_test;
    const double most = gallons_per_hour(100.0);  // beyond it no test is needed
    std::vector<double> exponents{parts::sharp_hole_exponent, parts::laminar_crack_exponent};
    if (in_.options.exponent) exponents = {*in_.options.exponent};
    DropProof out{drop, {most, 0.0}, false, false, true};
    const Fading fading = fading_of(*law_, told.wait, told.duration);
    for (const double warmer : {line_.thermal.warmer.low, line_.thermal.warmer.high}) {
      for (const double pocket : {0.0, in_.options.vapor.value_or(0.0)}) {
        for (const double n : exponents) {
          const auto leak = leak_for_drop(shut_line(warmer, pocket), n, fading, drop, most);
          if (leak) out.none = false;
          out.leak.low = std::min(out.leak.low, leak.value_or(most));
          out.leak.high = std::max(out.leak.high, leak.value_or(most));
          out.tight_line_drops = out.tight_line_drops || (leak && *leak == 0.0);
        }
      }
    }
    out.only_tight = !out.none && out.leak.high == 0.0;
    return out;
  }

  void tell_proofs() {
    PressureTestTold& told = line_.pressure_test;
    if (in_.options.drop) {
      told.passed = proof(*in_.options.drop);
      told.failed = told.passed;
    }
    if (in_.options.measured) told.measured = proof(*in_.options.measured);
  }

  const LineInputs& in_;
  const std::vector<double>& quiet_;
  std::optional<parts::CoolingLaw> law_;
  ShutLine shut_;
  LineTest line_;
};

/// Defaults of the network that lines rest on are those of the liquid.
void take_over(const network::StationNetwork& network, LineTestResult& result) {
  for (const DefaultUsed& used : network.defaults) {
    if (used.unit == "kg/m3" || used.unit == "K") result.defaults.push_back(used);
  }
}

/// The station with a lift for each hose: where heights were not entered, a shut line is told against the height of its
/// tank's liquid, wherever that and the nozzles are, so that they keep no line from being told.
site::Site without_heights(site::Site site) {
  for (site::Dispenser& dispenser : site.dispensers) {
    for (site::Hose& hose : dispenser.hoses) {
      if (!hose.lift) hose.lift.emplace();
    }
  }
  return site;
}

}  // namespace

double hourly_rate() { return gallons_per_hour(3.0); }
double hourly_pressure() { return pascal_from_psi(10.0); }
double monthly_rate() { return gallons_per_hour(0.2); }
double tightness_rate() { return gallons_per_hour(0.1); }

LineTestResult study_line_test(const site::Site& site, const LineTestOptions& options, const Context& context) {
  static_cast<void>(context);
  LineTestResult result;
  result.options = options;
  result.version = FORECOURSE_VERSION;
  std::tie(result.quiet, result.quiet_by) = quiet_times(site, options);
  const network::StationNetwork network = network::build_network(without_heights(site));
  take_over(network, result);
  for (const network::PipingSystem& system : network.systems) {
    if (!options.product.empty() && options.product != system.product && options.product != system.id) continue;
    result.lines.push_back(LineTester({site, system, options, result.defaults}, result.quiet).tell());
  }
  if (!options.product.empty() && result.lines.empty()) {
    std::string all;
    for (const network::PipingSystem& system : network.systems) all += (all.empty() ? "" : ", ") + system.id;
    result.errors.push_back({Severity::error,
                             "no line carries '" + options.product + "'",
                             SourceSpan{},
                             all.empty() ? "the station has no line" : "there are: " + all,
                             {}});
  }
  return result;
}

}  // namespace forecourse::studies
