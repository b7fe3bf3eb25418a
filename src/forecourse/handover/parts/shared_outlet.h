#pragma once

#include <vector>

#include "forecourse/site/site.h"

namespace forecourse::handover {

/// A vent, and the tank that breathes through it.
struct TankVent {
  const site::Tank* tank = nullptr;
  const site::Vent* vent = nullptr;
};

/// The vents that end in the outlet of this one, itself among them, in the order of the file.
[[nodiscard]] std::vector<TankVent> vents_sharing(const site::Site& site, const site::Vent& vent);

/// That of them where the outlet is listed as a part: where its pipe or valve is entered first, else the first.
[[nodiscard]] TankVent outlet_of(const site::Site& site, const site::Vent& vent);

/// What is entered of an outlet: at this vent, else at another that shares it.
template <class Value>
[[nodiscard]] Value of_outlet(const site::Site& site, const site::Vent& vent, Value site::Vent::*key) {
  if (vent.*key) return vent.*key;
  for (const TankVent& one : vents_sharing(site, vent)) {
    if (one.vent->*key) return one.vent->*key;
  }
  return {};
}

}  // namespace forecourse::handover
