#include "forecourse/decide/mend/own_levers.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "forecourse/checks/figures/each_part.h"
#include "forecourse/decide/mend/part_paths.h"

namespace forecourse::decide {
namespace {

using checks::Finding;

bool is_one_of(const std::string& id, std::initializer_list<std::string_view> ids) {
  return std::find(ids.begin(), ids.end(), id) != ids.end();
}

Lever less(std::string path, std::string words, Grid grid, std::optional<double> start = std::nullopt) {
  return {std::move(path), std::move(words), LeverKind::amount, Sense::less, grid, false, start};
}

Lever wider(std::string pipe, std::string words) { return {std::move(pipe), std::move(words), LeverKind::size}; }

Lever set_to(std::string path, std::string words, std::string value) {
  Lever out{std::move(path), std::move(words), LeverKind::word};
  out.value = std::move(value);
  return out;
}

// ---- flows of hoses ----------------------------------------------------------------------------------

/// The parts of the way to a hose with all open, what loses most first.
std::vector<studies::BudgetRow> course_of(const studies::FlowResult& flow, const std::string& hose) {
  std::vector<studies::BudgetRow> out;
  for (const studies::FlowState& state : flow.states) {
    for (const studies::SystemFlow& system : state.systems) {
      for (const studies::HoseFlow& one : system.hoses) {
        if (one.id == hose && one.open && one.budget.size() >= out.size()) out = one.budget;
      }
    }
  }
  std::stable_sort(out.begin(), out.end(), [](const auto& a, const auto& b) { return a.loss > b.loss; });
  return out;
}

/// A part of the way that can be laid wider; no path where it is none.
Lever wider_part(const site::Site& site, const studies::BudgetRow& row) {
  const std::string line = path_of(site, PartOf::line, row.owner);
  if (!line.empty()) return wider(line, "lay line " + row.owner + " wider");
  const std::string inlet = row.part == "riser" ? path_of(site, PartOf::inlet, row.owner) : std::string();
  return inlet.empty() ? Lever() : wider(inlet + ".riser", "fit a wider riser at " + row.owner);
}

/// Whether the limiter of a hose alone keeps it below a flow [m3/s].
bool is_held_below(const site::Site& site, const std::string& id, double flow) {
  bool out = false;
  checks::each_hose_of(site, [&](const site::Hose& hose, const site::Dispenser&) {
    out = out || (hose.id.text == id && hose.limiter && hose.limiter->likely.si() < flow);
  });
  return out;
}

std::vector<Lever> of_flow(const LeverQuestion& question) {
  const Finding& finding = question.finding;
  const std::string hose = path_of(question.site, PartOf::hose, finding.subject);
  if (hose.empty() || !finding.value || !finding.limit) return {};
  if (*finding.value > *finding.limit) {
    return {less(hose + ".limiter", "fit a limiter", Grid::hose_flow, finding.value)};
  }
  std::vector<Lever> out;
  if (is_held_below(question.site, finding.subject, *finding.limit)) {
    out.push_back(
        {hose + ".limiter", "fit a limiter that lets more through", LeverKind::amount, Sense::more, Grid::hose_flow});
  }
  if (!question.studied.flow) return out;
  constexpr std::size_t most = 4;  // parts of the way that are tried
  for (const studies::BudgetRow& row : course_of(*question.studied.flow, finding.subject)) {
    Lever part = wider_part(question.site, row);
    const bool known = std::any_of(out.begin(), out.end(), [&](const Lever& one) { return one.path == part.path; });
    if (!part.path.empty() && !known && out.size() < most) out.push_back(std::move(part));
  }
  return out;
}

// ---- drops -------------------------------------------------------------------------------------------

/// The fastest that a delivery runs as studied [m3/s].
std::optional<double> rate_of(const checks::Studied& studied, const std::string& delivery) {
  std::optional<double> out;
  for (const studies::DeliveryResult& one : studied.deliveries) {
    if (one.delivery != delivery || one.runs.empty()) continue;
    for (const studies::DropTold& drop : one.runs.front().drops) out = std::max(out.value_or(0.0), drop.highest_rate);
  }
  return out;
}

/// Slower drops, in each delivery that the finding may be of.
void add_rates(const LeverQuestion& question, std::vector<Lever>& out) {
  const bool of_delivery = !path_of(question.site, PartOf::delivery, question.finding.subject).empty();
  for (const PartPath& one : part_paths(question.site, PartOf::delivery)) {
    if (of_delivery && question.finding.subject != one.subject) continue;
    const std::optional<double> rate = rate_of(question.studied, one.subject);
    out.push_back(less(one.path + ".rate", "drop more slowly", Grid::drop_flow, rate));
  }
}

std::vector<Lever> of_order(const LeverQuestion& question) {
  std::vector<Lever> out;
  for (const site::Delivery& delivery : question.site.deliveries) {
    const std::string path = path_of(question.site, PartOf::delivery, delivery.id.text);
    for (const site::TruckCompartment& from : delivery.compartments) {
      if (from.tank.text != question.finding.subject) continue;
      const std::string name =
          from.id.empty() ? std::to_string(&from - delivery.compartments.data() + 1) : from.id.text;
      Lever one =
          less(fmt::format("{}.compartment.{}.volume", path, name), "order less in compartment " + name, Grid::order);
      one.one_to_one = true;
      out.push_back(std::move(one));
    }
  }
  return out;
}

std::vector<Lever> of_truck(const LeverQuestion& question) {
  std::vector<Lever> out;
  add_rates(question, out);
  for (const PartPath& one : part_paths(question.site, PartOf::delivery)) {
    if (one.subject == question.finding.subject)
      out.push_back(wider(one.path + ".vapor_hose", "use a wider vapor hose"));
  }
  for (const PartPath& one : part_paths(question.site, PartOf::tank)) {
    out.push_back(wider(one.path + ".vapor_return.pipe", "lay a wider vapor return of tank " + one.subject));
  }
  return out;
}

// ---- overfill ----------------------------------------------------------------------------------------

std::vector<Lever> of_overfill(const LeverQuestion& question) {
  std::vector<Lever> out;
  const std::string tank = path_of(question.site, PartOf::tank, question.finding.subject);
  for (const PartPath& one : part_paths(question.site, PartOf::fill)) {
    if (one.owner != question.finding.subject) continue;
    const std::string valve = one.path + ".overfill_valve";
    out.push_back(less(valve + ".closes_at", "set the overfill valve to shut lower", Grid::eighth));
    out.push_back(less(valve + ".restricts_at", "let the overfill valve act lower", Grid::eighth));
  }
  if (tank.empty()) return out;
  out.push_back(less(tank + ".overfill_alarm.at_depth", "set the alarm lower", Grid::eighth));
  out.push_back(less(tank + ".overfill_alarm.at_share", "set the alarm lower", Grid::percent));
  out.push_back(set_to(tank + ".overfill_alarm.heard_at_fill", "let the alarm be heard at the fill", "true"));
  return out;
}

// ---- lists, marks, and what is moved ------------------------------------------------------------------

/// A list as a site file has it.
std::string listed(const std::vector<std::string>& ids) {
  std::string out = "[";
  for (const std::string& id : ids) out.append(out.size() == 1 ? "\"" : ", \"").append(id).append("\"");
  return out + "]";
}

/// An emergency stop that stops more pumps: all of them, or one more.
std::vector<Lever> of_stops(const LeverQuestion& question) {
  std::vector<Lever> out;
  const std::string& subject = question.finding.subject;
  const bool of_pump = question.of == "pump-stopped";
  for (const site::EmergencyStop& stop : question.site.emergency_stops) {
    if (!of_pump && stop.id.text != subject) continue;
    std::vector<std::string> ids;
    for (const site::Pump& pump : question.site.pumps) {
      const bool stopped = std::find(stop.stops.begin(), stop.stops.end(), pump.id) != stop.stops.end();
      if (!of_pump || stopped || pump.id.text == subject) ids.push_back(pump.id.text);
    }
    out.push_back(set_to(path_of(question.site, PartOf::stop, stop.id.text) + ".stops",
                         "wire " + stop.id.text + (of_pump ? " to stop the pump too" : " to stop all pumps"),
                         listed(ids)));
  }
  return out;
}

std::vector<Lever> of_mark(const LeverQuestion& question) {
  std::vector<Lever> out;
  const std::string path = path_of(question.site, PartOf::fill, question.finding.subject) + ".mark";
  for (const char* shape : {"circle", "hexagon", "pentagon"}) {
    out.push_back(set_to(path, std::string("mark the fill with a ") + shape, std::string("\"") + shape + "\""));
  }
  return out;
}

std::vector<Lever> of_seals(const LeverQuestion& question) {
  std::vector<Lever> out;
  for (const site::Dispenser& one : question.site.dispensers) {
    if (one.id.text != question.finding.subject || !one.sump) continue;
    const std::string path = path_of(question.site, PartOf::dispenser, one.id.text);
    for (const site::EntrySeal& seal : one.sump->seals) {
      const std::string name = seal.id.empty() ? std::to_string(&seal - one.sump->seals.data() + 1) : seal.id.text;
      out.push_back(set_to(fmt::format("{}.sump.seal.{}.tight", path, name), "mend entry seal " + name, "true"));
    }
  }
  return out;
}

/// More of the deadmen that are there.
std::vector<Lever> of_deadmen(const LeverQuestion& question) {
  std::vector<Lever> out;
  const std::string tank = path_of(question.site, PartOf::tank, question.finding.subject);
  for (const site::Tank& one : question.site.tanks) {
    if (one.id.text != question.finding.subject || !one.flotation) continue;
    for (std::size_t i = 1; i <= one.flotation->deadmen.size(); ++i) {
      out.push_back({tank + ".flotation.deadman." + std::to_string(i) + ".count",
                     "set more deadmen, by a licensed engineer", LeverKind::amount, Sense::more, Grid::count});
    }
  }
  return out;
}

std::vector<Lever> of_extinguishers(const LeverQuestion& question) {
  std::vector<Lever> out;
  const auto& all = question.site.extinguishers;
  for (const site::Extinguisher& one : all) {
    const std::string name = one.id.empty() ? std::to_string(&one - all.data() + 1) : one.id.text;
    add_moves("extinguisher." + name + ".position", "hang extinguisher " + name + " nearer", false, out);
  }
  return out;
}

std::vector<Lever> of_opening(const LeverQuestion& question) {
  std::vector<Lever> out;
  for (const PartPath& one : part_paths(question.site, PartOf::hose)) {
    if (one.subject != question.finding.subject) continue;
    add_moves(path_of(question.site, PartOf::dispenser, one.owner) + ".position",
              "move the dispenser, and lay its lines anew (their lengths are not changed here)", true, out);
  }
  return out;
}

std::vector<Lever> of_protected(const LeverQuestion& question, const char* key) {
  std::vector<Lever> out;
  for (const PartPath& one : part_paths(question.site, PartOf::fill)) {
    if (one.owner == question.finding.subject)
      out.push_back(less(one.path + ".overfill_valve." + key, "set the overfill valve lower", Grid::eighth));
  }
  return out;
}

}  // namespace

void add_moves(const std::string& path, const std::string& words, bool last, std::vector<Lever>& out) {
  for (const auto& [x, y] : {std::pair(1.0, 0.0), std::pair(-1.0, 0.0), std::pair(0.0, 1.0), std::pair(0.0, -1.0)}) {
    Lever one{path, words, LeverKind::place, Sense::more, Grid::half_foot, true};
    one.x = x;
    one.y = y;
    one.last = last;
    out.push_back(std::move(one));
  }
}

std::vector<Lever> own_levers(const LeverQuestion& question) {
  const std::string& of = question.of;
  if (of.starts_with("hose-flow-") || is_one_of(of, {"flow|nozzle-flow-cap", "flow|flow-to-keep"})) {
    return of_flow(question);
  }
  if (of == "delivery|delivery-room") return of_order(question);
  if (is_one_of(of, {"delivery|truck-pressure", "delivery|truck-vacuum"})) return of_truck(question);
  if (is_one_of(
          of, {"delivery|fill-velocity", "delivery|fill-velocity-start", "delivery|vent-size", "vent-size-for-flow"})) {
    std::vector<Lever> out;
    add_rates(question, out);
    return out;
  }
  if (of == "tank|overfill-prevention") return of_overfill(question);
  if (is_one_of(of, {"pump-stopped", "stop-leaves-running"})) return of_stops(question);
  if (of == "fill-mark-fits") return of_mark(question);
  if (of == "dispenser-sump-tight") return of_seals(question);
  if (of == "flotation|flotation-factor-empty") return of_deadmen(question);
  if (is_one_of(of, {"extinguisher-2a-20bc-reach", "extinguisher-6bc-reach"})) return of_extinguishers(question);
  if (of == "nozzle-to-opening") return of_opening(question);
  if (is_one_of(of, {"protected-shutoff-share", "protected-slow-dry"})) return of_protected(question, "closes_at");
  if (of == "protected-slow-time") return of_protected(question, "restricts_at");
  return {};
}

}  // namespace forecourse::decide
