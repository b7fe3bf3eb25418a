#pragma once

#include <string>
#include <string_view>

#include "forecourse/base/quantity_kind.h"

namespace forecourse::server {

/// A quantity in US and in SI units; both empty where it cannot be read.
struct ShownValue {
  std::string us;
  std::string si;
};

/// A quantity as written, "2.00 in", in both unit systems. In the system it is written in it stays as it is; a length
/// in feet becomes one in meters, a length in inches one in millimeters.
[[nodiscard]] ShownValue shown_value(std::string_view written, const QuantityKind& kind);

/// A bare number of a kind that may be one, a share: "0.5 %".
[[nodiscard]] ShownValue shown_share(double number);

}  // namespace forecourse::server
