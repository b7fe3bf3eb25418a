#include "forecourse/store/records/site_names.h"

#include <fmt/format.h>

#include <algorithm>

#include "forecourse/site/text/read_run.h"

namespace forecourse::store {

SiteNames names_of(const site::Site& site) {
  SiteNames names;
  for (const site::Tank& tank : site.tanks) {
    if (tank.compartments.empty()) names.tanks.push_back(tank.id.text);
    for (const site::Compartment& part : tank.compartments) names.tanks.push_back(part.id.text);
  }
  for (const site::Dispenser& dispenser : site.dispensers) {
    for (const site::Hose& hose : dispenser.hoses) names.hoses.push_back(hose.id.text);
  }
  for (const site::Product& product : site.products) names.products.push_back(product.id.text);
  return names;
}

std::optional<CellFault> unknown_name(const SiteNames& names, const Column& column, const std::string& name) {
  if (column.name_of == NameOf::anything) return std::nullopt;
  const std::vector<std::string>& known = column.name_of == NameOf::tank   ? names.tanks
                                          : column.name_of == NameOf::hose ? names.hoses
                                                                           : names.products;
  if (std::ranges::find(known, name) != known.end()) return std::nullopt;
  const std::string_view noun = column.name_of == NameOf::tank   ? "tank"
                                : column.name_of == NameOf::hose ? "hose"
                                                                 : "product";
  return CellFault{fmt::format("the station has no {} '{}'", noun, site::shortened(name)),
                   site::offer(name, {known.begin(), known.end()}, "there are")};
}

}  // namespace forecourse::store
