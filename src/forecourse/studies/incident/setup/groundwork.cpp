#include "forecourse/studies/incident/setup/groundwork.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>
#include <utility>

#include "forecourse/base/index.h"
#include "forecourse/network/escape/changed_system.h"
#include "forecourse/network/pack/stretches.h"
#include "forecourse/site/places.h"
#include "forecourse/studies/incident/release/layout.h"
#include "forecourse/studies/incident/setup/tank_contents.h"

namespace forecourse::studies {
namespace {

using network::PipingSystem;
using network::RunKind;

double surface_weight(const PipingSystem& system) {
  double lowest = INFINITY;
  for (const network::PumpPoint& pump : system.pumps) {
    const int node = system.runs[at(pump.run)].from;
    lowest = std::min(lowest, system.openings[at(node) - system.places.size()].elevation);
  }
  return std::isfinite(lowest) ? system.weight_of(lowest) : 0.0;
}

/// Pumps as they run while much fuel escapes: those of a control all on, a variable speed at its most; of an
/// alternating one, and for a small leak, the first alone.
network::PumpSetting pumps_on(const PipingSystem& system, bool small_leak) {
  network::PumpSetting setting;
  for (const network::PumpPoint& pump : system.pumps) setting.running.push_back(pump.running ? 1 : 0);
  setting.speed.assign(system.pumps.size(), 1.0);
  if (!system.control) return setting;
  const network::ControlPoint& control = *system.control;
  const bool first_alone =
      control.kind == site::ControlKind::alternating || (control.kind == site::ControlKind::lead_lag && small_leak);
  for (std::size_t i = 0; i < control.pumps.size(); ++i) {
    if (first_alone && i > 0) setting.running[control.pumps[i]] = 0;
    if (control.kind == site::ControlKind::variable_speed) setting.speed[control.pumps[i]] = control.most_speed;
  }
  return setting;
}

network::PumpSetting pumps_off(const PipingSystem& system) {
  return {std::vector<char>(system.pumps.size(), 0), std::vector<double>(system.pumps.size(), 1.0)};
}

class Ground {
 public:
  Ground(const site::Site& site, const IncidentOptions& options)
      : site_(site), options_(options), request_(merged_request(site, options)) {
    out_.network = network::build_network(site);
    out_.at = request_.at.text;
  }

  Groundwork lay() {
    if (out_.at.empty()) {
      fail("where it happens is not said: add --at with a dispenser, an inlet, a hose or a line");
      return std::move(out_);
    }
    find_ends();
    if (out_.ends.empty() && out_.problem.empty()) fail("'" + out_.at + "' is no place where this can happen");
    for (EndGround& end : out_.ends) feed(end);
    return std::move(out_);
  }

 private:
  void fail(std::string why) {
    if (out_.problem.empty()) out_.problem = std::move(why);
  }

  [[nodiscard]] bool is_leak() const { return options_.kind == IncidentKind::crack; }
  [[nodiscard]] bool is_hose_incident() const {
    return options_.kind == IncidentKind::drive_off || options_.kind == IncidentKind::nozzle_left_open;
  }

  void find_ends() {
    for (const site::Dispenser& dispenser : site_.dispensers) {
      for (const site::Hose& hose : dispenser.hoses) {
        if (is_hose_incident() && (hose.id.text == out_.at || dispenser.id.text == out_.at))
          return add_hose(dispenser, hose);
      }
      for (const site::Inlet& inlet : dispenser.inlets) {
        const bool whole = dispenser.id.text == out_.at;
        if (whole || site::place_name(dispenser, inlet) == out_.at) add_riser(dispenser, inlet);
      }
    }
    if (options_.kind == IncidentKind::line_break || options_.kind == IncidentKind::crack) add_line();
  }

  [[nodiscard]] std::optional<std::size_t> system_of(const std::string& place) {
    for (std::size_t s = 0; s < out_.network.systems.size(); ++s) {
      const PipingSystem& system = out_.network.systems[s];
      const bool here = std::any_of(system.places.begin(), system.places.end(),
                                    [&](const network::Place& p) { return p.id == place; });
      if (!here) continue;
      if (system.graph) return s;
      fail(system.problems.empty() ? "the piping of " + system.product + " cannot be computed"
                                   : system.problems.front().message);
      return std::nullopt;
    }
    return std::nullopt;
  }

  void add_riser(const site::Dispenser& dispenser, const site::Inlet& inlet) {
    const std::string place = site::place_name(dispenser, inlet);
    const auto system = system_of(place);
    if (!system) return;
    EndGround end;
    end.system = *system;
    end.dispenser = &dispenser;
    end.inlet = &inlet;
    end.place = place;
    const PipingSystem& piping = out_.network.systems[*system];
    std::vector<DefaultUsed> no_opening, same_again;
    const bool small = is_leak() || options_.kind == IncidentKind::sump_fire;
    end.end = network::broken_riser(site_, piping, dispenser, inlet, false, small ? no_opening : out_.defaults);
    end.torn = network::broken_riser(site_, piping, dispenser, inlet, true, same_again);
    take(std::move(end), dispenser);
  }

