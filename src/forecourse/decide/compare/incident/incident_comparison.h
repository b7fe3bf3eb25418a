#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/base/context.h"
#include "forecourse/decide/compare/incident/incident_rows.h"
#include "forecourse/decide/compare/incident/paired.h"
#include "forecourse/decide/compare/parts.h"
#include "forecourse/site/editing/differences.h"
#include "forecourse/site/site.h"
#include "forecourse/studies/incident/incident.h"

namespace forecourse::decide {

/// One incident at two stations, or at one with another choice of equipment: by id, in SI, B minus A. Rows are empty
/// where one of the two is not determined.
struct IncidentComparison {
  studies::IncidentOptions options;  ///< as used for both
  std::string name_a;                ///< of the station
  std::string name_b;
  studies::IncidentResult a;
  studies::IncidentResult b;
  std::vector<site::ValueDifference> changed;  ///< what the files have differently, where their texts were at hand
  std::vector<OnePart> only_a;
  std::vector<OnePart> only_b;
  std::vector<FigureRow> figures;
  std::vector<HolderRow> holders;
  std::vector<CauseAmount> causes;
  std::vector<EventRow> events;
  std::vector<EndRow> ends;
  std::vector<CaseRow> cases;
  std::vector<BarrierBeside> barriers;
  std::optional<PairedSpread> paired;  ///< of the runs asked for; empty: none, or this kind is not drawn run by run

  [[nodiscard]] bool is_determined() const { return a.problem.empty() && b.problem.empty() && !figures.empty(); }
  /// As much escapes, and as much of it outside the containment: in the first runs, the ranges, any case of the barrier
  /// table, any pair of runs.
  [[nodiscard]] bool same_escape() const;
  /// Nor does any other amount, flow, moment or barrier differ.
  [[nodiscard]] bool same_in_all() const;
};

/// What is asked of both: the [[incident]] of A's file with the options over it. That of B's file is left aside, so
/// that it is one incident.
[[nodiscard]] studies::IncidentOptions shared_options(const site::Site& a, const studies::IncidentOptions& options);

/// Works one incident out at both.
///
/// \param options of both, with seed and runs
/// \error as of each incident; two figures that single runs cannot tell apart are the same (`same_amount`)
/// \fails the `problem` of A or of B says why there are no rows
[[nodiscard]] IncidentComparison compare_incident(const site::Site& a, const site::Site& b,
                                                  const studies::IncidentOptions& options, const Context& context = {});

/// Something wrong with the options at A, at B, or at both.
struct Objection {
  Diagnostic what;
  bool in_a = false;
  bool in_b = false;
};

/// What is wrong with the options at either: a place that B does not have, a barrier that the kind does not meet.
[[nodiscard]] std::vector<Objection> objections(const site::Site& a, const site::Site& b,
                                                const studies::IncidentOptions& options);

}  // namespace forecourse::decide
