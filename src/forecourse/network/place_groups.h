#pragma once

#include <string>
#include <vector>

#include "forecourse/site/site.h"

namespace forecourse::network {

/// An inlet with the dispenser it belongs to.
struct InletAt {
  const site::Dispenser* dispenser = nullptr;
  const site::Inlet* inlet = nullptr;
};

/// What of a site hangs together by its lines.
struct PlaceGroup {
  std::string product;
  std::vector<const site::Pump*> pumps;
  std::vector<const site::Branch*> branches;
  std::vector<InletAt> inlets;
  std::vector<const site::Line*> lines;
};

/// The groups that have a pump or a dispenser inlet, in the order of their first pump.
[[nodiscard]] std::vector<PlaceGroup> place_groups(const site::Site& site);

}  // namespace forecourse::network
