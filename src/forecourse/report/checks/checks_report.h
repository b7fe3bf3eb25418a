#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/checks/station/check_station.h"
#include "forecourse/decide/mend/mend.h"
#include "forecourse/report/diagnostic_text.h"
#include "forecourse/report/json_document.h"
#include "forecourse/report/terminal/text.h"

namespace forecourse::report {

/// What a report on checks tells besides the result.
struct ChecksFacts {
  std::string date;
  std::string command;
  std::vector<SourceText> texts;          ///< the site file, and behind it sets of a state or an owner
  std::vector<std::string> written = {};  ///< paths
  std::optional<std::vector<decide::Mend>> mends = std::nullopt;  ///< what would mend each; empty: not asked
};

/// Of the studies with findings here, what stands before every number of theirs.
[[nodiscard]] std::vector<std::string> checks_first(const checks::CheckResult& result);

/// What stands above every finding, and what every report ends with; what goes first is first.
[[nodiscard]] std::vector<std::string> checks_cautions(const checks::CheckResult& result);

/// What stands above every finding, in one paragraph.
[[nodiscard]] std::string checks_caution(const checks::CheckResult& result);

/// What falls short, is close, or is not determined; what is met and what does not apply where all is asked for.
[[nodiscard]] std::string checks_summary(const checks::CheckResult& result, const site::Site& site,
                                         const terminal::Style& style, const ChecksFacts& facts = {});

/// The whole document; SI, each finding with its set.
[[nodiscard]] Json checks_document(const checks::CheckResult& result, const ChecksFacts& facts = {});

/// A table for each set, and a page of its own.
[[nodiscard]] std::string checks_section(const checks::CheckResult& result, site::Display display);
[[nodiscard]] std::string checks_report(const checks::CheckResult& result, const site::Site& site,
                                        const ChecksFacts& facts = {});

/// "41 requirements; the text of 30 clauses was seen, that of 11 was not."
[[nodiscard]] std::string clauses_in_words(const checks::CheckResult& result);

}  // namespace forecourse::report
