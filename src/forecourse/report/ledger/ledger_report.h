#pragma once

#include <string>
#include <vector>

#include "forecourse/base/source_text.h"
#include "forecourse/checks/finding.h"
#include "forecourse/report/json_document.h"
#include "forecourse/report/study_page.h"
#include "forecourse/report/terminal/text.h"
#include "forecourse/studies/ledger/ledger.h"

namespace forecourse::report {

using LedgerFacts = ReportFacts;

/// What stands above every number of a ledger that falls short.
inline constexpr const char* ledger_first =
    "Explaining a shortage does not cancel a duty to report: a suspected release is reported within 24 hours.";

/// That line, and what every report ends with.
[[nodiscard]] std::vector<std::string> ledger_cautions();

[[nodiscard]] std::string ledger_summary(const studies::LedgerResult& result, const site::Site& site,
                                         const terminal::Style& style, const LedgerFacts& facts = {});

/// The whole document; SI with the unit in the key.
[[nodiscard]] Json ledger_document(const studies::LedgerResult& result, const LedgerFacts& facts = {});

/// The section alone, for a report of several studies, and a page of its own.
[[nodiscard]] std::string ledger_section(const studies::LedgerResult& result, const site::Site& site);
[[nodiscard]] std::string ledger_report(const studies::LedgerResult& result, const site::Site& site,
                                        const LedgerFacts& facts = {});

}  // namespace forecourse::report
