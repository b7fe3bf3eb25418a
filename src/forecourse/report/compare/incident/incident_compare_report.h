#pragma once

#include <string>

#include "forecourse/decide/compare/incident/incident_comparison.h"
#include "forecourse/report/compare/compare_view.h"
#include "forecourse/report/json_document.h"
#include "forecourse/report/terminal/text.h"

namespace forecourse::report {

/// One incident at A and at B as a practitioner acts on it: what to do first, what B changes or that it buys nothing,
/// then the figures, cases, barriers, events, amounts and causes side by side.
[[nodiscard]] std::string incident_compare_summary(const decide::IncidentComparison& comparison, site::Display display,
                                                   const terminal::Style& style, const CompareFacts& facts = {});

/// The same as one self-contained HTML page.
[[nodiscard]] std::string incident_compare_report(const decide::IncidentComparison& comparison, site::Display display,
                                                  const CompareFacts& facts = {});

/// The whole document; SI with the unit in the key. `defaults` at its root are those of B.
/// \param display units of the sentences under `words`
[[nodiscard]] Json incident_compare_document(const decide::IncidentComparison& comparison, site::Display display,
                                             const CompareFacts& facts = {});

}  // namespace forecourse::report
