#pragma once

#include <optional>

#include "forecourse/network/sets/hose_states.h"

namespace forecourse::studies {

/// The hoses that only a line feeds: what lies behind it holds no running pump and hangs together with the rest by
/// this line alone. Empty for a line of a ring, or one between pumps.
[[nodiscard]] std::optional<network::HoseSet> hoses_behind(const network::HoseGroup& group, std::size_t line);

}  // namespace forecourse::studies
