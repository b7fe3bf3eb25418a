#pragma once

#include <string>
#include <vector>

#include "forecourse/site/site.h"

namespace forecourse::site {

/// One of the three figures of an uncertain value.
enum class End { low, likely, high };

/// A value that was entered as low, likely and high.
struct UncertainValue {
  std::string path;                        ///< as `--set` takes it: "line.trunk.length"
  std::string table;                       ///< the first key of the path: "line"
  const QuantityKind* quantity = nullptr;  ///< null: a number without a unit
  double low = 0.0;                        ///< SI, as the two below
  double likely = 0.0;
  double high = 0.0;
  SourceSpan where{};
};

/// Every uncertain value of a station, in the order of the descriptions in fields/. A value whose three figures are
/// the same is none.
[[nodiscard]] std::vector<UncertainValue> uncertain_values(const Site& site);

/// Whether a value can move a flow of the piping; the others are of what stops, holds, breaks or is asked for.
[[nodiscard]] bool can_move_flow(const UncertainValue& value);

/// The station with the likely of each uncertain value moved to one of its figures; low and high stay as they were.
/// Shares of a blend that no longer add up to 1 are scaled so that they do.
///
/// \param ends in the order of `uncertain_values`; what is beyond its end stays likely
[[nodiscard]] Site at_ends(Site site, const std::vector<End>& ends);

/// The same with the likely of each uncertain value set to a figure of its own [SI].
/// \param likely in the order of `uncertain_values`; what is beyond its end stays likely
[[nodiscard]] Site at_values(Site site, const std::vector<double>& likely);

}  // namespace forecourse::site
