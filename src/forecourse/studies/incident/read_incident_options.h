#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "forecourse/studies/incident/options.h"
#include "forecourse/studies/read_options.h"

namespace forecourse::studies {

/// What an incident is asked, as written.
struct IncidentTexts {
  std::string kind;                                   ///< "struck"
  std::string id = {};                                ///< of the file's [[incident]]
  std::string at = {};                                ///< where it happens
  std::optional<std::vector<std::string>> open = {};  ///< hoses open elsewhere; no hose, or "none": none
  std::string stop_at = {};                           ///< a time
  std::string counts_for = {};                        ///< a time
  std::string open_area = {};                         ///< an area
  std::vector<std::string> without = {};              ///< barriers
  std::vector<std::string> dead = {};                 ///< barriers, each with "=" and a time or without
  std::size_t runs = 0;
  std::uint64_t seed = 1;
};

/// The words of all kinds of incident.
[[nodiscard]] std::vector<std::string> incident_kind_words();

/// The options that texts ask for; everything that cannot be read is told. Whether parts and hoses are there is told
/// by `check_options`.
[[nodiscard]] Parsed<IncidentOptions> read_incident_options(const IncidentTexts& texts, Asker asker);

}  // namespace forecourse::studies
