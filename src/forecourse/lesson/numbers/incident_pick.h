#pragma once

#include "forecourse/lesson/numbers/number.h"
#include "forecourse/lesson/numbers/pick.h"

namespace forecourse::lesson {

/// What is likely of a spread, with its ends where they differ.
///
/// \param pointer of the spread
[[nodiscard]] inline Picked picked_spread(const std::optional<studies::Spread>& spread, const std::string& pointer,
                                          std::string reason) {
  Picked out;
  out.proof.pointer = pointer + "/likely";
  out.reason = std::move(reason);
  if (!spread) return out;
  out.value = spread->likely;
  if (!spread->is_certain()) out.range = Ends{spread->low, spread->high, pointer + "/low", pointer + "/high"};
  return out;
}

/// A value of an incident at the part at hand.
///
/// \param value picks it out of the result, with its pointer
template <class Value>
[[nodiscard]] Picked of_incident(const From& from, studies::IncidentKind kind, Value value) {
  const WorkedIncident& run = from.incidents.of(kind, from.at);
  if (!run.reason.empty()) return nothing(run.reason);
  Picked out = value(run.result);
  if (out.proof.pointer.empty()) return out;
  out.proof.command = run.command;
  out.rests_on = first_of(lesson::rests_on(run.result));
  return out;
}

}  // namespace forecourse::lesson
