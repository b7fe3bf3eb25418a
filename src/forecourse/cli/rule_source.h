#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/cli/site_source.h"
#include "forecourse/site/records/records.h"
#include "forecourse/site/rules/rule_set.h"

namespace forecourse::cli {

/// Reads the rule sets of a state or an owner; their texts are added to those that are there. Empty, with what is
/// wrong on standard error, if any has an error.
[[nodiscard]] std::optional<std::vector<site::RuleSet>> read_rule_sets(const std::vector<std::string>& paths,
                                                                       std::vector<report::SourceText>& texts);

/// Reads the records of a station from a folder or a store, null where no path is given; warnings go to the source.
/// False, with what is wrong on standard error, if they cannot be read.
[[nodiscard]] bool read_given_records(const std::string& path, SiteSource& source,
                                      std::optional<site::records::Records>& records);

}  // namespace forecourse::cli
