#pragma once

#include <string>
#include <vector>

#include "forecourse/site/site.h"

namespace forecourse::decide {

/// What a finding's subject, or a lever, is a part of.
enum class PartOf {
  station,
  tank,
  fill,
  vent,
  pump,
  line,
  dispenser,
  inlet,
  hose,
  stop,
  delivery,
  processor,
  ignition
};

/// A part by the id that findings have, and by its path in the site file.
struct PartPath {
  std::string subject;  ///< "T1 fill 1", "D1.regular"
  std::string path;     ///< "tank.T1.fill.1", "dispenser.D1.inlet.regular"
  std::string owner;    ///< id of the tank or dispenser that it belongs to; empty: none
};

/// Every part of a kind, in the order of the file.
[[nodiscard]] std::vector<PartPath> part_paths(const site::Site& site, PartOf of);

/// The path of the part with this id; empty where there is none.
[[nodiscard]] std::string path_of(const site::Site& site, PartOf of, const std::string& subject);

}  // namespace forecourse::decide
