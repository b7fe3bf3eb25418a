#include "forecourse/lesson/numbers/worked_incidents.h"

#include <algorithm>

namespace forecourse::lesson {

using studies::IncidentKind;

const WorkedIncident& WorkedIncidents::of(IncidentKind kind, const std::string& at) {
  const auto key = std::make_pair(kind, at);
  const auto found = runs_.find(key);
  return found != runs_.end() ? found->second : runs_.emplace(key, run(kind, at)).first->second;
}

WorkedIncident WorkedIncidents::run(IncidentKind kind, const std::string& at) const {
  studies::IncidentOptions options;
  options.kind = kind;
  options.request.at.text = at;
  options.charts = false;
  // What feeds a fire without the link is told by its row, and the range of a blow takes its rows in.
  options.barrier_table = kind == IncidentKind::sump_fire || kind == IncidentKind::struck;
  WorkedIncident out;
  out.command = {"incident", word(kind), "--at", at};
  std::vector<Diagnostic> wrong = check_options(site_, options);
  if (!wrong.empty()) {  // hoses that the file has open elsewhere may hang at this very place
    options.none_open = true;
    wrong = check_options(site_, options);
    out.command.insert(out.command.end(), {"--open", "none"});
  }
  if (!wrong.empty()) {
    out.reason = wrong.front().message + (wrong.front().hint.empty() ? "" : ": " + wrong.front().hint);
    return out;
  }
  out.result = study_incident(site_, options, context_);
  out.reason = out.result.problem;
  return out;
}

}  // namespace forecourse::lesson
