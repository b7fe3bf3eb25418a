#include "forecourse/studies/flow/worst/find_worst_states.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "forecourse/base/index.h"
#include "forecourse/studies/flow/worst/downstream.h"
#include "forecourse/studies/flow/worst/set_descent.h"

namespace forecourse::studies {
namespace {

using network::HoseSet;
using network::PipingSystem;
using network::Run;
using network::RunKind;
using network::SetStates;

class Finder {
 public:
  explicit Finder(SetSearch& search)
      : search_(search),
        group_(search.group()),
        raises_never_(group_.opening_never_raises()),
        alone_of_(group_.hoses.size()) {}

  WorstStates find() {
    solve_plain_sets();
    find_runs();
    out_.system = group_.id;
    out_.hose_count = static_cast<int>(group_.hoses.size());
    out_.opening_never_raises = raises_never_;
    find_hoses();
    find_pressures();
    out_.sets_solved = search_.solved();
    out_.sets_failed = search_.failed();
    return std::move(out_);
  }

 private:
  /// All open, none open, then one of each class alone.
  void solve_plain_sets() {
    std::vector<HoseSet> sets{search_.sets().everything(), 0};
    const std::vector<HoseSet> alone = search_.sets().alone();
    sets.insert(sets.end(), alone.begin(), alone.end());
    for (std::size_t c = 0; c < group_.equal.size(); ++c) {
      for (const std::size_t hose : group_.equal[c]) alone_of_[hose] = 2 + c;
    }
    search_.solve(sets, [&](std::size_t first, const SetStates& states) {
      if (first == 0) plain_ = states;
    });
  }

  [[nodiscard]] Proof without_argument() const {
    return search_.is_enumerated() && search_.failed() == 0 ? Proof::enumeration : Proof::best_found;
  }

  [[nodiscard]] std::vector<std::string> ids(HoseSet set) const {
    std::vector<std::string> open;
    for (std::size_t h = 0; h < group_.hoses.size(); ++h) {
      if ((set >> h & 1U) != 0) open.push_back(group_.hoses[h].id);
    }
    return open;
  }

  [[nodiscard]] Extreme told(const Found& found) const {
    if (std::isnan(found.value)) return {};
    return {found.value, ids(found.set), without_argument()};
  }

  /// By argument, from one of the plain sets; empty if that was not solved.
  [[nodiscard]] std::optional<Extreme> argued(std::size_t plain, double value, HoseSet set) const {
    if (plain_.solved[plain] == 0 || std::isnan(value)) return std::nullopt;
    return Extreme{value, ids(set), Proof::argument};
  }

  // ---- hoses -----------------------------------------------------------------------------------------

  [[nodiscard]] double plain_flow(std::size_t plain, std::size_t hose) const {
    return plain_.hose_flow[plain * group_.hoses.size() + hose];
  }

  void find_hoses() {
    for (std::size_t h = 0; h < group_.hoses.size(); ++h) {
      HoseExtremes hose{group_.hoses[h].id, told(search_.least_flow(h)), told(search_.greatest_flow(h))};
      if (raises_never_) {
        const HoseSet all = search_.sets().everything();
        if (const auto least = argued(0, plain_flow(0, h), all)) hose.least = *least;
        const std::size_t first = group_.equal[alone_of_[h] - 2].front();
        const double alone = plain_flow(alone_of_[h], first);
        if (const auto most = argued(alone_of_[h], alone, HoseSet{1} << h)) hose.greatest = *most;
      }
      constexpr double rounding = 1e-10;  // relative: of equal hoses the first is told
      if (h == 0 || hose.least.value < out_.slowest.value * (1.0 - rounding)) {
        out_.slowest = hose.least;
        out_.slowest_hose = hose.hose;
      }
      out_.hoses.push_back(std::move(hose));
    }
  }

  // ---- pressures -------------------------------------------------------------------------------------

  /// No flow leaves the lines with every hose shut, and pumps that do not change with the state then hold the most.
  [[nodiscard]] bool shut_is_highest() const {
    return std::none_of(group_.systems.begin(), group_.systems.end(),
                        [](const PipingSystem* system) { return system->has_moving_control(); });
  }

