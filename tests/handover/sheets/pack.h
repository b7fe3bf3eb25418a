#pragma once

#include <string>

#include "forecourse/handover/sheets/readings.h"
#include "forecourse/handover/sheets/sheets.h"
#include "support/stations.h"

namespace forecourse::handover {

inline constexpr site::Date the_day{2026, 11, 30, {}};
inline const char* const examples[] = {"hollin-gap", "ludd-bank", "marle-cross", "pell-ridge",
                                       "site-s",     "thornby",   "truck-lane"};

/// A station with its studies, and its sheets.
struct Handed {
  explicit Handed(const std::string& text, const SheetOptions& options = {})
      : site(test::station(text)),
        studied(checks::study_for_checks(site, nullptr)),
        pack(make_sheets(checks::facts_of(site, studied, the_day, nullptr), studied, options)) {}

  [[nodiscard]] const Sheet& sheet(SheetKind kind) const {
    for (const Sheet& one : pack.sheets) {
      if (one.kind == kind) return one;
    }
    throw std::logic_error("no such sheet");
  }

  /// The first row of this id and part; null: there is none.
  [[nodiscard]] const SheetRow* row(SheetKind kind, const std::string& id, const std::string& part) const {
    for (const SheetSection& section : sheet(kind).sections) {
      for (const SheetRow& one : section.rows) {
        if (one.id == id && one.part == part) return &one;
      }
    }
    return nullptr;
  }

  site::Site site;
  checks::Studied studied;
  SheetPack pack;
};

/// A reading of the row of this id and part, typed on a day of November 2026.
inline site::records::SheetReading typed(const Handed& handed, SheetKind kind, const std::string& id,
                                         const std::string& part, const std::string& value, int day = 20) {
  site::records::SheetReading out;
  out.sheet.text = word(kind);
  for (const SheetSection& section : handed.sheet(kind).sections) {
    for (const SheetRow& row : section.rows) {
      if (row.id == id && row.part == part && out.section.empty()) {
        out.section.text = section.id;
        out.what.text = row.what;
      }
    }
  }
  out.part.text = part;
  out.value.text = value;
  out.at.day = {2026, 11, day, {}};
  return out;
}

/// The one reading, held against its sheet.
inline ReadingTold held(const Handed& handed, const site::records::SheetReading& reading) {
  auto told = hold_readings(handed.pack, {reading}, the_day);
  EXPECT_TRUE(told.ok()) << (told.diagnostics.empty() ? "" : told.diagnostics.front().message);
  return told.value.readings.empty() ? ReadingTold{} : told.value.readings.front();
}

}  // namespace forecourse::handover
