#include "forecourse/studies/gasoline.h"

#include <algorithm>
#include <set>
#include <string>

#include "forecourse/fuel/kinds.h"

namespace forecourse::studies {
namespace {

/// Ids of what the tanks hold, each once.
std::set<std::string> stored(const site::Site& site) {
  std::set<std::string> out;
  for (const site::Tank& tank : site.tanks) {
    if (tank.compartments.empty()) out.insert(tank.product.text);
    for (const site::Compartment& one : tank.compartments) out.insert(one.product.text);
  }
  return out;
}

std::optional<double> throughput_of(const site::Site& site, const std::string& product) {
  if (!site.operations) return std::nullopt;
  const auto& all = site.operations->throughput;
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const site::Throughput& one) { return one.product.text == product; });
  return found == all.end() || !found->per_month ? std::nullopt : std::optional(found->per_month->likely.si());
}

}  // namespace

const site::Product* product_of(const site::Site& site, const site::Name& id) {
  const auto found =
      std::find_if(site.products.begin(), site.products.end(), [&](const auto& one) { return one.id == id; });
  return found == site.products.end() ? nullptr : &*found;
}

std::optional<bool> is_gasoline(const site::Product* product) {
  const auto kind = product == nullptr ? std::nullopt : fuel::kind_from_name(product->kind.text);
  if (!kind || *kind == fuel::Kind::other) return std::nullopt;
  return fuel::is_gasoline(*kind);
}

std::optional<double> gasoline_throughput(const site::Site& site) {
  std::optional<double> sum;
  for (const std::string& id : stored(site)) {
    const std::optional<bool> gasoline = is_gasoline(product_of(site, {id, {}}));
    if (gasoline && !*gasoline) continue;
    const std::optional<double> one = throughput_of(site, id);
    if (!gasoline || !one) return std::nullopt;
    sum = sum.value_or(0.0) + *one;
  }
  return sum;
}

}  // namespace forecourse::studies