  void keep_higher(PressureExtreme& highest, std::size_t s, int node, double elevation, const std::string& place) {
    const PipingSystem& system = *group_.systems[s];
    const Found& found = search_.pressure(s, at(node));
    Extreme gauge = told({found.value - system.weight_of(elevation), found.set});
    if (shut_is_highest()) {
      const double shut = plain_.systems[s].pressure_of(1, at(node)) - system.weight_of(elevation);
      if (const auto argument = argued(1, shut, 0)) gauge = *argument;
    }
    if (std::isnan(gauge.value) || (!highest.place.empty() && gauge.value <= highest.gauge.value)) return;
    highest = {place, gauge};
  }

  void find_pressures() {
    for (std::size_t s = 0; s < group_.systems.size(); ++s) {
      const PipingSystem& system = *group_.systems[s];
      for (const network::PumpPoint& pump : system.pumps) {
        keep_higher(out_.pump, s, system.runs[at(pump.run)].to, pump.discharge_elevation, pump.id);
      }
      for (const network::HosePoint& hose : system.hoses) {
        const int node = inlet_of(system, hose);
        keep_higher(out_.inlet, s, node, system.places[at(node)].elevation, system.places[at(node)].id);
      }
    }
  }

  /// The place where the hose's dispenser joins the line: before its riser, if it has one.
  static int inlet_of(const PipingSystem& system, const network::HosePoint& hose) {
    const int from = system.runs[at(hose.run)].from;
    for (const Run& run : system.runs) {
      if (run.kind == RunKind::riser && run.to == from) return run.from;
    }
    return from;
  }

  // ---- lines and pumps -------------------------------------------------------------------------------

  void find_runs() {
    for (const bool pumps : {false, true}) {
      for (std::size_t s = 0; s < group_.systems.size(); ++s) {
        const std::vector<Run>& runs = group_.systems[s]->runs;
        for (std::size_t r = 0; r < runs.size(); ++r) {
          if (runs[r].kind != (pumps ? RunKind::pump : RunKind::line)) continue;
          const Extreme flow = pumps ? pump_flow(s, r) : line_flow(s, r);
          out_.runs.push_back({runs[r].id, pumps, flow, velocity(runs[r], flow.value)});
        }
      }
    }
  }

  static double velocity(const Run& run, double flow) {
    const double bore = run.elements.empty() ? 0.0 : run.elements.front().bore;
    return bore > 0.0 ? flow / (0.25 * std::numbers::pi * bore * bore) : 0.0;
  }

  /// A pump delivers most where the line's pressure is lowest.
  [[nodiscard]] Extreme pump_flow(std::size_t s, std::size_t r) {
    const double all_open = std::abs(plain_.systems[s].flow_of(0, r));
    if (raises_never_) {
      if (const auto argument = argued(0, all_open, search_.sets().everything())) return *argument;
    }
    return told(search_.run_flow(s, r));
  }

  [[nodiscard]] Extreme line_flow(std::size_t s, std::size_t r) {
    const auto behind = raises_never_ ? hoses_behind(group_, r) : std::nullopt;
    if (behind) {
      double flow = std::nan("");
      search_.solve(std::vector<HoseSet>{*behind}, [&](std::size_t, const SetStates& states) {
        if (states.solved[0] != 0) flow = std::abs(states.systems[s].flow_of(0, r));
      });
      if (!std::isnan(flow)) return {flow, ids(*behind), Proof::argument};
    }
    if (!search_.is_enumerated() && search_.is_batched()) ascend_to_greatest(search_, s, r);
    return told(search_.run_flow(s, r));
  }

  SetSearch& search_;
  const network::HoseGroup& group_;
  bool raises_never_;
  SetStates plain_;
  std::vector<std::size_t> alone_of_;  ///< of the plain sets, per hose
  WorstStates out_;
};

}  // namespace

WorstStates worst_states(SetSearch& search) { return Finder(search).find(); }

}  // namespace forecourse::studies
