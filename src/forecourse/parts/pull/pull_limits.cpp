#include "forecourse/parts/pull/pull_limits.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace forecourse::parts {
namespace {

constexpr double never = std::numeric_limits<double>::infinity();

// The least value that `of` gives for a known limit.
template <class Of>
double least(std::span<const GivenLimit> limits, const Of& of) {
  double found = never;
  for (const GivenLimit& given : limits) {
    if (given.pull) found = std::min(found, of(*given.pull));
  }
  return found;
}

std::optional<PullLimit> likely_first(std::span<const GivenLimit> limits) {
  const double at = least(limits, [](const PullRange& pull) { return pull.likely; });
  if (!std::isfinite(at)) return std::nullopt;
  std::optional<PullLimit> found;
  for (const GivenLimit& given : limits) {
    if (!given.pull || given.pull->likely != at) continue;
    if (found) return std::nullopt;
    found = given.limit;
  }
  return found;
}

}  // namespace

FirstLimit first_limit(std::span<const GivenLimit> limits) {
  FirstLimit result;
  result.reached_at_most = least(limits, [](const PullRange& pull) { return pull.high; });
  for (const GivenLimit& given : limits) {
    if (!given.pull) {
      result.not_known.push_back(given.limit);
    } else if (std::isfinite(given.pull->low) && given.pull->low <= result.reached_at_most) {
      result.could_be_first.push_back(given.limit);
    }
  }
  result.likely_first = likely_first(limits);
  if (!result.not_known.empty()) return result;
  result.reached_at_least = least(limits, [](const PullRange& pull) { return pull.low; });
  const bool sure = result.could_be_first.size() == 1 && std::isfinite(result.reached_at_most);
  if (sure) result.first = result.could_be_first.front();
  return result;
}

}  // namespace forecourse::parts
