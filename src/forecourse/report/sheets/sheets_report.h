#pragma once

#include <string>
#include <vector>

#include "forecourse/handover/sheets/readings.h"
#include "forecourse/handover/sheets/sheet.h"
#include "forecourse/report/diagnostic_text.h"
#include "forecourse/report/json_document.h"
#include "forecourse/report/terminal/text.h"
#include "forecourse/report/units.h"
#include "forecourse/site/site.h"

namespace forecourse::report {

/// What the pages of a pack of sheets tell besides it.
struct SheetsFacts {
  std::string date;
  std::string command;
  std::vector<SourceText> texts;                     ///< the site file, and behind it the readings
  const handover::ReadingsTold* readings = nullptr;  ///< null: none were typed back
  std::vector<std::string> stored = {};              ///< what became of them in the store, sentences
  std::vector<std::string> written = {};             ///< paths
};

/// What stands on each sheet and how many blanks are filled; readings against what was computed.
[[nodiscard]] std::string sheets_summary(const handover::SheetPack& pack, const site::Site& site,
                                         const terminal::Style& style, const SheetsFacts& facts = {});

/// The whole document in SI.
[[nodiscard]] Json sheets_document(const handover::SheetPack& pack, const SheetsFacts& facts = {});

/// One sheet as a page of its own, ready for paper.
[[nodiscard]] std::string sheet_page(const handover::Sheet& sheet, const handover::SheetPack& pack,
                                     const site::Site& site, const SheetsFacts& facts = {});

/// All sheets of a pack in one page, each beginning on a sheet of paper of its own; behind them what was not entered.
[[nodiscard]] std::string sheets_page(const handover::SheetPack& pack, const site::Site& site,
                                      const SheetsFacts& facts = {});

/// The rows into which readings are typed: cells in the order of `store::sheet_columns`, without a header.
[[nodiscard]] std::vector<std::vector<std::string>> sheet_blanks(const handover::SheetPack& pack,
                                                                 site::Display display);

}  // namespace forecourse::report
