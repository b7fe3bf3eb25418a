#pragma once

#include <string>

#include "solvers/random_network.h"

namespace forecourse::test {

enum class Layout { tees, series, ring };

inline std::string quantity(double value, const char* unit) {
  return "\"" + std::to_string(value) + (unit[0] != '\0' ? std::string(" ") + unit : "") + "\"";
}

/// A line of the site file.
inline std::string line_between(Draws& draws, const std::string& id, const std::string& from, const std::string& to) {
  return "[[line]]\nid = \"" + id + "\"\nfrom = \"" + from + "\"\nto = \"" + to +
         "\"\nlength = " + quantity(draws.between(15.0, 80.0), "ft") +
         "\nbore = " + quantity(draws.between(1.7, 2.3), "in") +
         "\nroughness = \"0.01 mm\"\nloss = " + std::to_string(draws.between(0.5, 4.0)) + "\n";
}

inline std::string pump_of(Draws& draws, const std::string& id) {
  return "[[pump]]\nid = \"" + id +
         "\"\ntank = \"T1\"\ncheck_valve = true\ncurve = { shutoff = " + quantity(draws.between(28.0, 34.0), "psi") +
         ", per_flow_squared = " + quantity(draws.between(0.0012, 0.0025), "psi/gpm^2") + " }\n";
}

/// A hose; with the same stream of draws but `equal`, both hoses of a dispenser are alike.
inline std::string hose_of(Draws& draws, const std::string& id, bool limited, double loss, double lift) {
  return "  [[dispenser.hose]]\n  id = \"" + id +
         "\"\n  product = \"regular\"\n  loss = " + quantity(loss, "psi/gpm^2") + "\n  lift = " + quantity(lift, "ft") +
         "\n" + (limited ? "  limiter = " + quantity(draws.between(6.5, 10.0), "gpm") + "\n" : "");
}

/// A made-up station of one product: two unequal pumps, eight dispensers of two hoses; no two hoses are alike unless
/// `equal`. In `series` the line passes from dispenser to dispenser, in `tees` it passes branches off it, in `ring`
/// it comes back to the header.
inline std::string invented_station(Draws& draws, Layout layout, bool limited, bool equal = false, int dispensers = 8) {
  std::string text =
      "format = 1\n[site]\nname = \"Invented\"\n[[product]]\nid = \"regular\"\nkind = \"gasoline-e0\"\n"
      "density = \"740 kg/m3\"\nviscosity = \"0.50 mPa.s\"\n[[tank]]\nid = \"T1\"\nproduct = \"regular\"\n"
      "[[branch]]\nid = \"header\"\n" +
      pump_of(draws, "P1") + pump_of(draws, "P2") + line_between(draws, "leg-1", "P1", "header") +
      line_between(draws, "leg-2", "P2", "header");
  std::string last = "header";
  for (int d = 1; d <= dispensers; ++d) {
    const std::string number = std::to_string(d);
    const std::string inlet = "D" + number + ".regular";
    if (layout == Layout::tees) {
      const std::string branch = "B" + number;
      text += "[[branch]]\nid = \"" + branch + "\"\n" + line_between(draws, "gap-" + number, last, branch) +
              line_between(draws, "spur-" + number, branch, inlet);
      last = branch;
    } else {
      text += line_between(draws, "gap-" + number, last, inlet);
      last = inlet;
    }
    text += "[[dispenser]]\nid = \"D" + number + "\"\n  [[dispenser.inlet]]\n  product = \"regular\"\n" +
            "  riser = { length = \"4 ft\", bore = \"1.61 in\", roughness = \"0.01 mm\", loss = " +
            std::to_string(draws.between(2.0, 6.0)) + " }\n";
    double loss = draws.between(0.10, 0.25);
    double lift = draws.between(9.0, 13.0);
    const Draws kept = draws;
    text += hose_of(draws, "D" + number + ".a", limited, loss, lift);
    if (equal) draws = kept;
    if (!equal) loss = draws.between(0.10, 0.25);
    if (!equal) lift = draws.between(9.0, 13.0);
    text += hose_of(draws, "D" + number + ".b", limited, loss, lift);
  }
  if (layout == Layout::ring) text += line_between(draws, "back", last, "header");
  return text;
}

}  // namespace forecourse::test
