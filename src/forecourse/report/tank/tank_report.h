#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "forecourse/checks/finding.h"
#include "forecourse/report/diagnostic_text.h"
#include "forecourse/report/json_document.h"
#include "forecourse/report/terminal/text.h"
#include "forecourse/studies/tank/tank.h"

namespace forecourse::report {

/// What a tank report tells besides the result.
struct TankFacts {
  std::string date;
  std::string command;
  std::vector<SourceText> texts;
  std::vector<std::string> written;  ///< paths
};

/// What every report on tanks ends with, the first of it above every number.
[[nodiscard]] std::vector<std::string> tank_cautions();

[[nodiscard]] std::string tank_summary(const studies::TankResult& result, const std::vector<checks::Finding>& findings,
                                       const site::Site& site, const terminal::Style& style,
                                       const TankFacts& facts = {});

/// The whole document; SI with the unit in the key.
[[nodiscard]] Json tank_document(const studies::TankResult& result, const std::vector<checks::Finding>& findings,
                                 const TankFacts& facts = {});

/// The section alone, for a report of several studies, and a page of its own.
/// \param chart_lines of each volume chart, about
[[nodiscard]] std::string tank_section(const studies::TankResult& result, const site::Site& site,
                                       std::size_t chart_lines = 24);
[[nodiscard]] std::string tank_report(const studies::TankResult& result, const std::vector<checks::Finding>& findings,
                                      const site::Site& site, const TankFacts& facts = {});

/// A table of numbers for a spreadsheet.
struct NumberTable {
  std::string name;
  std::vector<std::string> heads;
  std::vector<int> decimals;                             ///< of each column
  std::vector<std::vector<std::optional<double>>> rows;  ///< in the units of the heads
};

/// The chart of a tank in the units shown: depth, volume, share, and the level chart's volume where it is pitched.
[[nodiscard]] NumberTable tank_chart_numbers(const studies::TankTold& tank, site::Display display);

/// As comma-separated values, with a point for decimals whatever the locale.
[[nodiscard]] std::string to_csv(const NumberTable& table);

}  // namespace forecourse::report
