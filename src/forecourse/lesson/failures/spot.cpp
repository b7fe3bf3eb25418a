#include "forecourse/lesson/failures/spot.h"

#include <algorithm>

#include "forecourse/site/places.h"

namespace forecourse::lesson {
namespace {

std::vector<Spot> every_inlet(const site::Site& site) {
  std::vector<Spot> out;
  for (const site::Dispenser& dispenser : site.dispensers) {
    for (const site::Inlet& inlet : dispenser.inlets) {
      out.push_back({site::place_name(dispenser, inlet), &dispenser, &inlet, nullptr});
    }
  }
  return out;
}

std::vector<Spot> every_hose(const site::Site& site) {
  std::vector<Spot> out;
  for (const site::Dispenser& dispenser : site.dispensers) {
    for (const site::Hose& hose : dispenser.hoses) {
      Spot spot{hose.id.text, &dispenser, nullptr, &hose};
      for (const site::Inlet& inlet : dispenser.inlets) {
        if (!hose.product.empty() && inlet.product == hose.product) spot.inlet = &inlet;
      }
      out.push_back(spot);
    }
  }
  return out;
}

/// Whether an id means this place: itself, its dispenser, or a hose behind the same inlet.
bool is_meant(const Spot& spot, const std::string& at) {
  if (spot.id == at || spot.dispenser->id.text == at) return true;
  if (spot.hose != nullptr) return spot.inlet != nullptr && site::place_name(*spot.dispenser, *spot.inlet) == at;
  const auto& of = spot.dispenser->hoses;
  return std::any_of(of.begin(), of.end(), [&](const site::Hose& hose) {
    return hose.id.text == at && spot.inlet != nullptr && hose.product == spot.inlet->product;
  });
}

/// 0 where the file has an incident of the kind, 1 where it has one of another, 2 elsewhere.
int rank_of(const site::Site& site, const Spot& spot, const std::string& kind) {
  int rank = 2;
  for (const site::IncidentRequest& one : site.incidents) {
    if (one.at.empty() || !is_meant(spot, one.at.text)) continue;
    rank = std::min(rank, one.kind.text == kind ? 0 : 1);
  }
  return rank;
}

std::vector<Spot> chosen(const site::Site& site, std::vector<Spot> all, const std::string& at, const char* kind,
                         Fits fits) {
  const bool any_meant =
      !at.empty() && std::any_of(all.begin(), all.end(), [&](const Spot& spot) { return is_meant(spot, at); });
  std::vector<Spot> out;
  for (const Spot& spot : all) {
    if ((!any_meant || is_meant(spot, at)) && !spot.id.empty() && fits(spot)) out.push_back(spot);
  }
  std::stable_sort(out.begin(), out.end(),
                   [&](const Spot& a, const Spot& b) { return rank_of(site, a, kind) < rank_of(site, b, kind); });
  return out;
}

}  // namespace

std::vector<Spot> inlets(const site::Site& site, const std::string& at, const char* kind, Fits fits) {
  return chosen(site, every_inlet(site), at, kind, fits);
}

std::vector<Spot> hoses(const site::Site& site, const std::string& at, const char* kind, Fits fits) {
  return chosen(site, every_hose(site), at, kind, fits);
}

bool has_shear_valve(const Spot& spot) { return spot.inlet != nullptr && spot.inlet->shear_valve.has_value(); }

bool is_any(const Spot&) { return true; }

const site::Tank* tank_at(const site::Site& site, const std::string& at) {
  for (const site::Tank& tank : site.tanks) {
    if (tank.id.text == at) return &tank;
    for (const site::Compartment& part : tank.compartments) {
      if (part.id.text == at) return &tank;
    }
    for (const site::Fill& fill : tank.fills) {
      if (!fill.id.empty() && fill.id.text == at) return &tank;
    }
  }
  for (const site::Pump& pump : site.pumps) {
    if (pump.id.text == at && pump.tank.text != at) return tank_at(site, pump.tank.text);
  }
  return nullptr;
}

std::string product_at(const site::Site& site, const std::string& at) {
  for (const site::Dispenser& dispenser : site.dispensers) {
    for (const site::Inlet& inlet : dispenser.inlets) {
      if (site::place_name(dispenser, inlet) == at) return inlet.product.text;
    }
  }
  for (const site::Pump& pump : site.pumps) {
    if (pump.id.text != at) continue;
    const site::Tank* tank = tank_at(site, pump.tank.text);
    return tank == nullptr ? std::string() : tank->product.text;
  }
  for (const site::Line& line : site.lines) {
    if (line.id.text != at) continue;
    for (const std::string& end : {line.to.text, line.from.text}) {
      if (end == at) continue;
      if (std::string product = product_at(site, end); !product.empty()) return product;
    }
  }
  return {};
}

}  // namespace forecourse::lesson
