#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/cli/run.h"
#include "forecourse/studies/incident/incident.h"

namespace forecourse::cli {

/// A document that `incident` has written before: what was asked, and each run with its hash.
struct IncidentTrace {
  std::string path;
  std::vector<std::string> sets;  ///< of `--set`
  studies::IncidentOptions asked;
  std::string result;  ///< JSON
};

/// Reads one; empty, with the reason on standard error, if the file is none, or is one of another kind of incident.
[[nodiscard]] std::optional<IncidentTrace> read_trace(const std::string& path, studies::IncidentKind kind);

/// Takes over from a trace what is not asked otherwise.
void fill(studies::IncidentOptions& options, const IncidentTrace& trace);

/// Prints whether each run is that of the trace, bit for bit, and where it is not; `fine` if all are.
[[nodiscard]] Exit compare_with(const IncidentTrace& trace, const studies::IncidentResult& result);

}  // namespace forecourse::cli
