#include "forecourse/lesson/questions/make/choke.h"

#include <algorithm>

#include "forecourse/base/unit_text.h"

namespace forecourse::lesson {
namespace {

/// What a clogged part takes besides, with the square of the flow.
site::EnteredLoss clogged(double psi_per_gpm_squared) {
  const double loss =
      to_si(psi_per_gpm_squared, "psi", Datum::difference) / (to_si(1.0, "gal/min") * to_si(1.0, "gal/min"));
  const SquareLoss entered = SquareLoss::from_si(loss);
  site::EnteredLoss out;
  out.per_flow_squared = site::Entered<SquareLoss>{entered, entered, entered, {}};
  return out;
}

site::Dispenser* dispenser_in(site::Site& site, const std::string& id) {
  for (site::Dispenser& one : site.dispensers) {
    if (one.id.text == id) return &one;
  }
  return nullptr;
}

/// Replaces a loss by one that is far larger; what was there is small beside it.
constexpr double stuck = 0.9;  // [psi/gpm^2] some 5 gpm at 25 psi

}  // namespace

const site::Inlet* inlet_of(const KnownHose& known) {
  for (const site::Inlet& inlet : known.dispenser->inlets) {
    if (inlet.product.text == known.product) return &inlet;
  }
  return nullptr;
}

Choke choke_of_hose(const KnownHose& known) {
  const std::string dispenser = known.dispenser->id.text;
  const std::string hose = known.hose->id.text;
  return [dispenser, hose](site::Site& site) {
    site::Dispenser* at = dispenser_in(site, dispenser);
    for (site::Hose& one : at->hoses) {
      if (one.id.text != hose) continue;
      if (one.loss) {
        one.loss = clogged(stuck);
      } else {
        one.nozzle = site::Part{};
        one.nozzle->loss = clogged(stuck);
      }
      return true;
    }
    return false;
  };
}

Choke choke_of_filter(const KnownHose& known) {
  const std::string dispenser = known.dispenser->id.text;
  const std::string product = known.product;
  return [dispenser, product](site::Site& site) {
    site::Dispenser* at = dispenser_in(site, dispenser);
    for (site::Inlet& inlet : at->inlets) {
      if (inlet.product.text != product || !inlet.filter) continue;
      inlet.filter = site::Part{};
      inlet.filter->loss = clogged(stuck);
      return true;
    }
    return false;
  };
}

Choke choke_of_pump(const KnownHose& known) {
  const std::string product = known.product;
  return [product](site::Site& site) {
    const std::vector<const site::Pump*> pumps = pumps_of(site, product);
    if (pumps.empty()) return false;
    for (site::Pump& pump : site.pumps) {
      if (std::find(pumps.begin(), pumps.end(), &pump) == pumps.end()) continue;
      const Ratio slower = Ratio::from_si(0.65 * (pump.speed ? pump.speed->likely.si() : 1.0));
      pump.speed = site::Entered<Ratio>{slower, slower, slower, {}};
    }
    return true;
  };
}

Choke choke_of_trunk(const KnownHose& known) {
  const std::string product = known.product;
  return [product](site::Site& site) {
    const std::vector<const site::Pump*> pumps = pumps_of(site, product);
    if (pumps.size() != 1) return false;
    for (site::Line& line : site.lines) {
      if (line.from.text != pumps.front()->id.text) continue;
      line.pipe.loss = clogged(0.05);
      return true;
    }
    return false;
  };
}

}  // namespace forecourse::lesson
