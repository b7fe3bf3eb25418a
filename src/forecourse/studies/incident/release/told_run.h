#pragma once

#include <string>
#include <vector>

#include "forecourse/base/context.h"
#include "forecourse/solvers/sequence/result.h"
#include "forecourse/studies/incident/incident.h"
#include "forecourse/studies/incident/release/model.h"

namespace forecourse::studies::release {

/// What things are called in the list of events and in the ledger.
struct Names {
  std::vector<std::string> places;                  ///< per broken end
  std::vector<std::string> products;                ///< per broken end
  std::vector<std::string> tanks;                   ///< per broken end, ids
  std::string above = "what lay above the groove";  ///< what runs out by itself
  std::string sensor;                               ///< id, or of what bears it
  std::string sump;                                 ///< id of what it belongs to
  std::string stop;                                 ///< who or what stops the pumps
};

/// Runs a case and tells what happened.
/// \param charts keep the courses over time
[[nodiscard]] IncidentRun tell_run(const Case& given, const Names& names, bool charts, const Context& context);

/// Liters that matter of a run, without its story: for many runs.
struct Outcome {
  bool finished = false;
  double escaped = 0.0;         ///< [m3]
  double to_environment = 0.0;  ///< [m3]
};
[[nodiscard]] Outcome outcome_of(const Case& given, const seq::SequenceResult& result);

/// Tolerances of one run that is told, and of one of many.
[[nodiscard]] seq::SequenceOptions told_options();
[[nodiscard]] seq::SequenceOptions many_options();

}  // namespace forecourse::studies::release
