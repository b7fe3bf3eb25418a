#pragma once

#include <string>

#include "studies/worst/invented_station.h"

namespace forecourse::test {

/// A line of the site file; `thin` lines tie the hoses strongly to each other.
inline std::string blended_line(Draws& draws, const std::string& id, const std::string& from, const std::string& to,
                                bool thin) {
  const double bore = thin ? draws.between(1.0, 1.3) : draws.between(1.6, 2.2);
  return "[[line]]\nid = \"" + id + "\"\nfrom = \"" + from + "\"\nto = \"" + to +
         "\"\nlength = " + quantity(draws.between(15.0, 80.0), "ft") + "\nbore = " + quantity(bore, "in") +
         "\nroughness = \"0.01 mm\"\nloss = " + std::to_string(draws.between(0.5, 4.0)) + "\n";
}

/// A made-up station of two products; every dispenser has a hose of each and one that blends them.
inline std::string blended_station(Draws& draws, bool thin, int dispensers) {
  const char* products[] = {"regular", "premium"};
  std::string text = "format = 1\n[site]\nname = \"Invented\"\n";
  std::string last[] = {"Pregular", "Ppremium"};
  for (const std::string product : products) {
    text += "[[product]]\nid = \"" + product +
            "\"\nkind = \"gasoline-e0\"\ndensity = \"740 kg/m3\"\nviscosity = \"0.50 mPa.s\"\n[[tank]]\nid = \"T" +
            product + "\"\nproduct = \"" + product + "\"\n[[pump]]\nid = \"P" + product + "\"\ntank = \"T" + product +
            "\"\ncheck_valve = true\ncurve = { shutoff = " + quantity(draws.between(26.0, 34.0), "psi") +
            ", per_flow_squared = " + quantity(draws.between(0.0015, 0.004), "psi/gpm^2") + " }\n";
  }
  for (int d = 1; d <= dispensers; ++d) {
    const std::string name = "D" + std::to_string(d);
    std::string parts = "[[dispenser]]\nid = \"" + name + "\"\n";
    for (int p = 0; p < 2; ++p) {
      const std::string product = products[p];
      const std::string inlet = name + "." + product;
      text += blended_line(draws, product + "-" + std::to_string(d), last[p], inlet, thin);
      last[p] = inlet;
      parts += "  [[dispenser.inlet]]\n  product = \"" + product +
               "\"\n  riser = { length = \"4 ft\", bore = \"1.61 in\", roughness = \"0.01 mm\", loss = " +
               std::to_string(draws.between(2.0, 6.0)) + " }\n";
    }
    for (const std::string hose : {"regular", "middle", "premium"}) {
      const int share = static_cast<int>(draws.between(30.0, 70.0));
      const std::string of = hose != "middle" ? "product = \"" + hose + "\""
                                              : "blend = [{ product = \"regular\", share = \"" + std::to_string(share) +
                                                    " %\" }, { product = \"premium\", share = \"" +
                                                    std::to_string(100 - share) + " %\" }]";
      parts += "  [[dispenser.hose]]\n  id = \"" + name + "." + hose + "\"\n  " + of +
               "\n  loss = " + quantity(draws.between(0.10, 0.25), "psi/gpm^2") +
               "\n  lift = " + quantity(draws.between(9.0, 13.0), "ft") + "\n";
    }
    text += parts;
  }
  return text;
}

}  // namespace forecourse::test
