#pragma once

#include <string>
#include <vector>

namespace forecourse::network {

/// How well a value that nobody entered is known.
enum class DefaultStatus { published, common_practice, illustrative, computed };

/// A value that a computation needed, that the site file does not hold, and that was put in.
struct DefaultUsed {
  std::string what;    ///< "roughness of line trunk"
  double value = 0.0;  ///< SI
  std::string unit;    ///< of `value`: "m", "Pa s"; empty for a number
  DefaultStatus status = DefaultStatus::illustrative;
  std::string source;
};

/// The status as printed: "published", "common practice", "illustrative", "computed".
[[nodiscard]] const char* word(DefaultStatus status);

}  // namespace forecourse::network
