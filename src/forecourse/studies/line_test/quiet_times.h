#pragma once

#include <string>
#include <utility>
#include <vector>

#include "forecourse/site/site.h"
#include "forecourse/studies/line_test/options.h"

namespace forecourse::studies {

/// Times [s] for which a line stands still in a day, with how they were come by: as asked, else the night between
/// closing and opening; none where neither is known.
[[nodiscard]] std::pair<std::vector<double>, std::string> quiet_times(const site::Site& site,
                                                                      const LineTestOptions& options);

}  // namespace forecourse::studies
