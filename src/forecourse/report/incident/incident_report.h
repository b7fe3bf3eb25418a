#pragma once

#include <string>
#include <vector>

#include "forecourse/report/diagnostic_text.h"
#include "forecourse/report/json_document.h"
#include "forecourse/report/terminal/text.h"
#include "forecourse/studies/incident/incident.h"

namespace forecourse::report {

/// What an incident report tells besides the result.
struct IncidentFacts {
  std::string date;
  std::string command;
  std::vector<SourceText> texts;
  std::vector<std::string> written;    ///< paths
  std::vector<std::string> sets = {};  ///< values changed for this run, as typed behind `--set`
};

/// What stands above every number of an incident.
inline constexpr const char* incident_first = "Stop the pump. Clear people away. Call the fire service.";

/// What every incident report ends with.
[[nodiscard]] std::vector<std::string> incident_cautions();

[[nodiscard]] std::string incident_summary(const studies::IncidentResult& result, const site::Site& site,
                                           const terminal::Style& style, const IncidentFacts& facts = {});

/// The whole document; SI with the unit in the key.
[[nodiscard]] Json incident_document(const studies::IncidentResult& result, const IncidentFacts& facts = {});

/// The section alone, for a report of several studies, and a page of its own.
/// \param number of the section in its page, for the ids of its drawings
[[nodiscard]] std::string incident_section(const studies::IncidentResult& result, const site::Site& site,
                                           std::size_t number = 1);
[[nodiscard]] std::string incident_report(const studies::IncidentResult& result, const site::Site& site,
                                          const IncidentFacts& facts = {});

}  // namespace forecourse::report
