#pragma once

#include <vector>

#include "forecourse/studies/flow/flow.h"

namespace forecourse::studies {

/// The order asked for: the options', else the file's.
[[nodiscard]] std::vector<std::string> asked_order(const site::Site& site, const FlowOptions& options);

/// What is wrong with that order: a hose that is unknown, named twice, closed in every set of open hoses asked for
/// at the same place, or fed by no running pump. Those of the file have their place in it.
[[nodiscard]] std::vector<Diagnostic> check_order(const site::Site& site, const FlowOptions& options);

}  // namespace forecourse::studies
