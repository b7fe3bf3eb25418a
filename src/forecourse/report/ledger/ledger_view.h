#pragma once

#include <string>
#include <vector>

#include "forecourse/report/svg/curve_chart.h"
#include "forecourse/report/svg/waterfall.h"
#include "forecourse/report/units.h"
#include "forecourse/report/word_table.h"
#include "forecourse/studies/ledger/ledger.h"

namespace forecourse::report {

/// True where a month of any book exceeds its limit.
[[nodiscard]] bool ledger_falls_short(const studies::LedgerResult& result);

/// "meets", "close", "falls short" or "not determined"
[[nodiscard]] const char* month_state(const studies::LedgerMonth& month);

/// The months of a book, each with its number, limit and state.
[[nodiscard]] WordTable month_table(const studies::LedgerBook& book, site::Display display, Glyphs glyphs);
/// The days of the period.
[[nodiscard]] WordTable day_table(const studies::LedgerBook& book, site::Display display, Glyphs glyphs);
[[nodiscard]] WordTable term_table(const studies::LedgerBook& book, site::Display display, Glyphs glyphs);
[[nodiscard]] WordTable fault_table(const studies::LedgerBook& book, site::Display display, Glyphs glyphs);
[[nodiscard]] WordTable free_table(const studies::LedgerBook& book, site::Display display, Glyphs glyphs);
[[nodiscard]] WordTable gauging_table(const studies::LedgerResult& result, site::Display display, Glyphs glyphs);

/// The number, its state, and how sure it is, in sentences.
[[nodiscard]] std::vector<std::string> book_answer(const studies::LedgerBook& book, site::Display display,
                                                   Glyphs glyphs);
/// What to do next, each beginning with a verb.
[[nodiscard]] std::vector<std::string> what_next(const studies::LedgerBook& book, site::Display display, Glyphs glyphs);
/// Which terms the readings do not part, and what would.
[[nodiscard]] std::vector<std::string> not_parted(const studies::LedgerBook& book, Glyphs glyphs);
/// What a tank's own test shows by its temperature alone; empty where it was not asked.
[[nodiscard]] std::string own_test_words(const studies::LedgerResult& result, site::Display display, Glyphs glyphs);

/// Running over and short as steps inside limits that open with throughput. `number` makes the id unique.
[[nodiscard]] svg::CurveChart running_chart(const studies::LedgerBook& book, site::Display display,
                                            const std::string& number);
[[nodiscard]] svg::WaterfallChart term_chart(const studies::LedgerBook& book, site::Display display,
                                             const std::string& number);
/// The sums of the control chart.
[[nodiscard]] svg::CurveChart sum_chart(const studies::LedgerBook& book, const std::string& number);
[[nodiscard]] svg::CurveChart average_chart(const studies::LedgerBook& book, const std::string& number);

}  // namespace forecourse::report
