#pragma once

#include <vector>

#include "forecourse/handover/kit/kit.h"

namespace forecourse::handover {

/// The parts of a schedule that are worth having at hand, the worst consequence first. Which hoses a part shuts is
/// found in the piping; how often parts fail is not known here.
[[nodiscard]] std::vector<Spare> spares_of(const site::Site& site, const std::vector<StationPart>& parts,
                                           const std::vector<KitRow>& rows);

}  // namespace forecourse::handover
