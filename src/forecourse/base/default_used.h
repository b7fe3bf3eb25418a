#pragma once

#include <string>

namespace forecourse {

/// How well a value that nobody entered is known.
enum class DefaultStatus {
  published,        ///< its source says where
  common_practice,  ///< in general use without one source
  illustrative,     ///< invented, so that a first computation can be made
  computed,         ///< worked out from entered or published values by a published method
};

/// A value that a computation needed, that the site file does not hold, and that was put in.
struct DefaultUsed {
  std::string what;    ///< "roughness of line trunk"
  double value = 0.0;  ///< SI
  std::string unit;    ///< of `value`: "m", "Pa s"; empty for a number
  DefaultStatus status = DefaultStatus::illustrative;
  std::string source;
  std::string system;      ///< id of the piping system it serves
  bool moves_flow = true;  ///< false: it moves gauge pressures only
};

/// The status as printed: "published", "common practice", "illustrative", "computed".
[[nodiscard]] const char* word(DefaultStatus status);

/// True if a finding may rest on the value.
[[nodiscard]] inline bool is_firm(const DefaultUsed& used) {
  return used.status == DefaultStatus::published || used.status == DefaultStatus::computed;
}

}  // namespace forecourse
