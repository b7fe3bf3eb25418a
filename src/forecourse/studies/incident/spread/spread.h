#pragma once

#include "forecourse/base/context.h"
#include "forecourse/studies/incident/setup/make_case.h"

namespace forecourse::studies {

/// A Monte Carlo over everything that was entered or stands in as low, likely and high, with the barriers as told.
/// The draw of a figure depends on the seed, the run and the figure's name alone, so that two choices of equipment are
/// compared with the same luck, whatever the number of threads.
/// \param missing barriers that do not act
[[nodiscard]] IncidentSpread incident_spread(const Scene& scene, const std::set<Barrier>& missing,
                                             const Context& context);

}  // namespace forecourse::studies
