#include "forecourse/handover/parts/shared_outlet.h"

#include <algorithm>

namespace forecourse::handover {

std::vector<TankVent> vents_sharing(const site::Site& site, const site::Vent& vent) {
  std::vector<TankVent> out;
  for (const site::Tank& tank : site.tanks) {
    for (const site::Vent& one : tank.vents) {
      const bool shares = !vent.shared.empty() && one.shared == vent.shared;
      if (shares || &one == &vent) out.push_back({&tank, &one});
    }
  }
  return out;
}

TankVent outlet_of(const site::Site& site, const site::Vent& vent) {
  const std::vector<TankVent> all = vents_sharing(site, vent);
  const auto has_it = [](const TankVent& one) { return one.vent->pipe || one.vent->valve; };
  const auto found = std::find_if(all.begin(), all.end(), has_it);
  return found == all.end() ? all.front() : *found;
}

}  // namespace forecourse::handover
