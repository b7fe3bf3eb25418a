#include "forecourse/network/control_builder.h"

#include <algorithm>
#include <limits>
#include <utility>

#include "forecourse/network/pump_control.h"

namespace forecourse::network {
namespace {

using site::ControlKind;

/// Below it the affinity laws are not trusted (docs/theory/pump-curves.md).
constexpr double default_least_speed = 0.5;
constexpr double default_most_speed = 1.0;

bool moves_pumps(const site::PumpControl& control) {
  return control.kind && control.kind->value != ControlKind::off && control.kind->value != ControlKind::all;
}

template <class T>
std::optional<double> si(const site::Maybe<T>& value) {
  return value ? std::optional(value->likely.si()) : std::nullopt;
}

const site::Pump* find_pump(const site::Site& site, const std::string& id) {
  const auto found = std::find_if(site.pumps.begin(), site.pumps.end(), [&](const auto& p) { return p.id.text == id; });
  return found == site.pumps.end() ? nullptr : &*found;
}

/// Makes the control of one system and looks at what it can do.
class ControlBuilder {
 public:
  ControlBuilder(const site::Site& site, PipingSystem& system, std::vector<DefaultUsed>& defaults,
                 std::vector<Diagnostic>& warnings)
      : site_(site), system_(system), defaults_(defaults), warnings_(warnings) {}

  void build() {
    for (const site::PumpControl& control : site_.controls) {
      if (!moves_pumps(control)) continue;
      std::vector<std::size_t> pumps = pumps_of(control);
      if (pumps.empty()) continue;
      if (system_.control) return tell_second(control);
      take(control, std::move(pumps));
    }
    if (!system_.control) return;
    note_height();
    if (system_.control->pumps.size() < pumps_meant_) warn_split();
    look();
  }

 private:
  /// The pumps of the system that the control runs, in the order they start.
  std::vector<std::size_t> pumps_of(const site::PumpControl& control) {
    std::vector<std::string> ids;
    for (const site::Name& name : control.pumps) ids.push_back(name.text);
    if (ids.empty() && control.product.text == system_.product) {
      for (const PumpPoint& pump : system_.pumps) ids.push_back(pump.id);
    }
    std::vector<std::size_t> pumps;
    std::size_t meant = 0;
    for (const std::string& id : ids) {
      const site::Pump* pump = find_pump(site_, id);
      if (pump == nullptr || !pump->running.value_or(true)) continue;
      ++meant;
      for (std::size_t p = 0; p < system_.pumps.size(); ++p) {
        if (system_.pumps[p].id == id && system_.pumps[p].running) pumps.push_back(p);
      }
    }
    if (!pumps.empty()) pumps_meant_ = meant;
    return pumps;
  }

  void take(const site::PumpControl& control, std::vector<std::size_t> pumps) {
    ControlPoint point;
    point.id = control.id.text;
    point.kind = control.kind->value;
    point.pumps = std::move(pumps);
    point.starts_below = si(control.starts_below);
    point.stops_above = si(control.stops_above);
    point.alternates_after = si(control.alternates_after);
    point.holds = si(control.holds);
    if (control.hoses_calling) point.hoses_calling = control.hoses_calling->likely;
    point.where = control.where;
    if (point.kind == ControlKind::variable_speed) {
      point.least_speed = speed(control.least_speed, "least", default_least_speed,
                                "below it the affinity laws are not trusted", point.id);
      point.most_speed =
          speed(control.most_speed, "most", default_most_speed, "the speed of the pump's curve", point.id);
    }
    system_.control = std::move(point);
  }

  double speed(const site::Maybe<Ratio>& entered, const std::string& which, double otherwise, const char* source,
               const std::string& control) {
    if (entered) return entered->likely.si();
    defaults_.push_back(
        {which + " speed of control " + control, otherwise, "", DefaultStatus::common_practice, source, {}});
    return otherwise;
  }

  [[nodiscard]] bool reads_pressure() const {
    const ControlPoint& control = *system_.control;
    return control.kind == ControlKind::variable_speed ||
           (control.kind == ControlKind::lead_lag && !control.hoses_calling);
  }

  [[nodiscard]] const PumpPoint& first_pump() const { return system_.pumps[system_.control->pumps.front()]; }

