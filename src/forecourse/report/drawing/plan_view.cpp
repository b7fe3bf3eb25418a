#include "forecourse/report/drawing/plan_view.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "forecourse/report/drawing/tone.h"
#include "forecourse/report/html/parts.h"
#include "forecourse/report/units.h"
#include "forecourse/site/places.h"

namespace forecourse::report::drawing {
namespace {

using site::Position;
using site::Site;

const site::Tank* tank_of(const Site& site, const site::Pump& pump) {
  for (const site::Tank& tank : site.tanks) {
    if (tank.id == pump.tank) return &tank;
  }
  return nullptr;
}

/// Its own position, or that of the tank it stands on.
std::optional<Position> position_of(const Site& site, const site::Pump& pump) {
  if (pump.position) return pump.position;
  const site::Tank* tank = tank_of(site, pump);
  return tank == nullptr ? std::nullopt : tank->position;
}

std::optional<Position> position_of(const Site& site, const std::string& place) {
  for (const site::Pump& pump : site.pumps) {
    if (pump.id.text == place) return position_of(site, pump);
  }
  for (const site::Branch& branch : site.branches) {
    if (branch.id.text == place) return branch.position;
  }
  for (const site::Dispenser& d : site.dispensers) {
    for (const site::Inlet& inlet : d.inlets) {
      if (site::place_name(d, inlet) == place) return d.position;
    }
  }
  return std::nullopt;
}

/// Order of the product in the site file: its lane beside the others.
int lane_of(const Site& site, const std::string& product) {
  const auto found = std::find_if(site.products.begin(), site.products.end(),
                                  [&](const site::Product& p) { return p.id.text == product; });
  return static_cast<int>(found - site.products.begin()) - static_cast<int>(site.products.size() - 1) / 2;
}

bool is_open(const studies::FlowState& state, const std::string& hose) {
  const auto& open = state.open_set.hoses;
  return std::find(open.begin(), open.end(), hose) != open.end();
}

void add_marks(const Site& site, const studies::FlowState& state, Plan& plan) {
  const auto add = [&](MarkKind kind, svg::Shows shows, const site::Name& name, const std::optional<Position>& at) {
    shows.part += name.text;
    if (at) plan.marks.push_back({kind, name.text, at->x.si(), at->y.si(), {}, std::move(shows)});
    return at.has_value();
  };
  for (const site::Tank& tank : site.tanks) add(MarkKind::tank, {3, "tank."}, tank.id, tank.position);
  for (const site::Pump& pump : site.pumps) add(MarkKind::pump, {4, "pump."}, pump.id, pump.position);
  for (const site::Branch& branch : site.branches) add(MarkKind::branch, {5, "branch."}, branch.id, branch.position);
  for (const site::Dispenser& d : site.dispensers) {
    if (!add(MarkKind::dispenser, {8, "dispenser."}, d.id, d.position)) continue;
    for (const site::Hose& hose : d.hoses) plan.marks.back().hoses.push_back(is_open(state, hose.id.text));
  }
}

double largest_flow(const studies::FlowState& state) {
  double largest = 0.0;
  for (const studies::SystemFlow& system : state.systems) {
    for (const studies::LineFlow& line : system.lines) largest = std::max(largest, std::abs(line.flow));
  }
  return largest;
}

void add_runs(const Site& site, const studies::SystemFlow& system, double largest, Plan& plan) {
  for (const studies::LineFlow& flow : system.lines) {
    const auto line =
        std::find_if(site.lines.begin(), site.lines.end(), [&](const site::Line& l) { return l.id.text == flow.id; });
    if (line == site.lines.end()) continue;
    const auto from = position_of(site, line->from.text);
    const auto to = position_of(site, line->to.text);
    if (!from || !to) continue;
    plan.runs.push_back({from->x.si(),
                         from->y.si(),
                         to->x.si(),
                         to->y.si(),
                         largest > 0.0 ? std::abs(flow.flow) / largest : 0.0,
                         tone_of(site, system.product),
                         lane_of(site, system.product),
                         {5, "line." + line->id.text}});
  }
}

html::Table positions(const Site& site, const studies::FlowState& state) {
  const std::string unit = unit_label(Measure::length, site.display);
  html::Table table{"Positions on the plan",
                    "From the site's own origin.",
                    {{"What", ""}, {"To the right", unit, true}, {"Upward", unit, true}, {"Hoses", "", false, true}},
                    {},
                    {}};
  const Plan plan = plan_of(site, state, "");
  for (const PlanMark& m : plan.marks) {
    const auto open = std::count(m.hoses.begin(), m.hoses.end(), true);
    table.rows.push_back(
        {{m.name, number(Measure::length, site.display, m.x), number(Measure::length, site.display, m.y),
          m.hoses.empty() ? "" : std::to_string(open) + " of " + std::to_string(m.hoses.size()) + " open"}});
  }
  return table;
}

std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& word : words) out += (out.empty() ? "" : ", ") + word;
  return out;
}

}  // namespace

Plan plan_of(const Site& site, const studies::FlowState& state, const std::string& id) {
  Plan plan;
  plan.id = id;
  plan.title = "Plan, with " + state.open_set.name;
  plan.unit = 1.0 / shown_value(Measure::length, site.display, 1.0);
  plan.unit_name = unit_label(Measure::length, site.display);
  add_marks(site, state, plan);
  const double largest = largest_flow(state);
  plan.widest = with_unit(Measure::flow, site.display, largest);
  for (const studies::SystemFlow& system : state.systems) {
    add_runs(site, system, largest, plan);
    const bool known = system.status == studies::FlowStatus::determined;
    plan.products.push_back({system.system, tone_of(site, system.product),
                             known ? with_unit(Measure::flow, site.display, system.total_flow) : "not determined"});
  }
  plan.description =
      "Tanks, lines and dispensers where they were entered; the tables hold the positions and the flows.";
  return plan;
}

std::vector<std::string> without_position(const Site& site) {
  std::vector<std::string> out;
  for (const site::Tank& tank : site.tanks) {
    if (!tank.position) out.push_back(tank.id.text);
  }
  for (const site::Branch& branch : site.branches) {
    if (!branch.position) out.push_back(branch.id.text);
  }
  for (const site::Dispenser& d : site.dispensers) {
    if (!d.position) out.push_back(d.id.text);
  }
  return out;
}

std::vector<std::string> plan_remarks(const Site& site) {
  std::vector<std::string> out{
      "To one scale; lines are straight between the places entered, since their way is not, and as wide as their flow.",
      "Each disc under a dispenser is an open hose, a ring a shut one.",
      "Tanks are marked at their position, without their direction.", "North was not entered."};
  const std::vector<std::string> missing = without_position(site);
  if (!missing.empty()) {
    out.push_back("Without a position, so not drawn with the lines that lead there: " + joined(missing) + ".");
  }
  return out;
}

std::string plan_figure(const Site& site, const studies::FlowState& state, const std::string& id) {
  const Plan plan = plan_of(site, state, id);
  const std::string svg = draw(plan);
  if (svg.empty())
    return html::paragraph("No plan is drawn: positions of two places or more were not entered.", "quiet");
  std::string note = "The widest line carries " + plan.widest + ".";
  for (const std::string& remark : plan_remarks(site)) note += " " + remark;
  return html::drawing(plan.title, note, svg) + html::table(positions(site, state));
}

}  // namespace forecourse::report::drawing
