#pragma once

#include <string>
#include <vector>

#include "forecourse/checks/finding.h"
#include "forecourse/report/diagnostic_text.h"
#include "forecourse/report/json_document.h"
#include "forecourse/report/terminal/text.h"
#include "forecourse/studies/delivery/delivery.h"

namespace forecourse::report {

/// What a delivery report tells besides the result.
struct DeliveryFacts {
  std::string date;
  std::string command;
  std::vector<SourceText> texts;
  std::vector<std::string> written;  ///< paths
};

/// What stands above every number of a delivery that stalls or ends under pressure.
inline constexpr const char* stalled_caution =
    "A drop that stalls, or ends with its vapor shut in, stands under pressure: never open it, neither hose nor fill "
    "nor "
    "hatch, while it does. Shut the "
    "truck's valves, let the pressure go through the vent once its way is free, and follow the carrier's and the "
    "station's own procedure.";

/// One line above every number, and what every report ends with.
[[nodiscard]] std::vector<std::string> delivery_cautions();

/// Whether any case of it stalls, or ends with vapor shut in under pressure.
[[nodiscard]] bool any_under_pressure(const studies::DeliveryResult& result);

[[nodiscard]] std::string delivery_summary(const studies::DeliveryResult& result,
                                           const std::vector<checks::Finding>& findings, const site::Site& site,
                                           const terminal::Style& style, const DeliveryFacts& facts = {});

/// The whole document; SI with the unit in the key.
[[nodiscard]] Json delivery_document(const studies::DeliveryResult& result,
                                     const std::vector<checks::Finding>& findings, const DeliveryFacts& facts = {});

/// The section alone, for a report of several studies, and a page of its own.
/// \param number of the delivery in the report, from 1
[[nodiscard]] std::string delivery_section(const studies::DeliveryResult& result, const site::Site& site,
                                           std::size_t number = 1);
[[nodiscard]] std::string delivery_report(const studies::DeliveryResult& result,
                                          const std::vector<checks::Finding>& findings, const site::Site& site,
                                          const DeliveryFacts& facts = {});

}  // namespace forecourse::report
