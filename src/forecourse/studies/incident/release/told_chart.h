#pragma once

#include "forecourse/solvers/sequence/result.h"
#include "forecourse/studies/incident/incident.h"
#include "forecourse/studies/incident/release/model.h"

namespace forecourse::studies::release {

/// The courses of a run: its steps, thinned to what a chart can show; the first second keeps all of its steps. Where
/// a course leaves the values of its points between them, as with a pump that starts and stops, the chart tells what
/// it did there.
///
/// \param result with its states kept
/// \error the mean of a pressure is that of straight lines between the steps; means of flows are exact
[[nodiscard]] IncidentChart tell_chart(const Case& given, const Model& model, const seq::SequenceStart& start,
                                       const seq::SequenceResult& result);

}  // namespace forecourse::studies::release