  [[nodiscard]] bool height_entered() const {
    const site::Pump* pump = find_pump(site_, first_pump().id);
    return system_.elevations_known && pump != nullptr && pump->discharge_elevation.has_value();
  }

  void note_height() {
    if (!reads_pressure() || height_entered()) return;
    defaults_.push_back({"height of the discharge of pump " + first_pump().id,
                         first_pump().discharge_elevation,
                         "m",
                         DefaultStatus::common_practice,
                         std::string("where control ") + system_.control->id + " reads the line pressure; taken at " +
                             (system_.elevations_known ? "the site datum" : "the liquid's level"),
                         {}});
  }

  void tell_second(const site::PumpControl& control) {
    system_.problems.push_back({Severity::error,
                                "the controls '" + system_.control->id + "' and '" + control.id.text +
                                    "' both start and stop pumps of one line",
                                control.where,
                                "put the pumps of the line under one control",
                                {}});
    system_.graph.reset();
  }

  void warn(std::string message, std::string hint) {
    warnings_.push_back({Severity::warning, std::move(message), system_.control->where, std::move(hint), {}});
  }

  void warn_split() {
    warn("the pumps of control '" + system_.control->id + "' do not share one line: those of " + system_.id +
             " are taken to be run by themselves",
         "give each line a control of its own");
  }

  /// Gauge pressure of a piezometric one where the control reads it [Pa].
  [[nodiscard]] double read(double piezometric) const {
    return piezometric - system_.weight_of(first_pump().discharge_elevation);
  }

  /// The lowest that the line pressure can be while fuel flows out of a hose: that of the lift alone [Pa].
  [[nodiscard]] double lowest_flowing() const {
    double lowest = std::numeric_limits<double>::infinity();
    for (const HosePoint& hose : system_.hoses) {
      const auto outlet = static_cast<std::size_t>(system_.runs[static_cast<std::size_t>(hose.run)].to);
      lowest = std::min(lowest, system_.weight_of(system_.openings[outlet - system_.places.size()].elevation));
    }
    return read(lowest);
  }

  void look() {
    if (!system_.graph || !reads_pressure()) return;
    const ControlPoint& control = *system_.control;
    const std::string name = "control '" + control.id + "' ";
    if (control.kind == ControlKind::variable_speed) {
      double highest = -std::numeric_limits<double>::infinity();
      for (const std::size_t pump : control.pumps) {
        highest = std::max(highest, read(shutoff_pressure(system_, pump, control.most_speed)));
      }
      if (control.holds && highest < *control.holds) {
        warn(name + "can never hold its pressure: none of its pumps reaches it at the most speed, even at no flow",
             "lower holds, or raise most_speed");
      }
      return;
    }
    if (control.starts_below && height_entered() && *control.starts_below <= lowest_flowing()) {
      warn(name + "can never start a further pump: while fuel flows, the lift alone keeps the line pressure above it",
           "raise starts_below above the pressure of the lift from the pump's discharge to the nozzle");
    }
    if (control.starts_below && read(shutoff_pressure(system_, control.pumps.front(), 1.0)) < *control.starts_below) {
      warn(name + "starts a further pump even with every hose shut: its first pump alone does not reach the pressure",
           "lower starts_below below the shutoff of pump '" + first_pump().id + "'");
    }
  }

  const site::Site& site_;
  PipingSystem& system_;
  std::vector<DefaultUsed>& defaults_;
  std::vector<Diagnostic>& warnings_;
  std::size_t pumps_meant_ = 0;
};

}  // namespace

bool is_about(const site::PumpControl& control, const site::Pump& pump, const std::string& product) {
  const bool named = std::find(control.pumps.begin(), control.pumps.end(), pump.id) != control.pumps.end();
  return named || (control.pumps.empty() && control.product.text == product);
}

bool is_held_off(const site::Site& site, const site::Pump& pump, const std::string& product) {
  return std::any_of(site.controls.begin(), site.controls.end(), [&](const site::PumpControl& control) {
    return control.kind && control.kind->value == ControlKind::off && is_about(control, pump, product);
  });
}

void add_control(const site::Site& site, PipingSystem& system, std::vector<DefaultUsed>& defaults,
                 std::vector<Diagnostic>& warnings) {
  ControlBuilder(site, system, defaults, warnings).build();
}

}  // namespace forecourse::network
