#pragma once

#include <string>
#include <vector>

#include "forecourse/handover/sheets/sheet.h"
#include "forecourse/site/records/records.h"
#include "forecourse/site/records/sheet_reading.h"

namespace forecourse::handover {

/// What a reading is against what was computed and asked.
enum class Verdict { within, outside, not_determined };
/// "within", "outside", "not determined"
[[nodiscard]] const char* word(Verdict verdict);

/// A reading beside its row.
struct ReadingTold {
  site::records::SheetReading typed;
  SheetKind sheet = SheetKind::commissioning;
  std::string section;
  SheetRow row;                      ///< a copy of that of the sheet
  std::string value;                 ///< as typed, with its unit
  std::optional<double> amount;      ///< [SI]
  std::optional<bool> answer;        ///< of a yes or no
  std::optional<double> difference;  ///< [SI] reading less value
  Verdict verdict = Verdict::not_determined;
  std::string reason;  ///< why, in words
};

struct ReadingsTold {
  std::vector<ReadingTold> readings;  ///< in the order in which they were typed
  int within = 0;
  int outside = 0;
  int not_determined = 0;
};

/// Holds what was typed back against its sheets. What fits no row, cannot be read, lies after `today`, or contradicts
/// another line, is told with its place; a line that stands twice with the same value counts once.
///
/// \param pack with every sheet that the readings may speak of
[[nodiscard]] Parsed<ReadingsTold> hold_readings(const SheetPack& pack,
                                                 const std::vector<site::records::SheetReading>& typed,
                                                 const site::Date& today);

/// Errors: readings that name nobody where their row says who does it. It is for those that were typed, as a record
/// need not name anybody.
[[nodiscard]] std::vector<Diagnostic> without_a_name(const ReadingsTold& told);

/// A row of a file of records: names of its columns and what stands in them.
struct RecordRow {
  std::string kind;  ///< "tests", "inspections"
  std::vector<std::string> columns;
  std::vector<std::string> cells;
  SourceSpan where{};  ///< of the reading that it keeps
};

/// As records call a walk-through of a sheet: "30-day", "annual", "commissioning" ...
[[nodiscard]] std::string record_kind(SheetKind kind);

/// Tests and walk-throughs on record as readings of the sheets; one that no sheet has a line for is told.
[[nodiscard]] Parsed<std::vector<site::records::SheetReading>> readings_of(const site::records::Records& records,
                                                                           const SheetPack& pack);

/// The readings as records: each as something looked at, and each that is the result of a test as that test.
[[nodiscard]] std::vector<RecordRow> records_of(const ReadingsTold& told);

}  // namespace forecourse::handover
