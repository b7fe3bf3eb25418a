#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/site/site.h"
#include "forecourse/store/records/cell.h"

namespace forecourse::store {

/// The names a station has for what records speak of.
struct SiteNames {
  std::vector<std::string> tanks;  ///< with compartments
  std::vector<std::string> hoses;
  std::vector<std::string> products;
};

[[nodiscard]] SiteNames names_of(const site::Site& site);

/// What is wrong with a name that the station does not have.
[[nodiscard]] std::optional<CellFault> unknown_name(const SiteNames& names, const Column& column,
                                                    const std::string& name);

}  // namespace forecourse::store
