#pragma once

#include <string>
#include <vector>

#include "forecourse/checks/finding.h"
#include "forecourse/report/diagnostic_text.h"
#include "forecourse/report/json_document.h"
#include "forecourse/report/study_page.h"
#include "forecourse/report/terminal/text.h"
#include "forecourse/studies/flotation/flotation.h"

namespace forecourse::report {

using FlotationFacts = ReportFacts;

/// What stands above every number of the flotation study.
inline constexpr const char* flotation_first =
    "Never empty a tank in wet ground without an engineer's word: an empty tank can float up, with its piping.";

/// That line, and what every report ends with.
[[nodiscard]] std::vector<std::string> flotation_cautions();

[[nodiscard]] std::string flotation_summary(const studies::FlotationResult& result, const site::Site& site,
                                            const terminal::Style& style, const FlotationFacts& facts = {});

/// The whole document; SI with the unit in the key.
[[nodiscard]] Json flotation_document(const studies::FlotationResult& result, const FlotationFacts& facts = {});

/// The section alone, for a report of several studies, and a page of its own.
[[nodiscard]] std::string flotation_section(const studies::FlotationResult& result, const site::Site& site);
[[nodiscard]] std::string flotation_report(const studies::FlotationResult& result, const site::Site& site,
                                           const FlotationFacts& facts = {});

}  // namespace forecourse::report
