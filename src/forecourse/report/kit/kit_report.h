#pragma once

#include <string>
#include <variant>
#include <vector>

#include "forecourse/handover/kit/kit.h"
#include "forecourse/report/json_document.h"
#include "forecourse/report/study_page.h"
#include "forecourse/report/terminal/text.h"

namespace forecourse::report {

/// What every schedule ends with, the first of it above every number.
[[nodiscard]] std::vector<std::string> kit_cautions();

/// What is ordered, pipe by length, the schedule along the course, and spares. With --verbose what each part does, its
/// compatibility, and which parts they are.
[[nodiscard]] std::string kit_summary(const handover::Kit& kit, const site::Site& site, const terminal::Style& style,
                                      const ReportFacts& facts = {});

/// The whole document; SI with the unit in the key, a size beside its unit.
[[nodiscard]] Json kit_document(const handover::Kit& kit, const ReportFacts& facts = {});

/// A page of its own, and the few lines of it for a report of the station.
[[nodiscard]] std::string kit_report(const handover::Kit& kit, const site::Site& site, const ReportFacts& facts = {});
[[nodiscard]] std::string kit_section(const handover::Kit& kit, site::Display display);

/// A table of words and numbers for a spreadsheet; an empty cell holds nothing.
struct CellTable {
  using Cell = std::variant<std::monostate, std::string, double>;
  std::string name;
  std::vector<std::string> heads;
  std::vector<std::vector<Cell>> rows;
};

/// Schedule, order, pipe and spares in the units shown, with an empty column for part numbers of the user's own.
[[nodiscard]] std::vector<CellTable> kit_tables(const handover::Kit& kit, site::Display display);

/// As comma-separated values, with a point for decimals whatever the locale. A text that a spreadsheet would take for
/// a formula gets an apostrophe before it.
[[nodiscard]] std::string to_csv(const CellTable& table);

}  // namespace forecourse::report
