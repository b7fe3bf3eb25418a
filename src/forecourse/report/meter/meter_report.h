#pragma once

#include <string>
#include <vector>

#include "forecourse/base/source_text.h"
#include "forecourse/checks/finding.h"
#include "forecourse/report/json_document.h"
#include "forecourse/report/study_page.h"
#include "forecourse/report/terminal/text.h"
#include "forecourse/studies/meter/meter.h"

namespace forecourse::report {

using MeterFacts = ReportFacts;

/// One line above every number, and what every report ends with.
[[nodiscard]] std::vector<std::string> meter_cautions();

[[nodiscard]] std::string meter_summary(const studies::MeterResult& result, const site::Site& site,
                                        const terminal::Style& style, const MeterFacts& facts = {});

/// The whole document; SI with the unit in the key.
[[nodiscard]] Json meter_document(const studies::MeterResult& result, const MeterFacts& facts = {});

/// The section alone, for a report of several studies, and a page of its own.
[[nodiscard]] std::string meter_section(const studies::MeterResult& result, const site::Site& site);
[[nodiscard]] std::string meter_report(const studies::MeterResult& result, const site::Site& site,
                                       const MeterFacts& facts = {});

}  // namespace forecourse::report
