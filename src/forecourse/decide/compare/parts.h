#pragma once

#include <string>
#include <vector>

#include "forecourse/site/site.h"

namespace forecourse::decide {

/// A part of a station by its kind and id.
struct OnePart {
  std::string kind;  ///< "line"
  std::string id;

  friend bool operator==(const OnePart&, const OnePart&) = default;
};

/// Every product, tank, pump, line, branch, dispenser, inlet and hose of a station.
[[nodiscard]] std::vector<OnePart> parts_of(const site::Site& site);

/// Those of `site` that `other` does not have.
[[nodiscard]] std::vector<OnePart> parts_only_in(const site::Site& site, const site::Site& other);

}  // namespace forecourse::decide
