#pragma once

#include <optional>
#include <string>

#include "forecourse/site/site.h"

namespace forecourse::studies {

/// A rule's limit on the flow of a hose.
struct FlowCap {
  double flow = 0.0;  ///< [m3/s]
  std::string clause;
};

/// The limit on a hose of a product under the rules the site lives under; empty if none applies.
/// SOURCE: [cfr_1090_1550, paragraph (b)] 10 gallons per minute for gasoline into motor vehicles.
[[nodiscard]] std::optional<FlowCap> flow_cap(const site::Site& site, const std::string& product);

}  // namespace forecourse::studies
