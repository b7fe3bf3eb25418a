#pragma once

#include <string>
#include <vector>

#include "forecourse/report/diagnostic_text.h"
#include "forecourse/report/json_document.h"
#include "forecourse/report/terminal/text.h"
#include "forecourse/studies/containment/containment.h"

namespace forecourse::report {

/// What a containment report tells besides the result.
struct ContainmentFacts {
  std::string date;
  std::string command;
  std::vector<SourceText> texts;
  std::vector<std::string> written;  ///< paths
};

/// One line above every number, and what every report ends with.
[[nodiscard]] std::vector<std::string> containment_cautions();

[[nodiscard]] std::string containment_summary(const studies::ContainmentResult& result, const site::Site& site,
                                              const terminal::Style& style, const ContainmentFacts& facts = {});

/// The whole document; SI with the unit in the key.
[[nodiscard]] Json containment_document(const studies::ContainmentResult& result, const ContainmentFacts& facts = {});

/// The section alone, for a report of several studies, and a page of its own.
[[nodiscard]] std::string containment_section(const studies::ContainmentResult& result, const site::Site& site);
[[nodiscard]] std::string containment_report(const studies::ContainmentResult& result, const site::Site& site,
                                             const ContainmentFacts& facts = {});

}  // namespace forecourse::report
