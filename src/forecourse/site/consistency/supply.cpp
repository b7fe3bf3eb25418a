#include "forecourse/site/consistency/supply.h"

#include "forecourse/site/places.h"

namespace forecourse::site {

namespace {

/// The tanks and compartments by id, with what they hold.
struct Holder {
  const Tank* tank = nullptr;
  std::string product;
};

std::map<std::string, Holder> holders_of(const Site& site) {
  std::map<std::string, Holder> holders;
  for (const Tank& tank : site.tanks) {
    if (!tank.id.empty()) holders.emplace(tank.id.text, Holder{&tank, tank.product.text});
    for (const Compartment& compartment : tank.compartments) {
      if (!compartment.id.empty()) holders.emplace(compartment.id.text, Holder{nullptr, compartment.product.text});
    }
  }
  return holders;
}

}  // namespace

Supply::Supply(const Site& site, const LineGraph& graph) {
  const std::map<std::string, Holder> holders = holders_of(site);
  for (const Pump& pump : site.pumps) {
    const auto found = holders.find(pump.tank.text);
    const Holder holder = found == holders.end() ? Holder{} : found->second;
    const int place = graph.place(pump.id.text);
    sources_.push_back(
        {&pump, holder.tank, holder.product, place, place < 0 ? std::vector<bool>{} : graph.reached_from({place})});
  }
  for (const Dispenser& dispenser : site.dispensers) {
    for (const Inlet& inlet : dispenser.inlets) {
      const std::string name = place_name(dispenser, inlet);
      inlets_of_[&dispenser].push_back(inlets_.size());
      inlets_.push_back({&dispenser, &inlet, name, graph.place(name)});
    }
  }
}

std::vector<const InletPlace*> Supply::inlets_of(const Dispenser& dispenser) const {
  std::vector<const InletPlace*> inlets;
  const auto found = inlets_of_.find(&dispenser);
  if (found == inlets_of_.end()) return inlets;
  for (const std::size_t i : found->second) inlets.push_back(&inlets_[i]);
  return inlets;
}

std::vector<std::string> products_of(const Hose& hose) {
  std::vector<std::string> products;
  if (!hose.product.empty()) products.push_back(hose.product.text);
  for (const BlendShare& share : hose.blend) {
    if (!share.product.empty()) products.push_back(share.product.text);
  }
  return products;
}

}  // namespace forecourse::site
