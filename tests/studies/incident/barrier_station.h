#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "forecourse/studies/incident/barriers/barrier_states.h"
#include "studies/incident/incident_ground.h"

namespace forecourse::test {

/// What can be changed of an invented station: two products, a pump each, one dispenser with two inlets.
struct BarrierStation {
  std::string valve =
      R"(poppet = "double", anchored = true, groove_elevation = "6 in", tested = 2026-03-12, fusible_link = "165 degF", response_index = 100)";
  std::string sump =
      R"(kind = "box", floor = ["20 in", "30 in"], depth = "30 in", tight = true, tested = 2026-03-12, sensor = { id = "S1", height = "2 in", tested = 2026-03-12 })";
  std::string pump =
      R"(check_valve = true
leak_detector = { kind = "mechanical", detects = "3 gph", at = "10 psi", tested = 2026-03-12 })";
  std::string hose = R"(breakaway = { loss = "0.012 psi/gpm^2" }
  whip = { length = "12 in", bore = "0.75 in", roughness = "0.0015 mm" }
  parting = { pull = "250 lbf", poppet = "double", reconnectable = true, installed = 2026-01-10 }
  curb = { length = "9 ft", bore = "0.75 in", roughness = "0.0015 mm" }
  nozzle = { loss = "0.05 psi/gpm^2" })";
  std::string line = {};
  std::string tank = {};
  std::string more = R"(
[[emergency_stop]]
id = "E1"
stops = ["P1", "P2"]
by_whom = "attendant"
tested = 2026-03-12

[[interlock]]
id = "I1"
when = "S1"
then = "stop"
what = ["P1", "P2"]
tested = 2026-03-12
)";

  [[nodiscard]] std::string text() const {
    std::string out = "format = 1\n[site]\nname = \"Two products (invented)\"\n";
    for (const std::string product : {"regular", "diesel"}) {
      out += "[[product]]\nid = \"" + product + "\"\ndensity = \"740 kg/m3\"\nviscosity = \"0.50 mPa.s\"\n";
    }
    for (const std::string n : {"1", "2"}) out += piping(n, n == "1" ? "regular" : "diesel");
    out += "[[dispenser]]\nid = \"D1\"\nelevation = \"6 in\"\n" + (sump.empty() ? "" : "sump = { " + sump + " }\n");
    for (const std::string product : {"regular", "diesel"}) out += inlet(product);
    for (const std::string product : {"regular", "diesel"}) {
      out += "  [[dispenser.hose]]\n  id = \"D1." + product + "-a\"\n  product = \"" + product +
             "\"\n  lift = \"12 ft\"\n  " + hose + "\n";
    }
    return out + more;
  }

 private:
  [[nodiscard]] std::string piping(const std::string& n, const std::string& product) const {
    return "[[tank]]\nid = \"T" + n + "\"\nproduct = \"" + product + "\"\nsurface_elevation = \"-8 ft\"\n" + tank +
           "[[pump]]\nid = \"P" + n + "\"\ntank = \"T" + n +
           "\"\ncurve = { shutoff = \"30 psi\", per_flow_squared = \"0.0020 psi/gpm^2\" }\n" + pump +
           "\n[[line]]\nid = \"L" + n + "\"\nfrom = \"P" + n + "\"\nto = \"D1." + product +
           "\"\nlength = \"150 ft\"\nbore = \"2 in\"\nroughness = \"0.0015 mm\"\nloss = 4\n" + line;
  }

  [[nodiscard]] std::string shear_valve() const {
    if (valve.empty()) return {};
    const bool placed = valve.find("groove_elevation") != std::string::npos;
    return "  shear_valve = { " + std::string(placed ? "" : "groove_lift = \"9 ft\", ") + valve + " }\n";
  }

  [[nodiscard]] std::string inlet(const std::string& product) const {
    return "  [[dispenser.inlet]]\n  product = \"" + product +
           "\"\n  connection = \"tee\"\n  riser = { length = \"4 ft\", bore = \"1.61 in\", roughness = \"0.0015 mm\", "
           "loss = 4 }\n  loss_to_groove = 3.7\n  discharge_loss = 1.0\n" +
           shear_valve();
  }
};

/// The states of one barrier.
inline std::vector<studies::BarrierState> states_of(const studies::Scene& scene, studies::Barrier barrier) {
  std::vector<studies::BarrierState> out;
  for (const studies::BarrierState& state : studies::barrier_states(scene)) {
    if (state.barrier == barrier) out.push_back(state);
  }
  return out;
}

/// Whether one of the texts holds these words.
inline bool any_holds(const std::vector<std::string>& texts, const std::string& words) {
  return std::any_of(texts.begin(), texts.end(),
                     [&](const std::string& text) { return text.find(words) != std::string::npos; });
}

}  // namespace forecourse::test
