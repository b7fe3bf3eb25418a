#include "report/flow_sample.h"

#include <array>
#include <limits>
#include <utility>

#include "forecourse/base/unit_text.h"

namespace forecourse::report {
namespace {

using network::ElementKind;
using studies::BudgetRow;
using studies::FlowState;
using studies::HoseFlow;
using studies::SystemFlow;

double gpm(double flow) { return to_si(flow, "gpm"); }
double psi(double pressure) { return to_si(pressure, "psi"); }
double feet(double length) { return to_si(length, "ft"); }
double feet_per_second(double velocity) { return to_si(velocity, "ft/s"); }

constexpr double feet_per_psi = 3.1175;  // of the sample's fuel, rounded
constexpr double lift_psi = 3.85;        // 12 ft

struct SampleHose {
  const char* id;
  const char* dispenser;
  int stop;  ///< 1, 2, 3 along the line
  double flow;
};

/// Losses along the way in psi, from the trunk on; what is over goes to the hose.
struct SampleLosses {
  double pump;
  double trunk;
  std::array<double, 2> gaps;
  double riser;
};

std::vector<BudgetRow> budget(const SampleHose& h, const SampleLosses& l, double total) {
  std::vector<BudgetRow> rows;
  double left = l.pump;
  const auto take = [&](ElementKind kind, const char* part, const std::string& owner, double flow, double velocity,
                        double loss) {
    rows.push_back({kind, part, owner, gpm(flow), feet_per_second(velocity), psi(loss)});
    left -= loss;
  };
  rows.push_back({ElementKind::pump, "pump", "P1", gpm(total), 0.0, psi(-l.pump)});
  take(ElementKind::line, "line", "trunk", total, total * 0.1021, 0.62 * l.trunk);
  take(ElementKind::line, "line", "trunk", total, 0.0, 0.38 * l.trunk);
  for (int gap = 1; gap < h.stop; ++gap) {
    const auto i = static_cast<std::size_t>(gap - 1);
    take(ElementKind::line, "line", "gap-" + std::to_string(gap), total * (3 - gap) / 3.0,
         total * (3 - gap) / 3.0 * 0.1021, l.gaps[i]);
  }
  const std::string inlet = std::string(h.dispenser) + ".regular";
  take(ElementKind::riser, "riser", inlet, 2.0 * h.flow, 2.0 * h.flow * 0.1576, l.riser);
  const double hose = left - lift_psi;
  take(ElementKind::hose_set, "dispenser and hose", h.id, h.flow, 0.0, hose);
  take(ElementKind::nozzle, "lift", h.id, h.flow, 0.0, lift_psi);
  return rows;
}

std::vector<studies::GradePoint> grade_line(const SampleHose& h, const SampleLosses& l) {
  std::vector<studies::GradePoint> points;
  double left = l.pump;
  const auto add = [&](const std::string& place, double distance, double elevation, double head) {
    points.push_back({place, feet(distance), feet(elevation), feet(head), psi((head - elevation) / feet_per_psi)});
  };
  add("T1", 0.0, 0.0, 0.0);
  add("P1", 0.0, 3.0, left * feet_per_psi);
  left -= l.trunk;
  add("D1.regular", 150.0, 6.0, left * feet_per_psi);
  for (int stop = 2; stop <= h.stop; ++stop) {
    left -= l.gaps[static_cast<std::size_t>(stop - 2)];
    add("D" + std::to_string(stop) + ".regular", 150.0 + 25.0 * (stop - 1), 6.0, left * feet_per_psi);
  }
  add(h.id, 154.0 + 25.0 * (h.stop - 1), 12.0, 12.0);
  return points;
}

HoseFlow hose(const SampleHose& h, const SampleLosses& l, double total) {
  HoseFlow out;
  out.id = h.id;
  out.dispenser = h.dispenser;
  out.open = h.flow > 0.0;
  out.flow = out.hose_flow = gpm(h.flow);
  out.rule_cap = gpm(10.0);
  out.rule_clause = "40 CFR 1090.1550(b)";
  out.above_rule_cap = h.flow > 10.0;
  out.below_keep_flow = out.open && h.flow < 9.6;
  out.pressure_gauge = psi(l.pump - l.trunk - 6.0 / feet_per_psi);
  if (!out.open) return out;
  out.budget = budget(h, l, total);
  out.grade_line = grade_line(h, l);
  return out;
}

FlowState state(const char* name, const std::array<double, 3>& first, bool both, const SampleLosses& l) {
  FlowState out;
  out.open_set.name = name;
  SystemFlow s;
  s.system = "regular";
  s.product = "regular";
  s.status = studies::FlowStatus::determined;
  const double total = (first[0] + first[1] + first[2]) * (both ? 2.0 : 1.0);
  s.total_flow = gpm(total);
  constexpr std::array<const char*, 6> ids{"D1.a", "D1.b", "D2.a", "D2.b", "D3.a", "D3.b"};
  constexpr std::array<const char*, 3> dispensers{"D1", "D2", "D3"};
  for (std::size_t i = 0; i < ids.size(); ++i) {
    const double flow = i % 2 == 0 || both ? first[i / 2] : 0.0;
    s.hoses.push_back(hose({ids[i], dispensers[i / 2], static_cast<int>(i / 2) + 1, flow}, l, total));
    if (flow > 0.0) out.open_set.hoses.emplace_back(ids[i]);
  }
  const double discharge = psi(l.pump - 3.0 / feet_per_psi);
  s.pumps.push_back({"P1", "T1", true, gpm(total), psi(l.pump), discharge, discharge - psi(0.2), false});
  s.pumps.push_back({"P2", "T2", true, 0.0, psi(22.0), discharge, std::nullopt, true});
  s.places = {{"P1", feet(3.0), discharge},
              {"D1.regular", feet(6.0), psi(l.pump - l.trunk - 6.0 / feet_per_psi)},
              {"D2.regular", feet(6.0), psi(l.pump - l.trunk - l.gaps[0] - 6.0 / feet_per_psi)},
              {"D3.regular", feet(6.0), psi(l.pump - l.trunk - l.gaps[0] - l.gaps[1] - 6.0 / feet_per_psi)},
              {"stub", feet(6.0), std::numeric_limits<double>::quiet_NaN()}};
  s.lines = {{"trunk", gpm(total), feet_per_second(total * 0.1021), psi(l.trunk)},
             {"gap-1", gpm(total * 2.0 / 3.0), feet_per_second(total * 0.0681), psi(l.gaps[0])},
             {"gap-2", gpm(total / 3.0), feet_per_second(total * 0.0340), psi(l.gaps[1])}};
  s.iterations = 6;
  s.pressure_residual = 2e-9;
  s.flow_residual = 1e-17;
  out.systems.push_back(std::move(s));
  return out;
}

/// Held against the sample's cap of 10 gpm and its flow to keep of 9.6 gpm.
studies::SummaryFlow summary(double flow) { return {gpm(flow), false, flow > 10.0, flow < 9.6}; }

}  // namespace

studies::FlowResult sample_result() {
  studies::FlowResult r;
  r.version = "0.1.0";
  r.options.keep_flow = gpm(9.6);
  r.systems.push_back({"regular", "regular", 740.0, 0.50e-3, to_si(60.0, "degF", Datum::thermometer), true, 6, 2});
  constexpr std::array<const char*, 6> ids{"D1.a", "D1.b", "D2.a", "D2.b", "D3.a", "D3.b"};
  constexpr std::array<const char*, 3> dispensers{"D1", "D2", "D3"};
  constexpr std::array<double, 3> alone{12.28, 12.26, 12.25};
  constexpr std::array<double, 3> each{11.48, 11.46, 11.45};
  constexpr std::array<double, 3> all{9.68, 9.60, 9.58};
  for (std::size_t i = 0; i < ids.size(); ++i) {
    studies::HoseSummary h{ids[i], dispensers[i / 2], "regular", summary(alone[i / 2]), {}, summary(all[i / 2])};
    if (i % 2 == 0) h.one_each = summary(each[i / 2]);
    r.hoses.push_back(std::move(h));
  }
  r.states.push_back(state("all hoses open", all, true, {23.34, 3.24, {0.26, 0.08}, 0.21}));
  r.states.push_back(
      state("one hose of each product at each dispenser", each, false, {27.64, 1.20, {0.10, 0.03}, 0.08}));
  for (const FlowState& s : r.states) r.options.open_sets.push_back(s.open_set);
  r.defaults = {{"roughness of line trunk", 1.5e-6, "m", DefaultStatus::published,
                 "plastic pipe, smooth [key2020, table 2]", "regular"},
                {"roughness of line gap-1", 1.5e-6, "m", DefaultStatus::published,
                 "plastic pipe, smooth [key2020, table 2]", "regular"},
                {"temperature of regular", to_si(60.0, "degF", Datum::thermometer), "K", DefaultStatus::common_practice,
                 "the reference temperature; enter ground_temperature", "regular"},
                {"bore of the whip hose of D1.a", to_si(0.75, "in"), "m", DefaultStatus::illustrative,
                 "a usual size; enter the hose's own bore", "regular"}};
  const std::string text = sample_text();
  const auto begin = static_cast<std::uint32_t>(text.find("\"150 ft\""));
  r.warnings.push_back({Severity::warning,
                        "the trunk is 150 ft long, but its ends are 182 ft apart on the plan",
                        SourceSpan{0, begin, begin + 8},
                        "check the length or the positions",
                        {}});
  return r;
}

site::Site sample_site(site::Display display, const std::string& name) {
  site::Site site;
  site.name.text = name;
  site.display = display;
  return site;
}

void add_undetermined(studies::FlowResult& result) {
  result.systems.push_back({"diesel", "diesel", std::numeric_limits<double>::quiet_NaN(),
                            std::numeric_limits<double>::quiet_NaN(), 288.7, false, 1, 1});
  result.hoses.push_back({"D3.d", "D3", "diesel", {}, {}, {}});
  for (FlowState& s : result.states) {
    SystemFlow system;
    system.system = system.product = "diesel";
    system.reason = "the viscosity of diesel is neither entered nor known for its kind";
    s.systems.push_back(std::move(system));
  }
  result.warnings.push_back({Severity::error,
                             "the viscosity of diesel is neither entered nor known for its kind",
                             std::nullopt,
                             "enter viscosity = \"3.0 mPa.s\"",
                             {}});
}

std::string sample_text() {
  return "format = 1\n\n[site]\nname = \"Site S\"\n\n[[line]]\nid = \"trunk\"\nfrom = \"P1\"\nto = \"D1.regular\"\n"
         "length = \"150 ft\"\nbore = \"2.00 in\"\nloss = 4\n";
}

}  // namespace forecourse::report