  void add_hose(const site::Dispenser& dispenser, const site::Hose& hose) {
    for (std::size_t s = 0; s < out_.network.systems.size(); ++s) {
      const PipingSystem& piping = out_.network.systems[s];
      for (std::size_t h = 0; piping.graph && h < piping.hoses.size(); ++h) {
        if (piping.hoses[h].id != hose.id.text) continue;
        EndGround end;
        end.system = s;
        end.dispenser = &dispenser;
        end.hose = &hose;
        for (const site::Inlet& inlet : dispenser.inlets) {
          if (inlet.product.text == piping.product) end.inlet = &inlet;
        }
        end.place = hose.id.text;
        end.end = network::open_hose(site_, piping, h, options_.kind == IncidentKind::drive_off, out_.defaults);
        take(std::move(end), dispenser);
      }
    }
    if (out_.ends.empty()) fail("the piping of hose '" + hose.id.text + "' cannot be computed");
  }

  void add_line() {
    for (std::size_t s = 0; s < out_.network.systems.size(); ++s) {
      const PipingSystem& piping = out_.network.systems[s];
      for (std::size_t r = 0; piping.graph && r < piping.runs.size(); ++r) {
        if (piping.runs[r].kind == RunKind::line && piping.runs[r].id == out_.at) cut(s, r);
      }
    }
  }

  void cut(std::size_t s, std::size_t run) {
    const PipingSystem& piping = out_.network.systems[s];
    EndGround end;
    end.system = s;
    end.place = out_.at;
    const double along = request_.along ? request_.along->likely.si() : 0.5;
    if (!request_.along) {
      out_.defaults.push_back({"place of the break along line " + out_.at, 0.5, "", DefaultStatus::illustrative,
                               "its middle", piping.id, true});
    }
    network::Reached reached = network::reached_without(piping, run);
    if (is_leak()) {  // the line stays whole
      end.end = network::cut_line(piping, run, along, {true, false});
    } else if (reached.line.from && reached.line.to) {
      constexpr double least = 1e-3;  // of the length: a part of a line has a loss
      end.split = std::make_shared<const PipingSystem>(
          network::split_system(piping, run, std::clamp(along, least, 1.0 - least)));
      end.end = network::cut_loop(*end.split, run);
      out_.warnings.push_back({Severity::warning,
                               "line '" + out_.at +
                                   "' is fed from both of its ends: both feed the break, and both open bores are "
                                   "counted as one",
                               {},
                               {},
                               {}});
    } else if (reached.line.from || reached.line.to) {
      end.end = network::cut_line(piping, run, along, reached.line);
    } else {
      return fail("no pump feeds line '" + out_.at + "'");
    }
    if (!is_leak()) behind_ = std::move(reached.hoses);
    end.product = piping.product;
    for (const Diagnostic& problem : end.end.problems) fail(problem.message + ": " + problem.hint);
    out_.ends.push_back(std::move(end));
  }

  void take(EndGround end, const site::Dispenser& dispenser) {
    out_.dispenser = dispenser.id.text;
    if (dispenser.sump) out_.sump = &*dispenser.sump;
    end.product = out_.network.systems[end.system].product;
    for (const Diagnostic& problem : end.end.problems) fail(problem.message + ": " + problem.hint);
    out_.ends.push_back(std::move(end));
  }

  [[nodiscard]] std::vector<char> open_hoses(const PipingSystem& piping) {
    std::vector<char> open;
    for (std::size_t h = 0; h < piping.hoses.size(); ++h) {
      const network::HosePoint& hose = piping.hoses[h];
      const bool asked = std::any_of(request_.open.begin(), request_.open.end(),
                                     [&](const site::Name& n) { return n.text == hose.id; });
      const bool gone = (hose.dispenser == out_.dispenser && !is_hose_incident()) || hose.id == out_.at;
      const bool cut = !behind_.empty() && behind_[h] == 0;
      open.push_back(asked && !gone && !cut ? 1 : 0);
      if (open.back() != 0) out_.open.push_back(hose.id);
    }
    return open;
  }

  void set_compliance(const PipingSystem& piping, EndGround& end) {
    if (request_.line_compliance) {
      end.compliance = request_.line_compliance->likely.si();
      return;
    }
    double sum = 0.0;
    for (const network::Stretch& stretch : network::stretches_of(site_, piping)) {
      if (stretch.compliance) {
        sum += *stretch.compliance;
      } else if (end.compliance_reason.empty()) {
        end.compliance_reason = stretch.part + " of " + stretch.id + ": " + stretch.reason;
      }
    }
    if (end.compliance_reason.empty()) end.compliance = sum;
  }

