#include "forecourse/studies/line_test/quiet_times.h"

#include <cstdlib>

namespace forecourse::studies {
namespace {

/// Seconds since midnight of "06:00", as the reader of the site file has let through.
double seconds_of(const std::string& clock) {
  constexpr double hour = 3600.0, minute = 60.0;
  const std::size_t colon = clock.find(':');
  return hour * std::atof(clock.c_str()) + (colon == std::string::npos ? 0.0 : minute * std::atof(&clock[colon + 1]));
}

}  // namespace

std::pair<std::vector<double>, std::string> quiet_times(const site::Site& site, const LineTestOptions& options) {
  if (!options.quiet.empty()) return {options.quiet, "as asked"};
  const auto& run = site.operations;
  if (!run || run->opens.empty() || run->closes.empty()) return {{}, "not known"};
  constexpr double day = 86400.0;
  const double closed = seconds_of(run->opens.text) - seconds_of(run->closes.text);
  if (closed == 0.0) return {{}, "never closed: how long the line stands still between sales is not known"};
  return {{closed < 0.0 ? closed + day : closed}, "the station is closed"};
}

}  // namespace forecourse::studies
