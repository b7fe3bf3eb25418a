#pragma once

namespace forecourse::parts {

/// A figure known only between two ends, in the unit of what it stands for.
struct Estimate {
  double low = 0.0;
  double high = 0.0;  ///< >= low

  friend constexpr bool operator==(const Estimate&, const Estimate&) = default;
};

}  // namespace forecourse::parts
