#pragma once

#include <string>

#include "forecourse/handover/sheets/readings.h"
#include "forecourse/handover/sheets/sheet.h"
#include "forecourse/report/units.h"

namespace forecourse::report {

/// A row of a sheet in words, for paper and for a terminal.
class RowWords {
 public:
  RowWords(const handover::SheetRow& row, site::Display display, Glyphs glyphs = Glyphs::unicode)
      : row_(row), display_(display), glyphs_(glyphs) {}

  /// "12.25 gpm", and behind it what is told beside it; else what to enter.
  [[nodiscard]] std::string value() const;
  /// What is told beside the value: words, figures, what to enter, what it rests on.
  [[nodiscard]] std::string beside() const;
  /// The value alone with its unit; empty: there is none.
  [[nodiscard]] std::string bare_value() const;
  /// "12.00 to 12.50 gpm, agreed", "to be agreed"; empty: the row has none.
  [[nodiscard]] std::string tolerance() const;
  /// "at most 10.00 gpm; 40 CFR 1090.1550(b)"
  [[nodiscard]] std::string limit() const;
  /// Unit of the blank: "gpm"; of a yes or no "yes/no"; empty: none.
  [[nodiscard]] std::string blank_unit() const;

 private:
  [[nodiscard]] std::string shown(handover::Amount amount, double si) const;
  [[nodiscard]] std::string range(const std::optional<double>& low, const std::optional<double>& high) const;
  [[nodiscard]] bool in_seconds() const;

  const handover::SheetRow& row_;
  site::Display display_;
  Glyphs glyphs_;
};

/// An amount with its unit as sheets show it: "12.25 gpm", "16 731 gal", "95.0 %".
[[nodiscard]] std::string sheet_amount(handover::Amount amount, site::Display display, double si,
                                       Glyphs glyphs = Glyphs::unicode);

/// "D1.a, flow of the hose alone: 9.1 gpm against 12.25 gpm, outside its tolerance"
[[nodiscard]] std::string in_words(const handover::ReadingTold& reading, site::Display display,
                                   Glyphs glyphs = Glyphs::unicode);

}  // namespace forecourse::report