  void feed(EndGround& end) {
    if (!out_.problem.empty()) return;
    tell_wide_opening(end);
    const PipingSystem& piping = end.split ? *end.split : out_.network.systems[end.system];
    const std::vector<char> open = open_hoses(piping);
    const double weight = piping.weight_of(end.end.elevation);
    network::FeedQuestion asked{end.end.place, open, pumps_on(piping, is_leak()),
                                std::min(weight, surface_weight(piping)), network::highest_pressure(piping)};
    end.running = network::make_feed(piping, asked);
    end.stopped = feed_by_gravity(piping, asked, weight);
    asked.pumps = pumps_off(piping);
    if (end.stopped.shut()) end.stopped = network::make_feed(piping, asked);
    if (end.running.unsolved || end.stopped.unsolved)
      return fail("the piping of " + piping.product + " could not be solved");
    const auto last = [](const network::Feed& feed) { return feed.shut() ? 0.0 : feed.pressure.last(); };
    const double most = std::max(last(end.running), last(end.stopped));
    end.path = network::path_table(end.end, most);
    if (end.torn) end.torn_path = network::path_table(*end.torn, most);
    end.trunk_inertance = network::column_inertance(piping, end.end.place);
    end.rest_pressure = surface_weight(piping);
    end.standing_known = network::standing_loss_known(piping);
    end.above_opening = network::volume_above(piping, end.end.elevation);
    set_compliance(out_.network.systems[end.system], end);
    set_contents(piping, end);
    end.checked = true;
    for (const network::PumpPoint& point : piping.pumps) {
      end.pumps.push_back(point.id);
      for (const site::Pump& pump : site_.pumps) {
        if (pump.id.text != point.id) continue;
        end.checked = end.checked && pump.check_valve.value_or(false);
        if (pump.pressure_relief) {
          const double relief = pump.pressure_relief->likely.si() + piping.weight_of(point.discharge_elevation);
          end.relief = std::min(end.relief.value_or(INFINITY), relief);
        }
      }
    }
    tell_control(piping);
  }

  /// What the tanks give with every pump standing; shut where no liquid stands above the opening.
  [[nodiscard]] static network::Feed feed_by_gravity(const PipingSystem& piping, network::FeedQuestion asked,
                                                     double weight) {
    if (!piping.elevations_known) return {};
    asked.pumps = {};
    network::Feed feed = network::make_feed(network::standing_system(piping), asked);
    if (feed.unsolved) return feed;
    const bool above = feed.supplied && feed.pressure.at(0.0).value > weight + release::spent_pressure;
    return above ? feed : network::Feed{};
  }

  /// What is in the tanks. One tank's level moves its feed; several are counted together, at their levels as they are.
  void set_contents(const PipingSystem& piping, EndGround& end) {
    std::set<std::string> seen;
    double stock = 0.0;
    std::string missing;
    for (const network::PumpPoint& point : piping.pumps) {
      if (!seen.insert(point.tank).second) continue;
      end.tank += (end.tank.empty() ? "" : " and ") + point.tank;
      auto contents = contents_for(site_, point.id, piping.fluid.density);
      if (const auto* why = std::get_if<std::string>(&contents)) {
        missing = *why;
        continue;
      }
      const Contents& known = std::get<Contents>(contents);
      stock += known.usable;
      end.fall = known.fall;
      out_.defaults.insert(out_.defaults.end(), known.defaults.begin(), known.defaults.end());
      if (known.to_bottom) {
        out_.defaults.push_back({"height of the inlet of pump " + point.id + " above the tank's bottom", 0.0, "m",
                                 DefaultStatus::illustrative, "the tank is counted down to its bottom", piping.id,
                                 true});
      }
    }
    if (missing.empty()) {
      end.stock = stock;
    } else {
      warn("what is in the tank is not known and is no limit to what escapes: " + missing);
    }
    if (!missing.empty() || seen.size() > 1) end.fall = {};
  }

  void tell_wide_opening(const EndGround& end) {
    if (!request_.open_area || !(end.end.bore > 0.0)) return;
    const double bores = 0.25 * std::numbers::pi * end.end.bore * end.end.bore * (end.split ? 2.0 : 1.0);
    if (request_.open_area->likely.si() <= bores) return;
    warn("the open area is wider than the pipe at '" + end.place +
         "': a full break lets out no more than the bore does");
  }

  void warn(std::string words) { out_.warnings.push_back({Severity::warning, std::move(words), {}, {}, {}}); }

  void tell_control(const PipingSystem& piping) {
    if (!piping.control) return;
    const bool first = piping.control->kind == site::ControlKind::alternating || is_leak();
    out_.warnings.push_back({Severity::warning,
                             "control of " + piping.product + ": " +
                                 (first ? "the first pump alone is taken to run"
                                        : "every pump is taken to run, at its most speed, as the pressure falls"),
                             piping.control->where,
                             {},
                             {}});
  }

  const site::Site& site_;
  const IncidentOptions& options_;
  site::IncidentRequest request_;
  Groundwork out_;
  std::vector<char> behind_;  ///< of a cut line: hoses still fed
};

}  // namespace

Groundwork lay_ground(const site::Site& site, const IncidentOptions& options) { return Ground(site, options).lay(); }

}  // namespace forecourse::studies
