#include <algorithm>
#include <set>
#include <tuple>

#include "forecourse/base/unit_text.h"
#include "forecourse/checks/rules/period.h"
#include "forecourse/handover/sheets/readings.h"
#include "forecourse/handover/sheets/sheets.h"
#include "forecourse/handover/sheets/walk_of_readings.h"

namespace forecourse::handover {
namespace {

using site::records::Inspected;
using site::records::Inspection;
using site::records::SheetReading;
using site::records::Test;

/// A row and the section that it stands in; null: none.
struct Found {
  const SheetSection* section = nullptr;
  const SheetRow* row = nullptr;
};

/// The first row of a sheet that `is` holds for.
template <class Is>
Found find(const Sheet& sheet, Is is) {
  for (const SheetSection& section : sheet.sections) {
    for (const SheetRow& row : section.rows) {
      if (row.blank != Blank::none && is(section, row)) return {&section, &row};
    }
  }
  return {};
}

class RecordReader {
 public:
  explicit RecordReader(const SheetPack& pack) : pack_(pack) {}

  Parsed<std::vector<SheetReading>> read(const site::records::Records& records) {
    for (const Inspection& inspection : records.inspections) {
      for (const Inspected& item : inspection.items) take(inspection, item);
    }
    for (const Test& test : records.tests) {
      if (!looked_at_.contains(moment_of(test.kind, test.part.text, test.at, test.by))) take(test);
    }
    return std::move(out_);
  }

 private:
  /// A test of a part at a day and time, and by whom.
  using TestAt = std::tuple<site::records::TestKind, std::string, std::string, double, std::string>;

  static TestAt moment_of(site::records::TestKind kind, const std::string& part, const site::records::Moment& at,
                          const site::Name& by) {
    return {kind, part, checks::text(at.day), at.time ? at.time->si() : -1.0, by.text};
  }

  void no_row(const site::records::Moment& at, const std::string& what) {
    out_.diagnostics.push_back(
        {Severity::warning, "no sheet has a line for " + what + " of " + checks::text(at.day), at.day.where, {}, {}});
  }

  void add(const site::records::Moment& at, const Sheet& sheet, const Found& found, std::string value,
           const site::Name& by) {
    SheetReading reading;
    reading.at = at;
    reading.where = at.day.where;
    const auto named = [&](std::string text) { return site::Name{std::move(text), at.day.where}; };
    reading.sheet = named(word(sheet.kind));
    reading.section = named(found.section->id);
    reading.part = named(found.row->part);
    reading.what = named(found.row->what);
    reading.value = named(std::move(value));
    reading.by = by;
    out_.value.push_back(std::move(reading));
  }

  /// What a test says to a row; empty: nothing.
  static std::string value_of(const Test& test, const SheetRow& row) {
    if (row.blank == Blank::yes_no && test.passed) return *test.passed ? "yes" : "no";
    if (row.amount == Amount::flow && test.flow) return show_quantity(test.flow->si(), "L/min");
    return {};
  }

  void take(const Test& test) {
    for (const Sheet& sheet : pack_.sheets) {
      const Found found = find(sheet, [&](const SheetSection&, const SheetRow& row) {
        return row.test == test.kind && row.part == test.part.text && !value_of(test, row).empty();
      });
      if (found.row != nullptr) return add(test.at, sheet, found, value_of(test, *found.row), test.by);
    }
    no_row(test.at, "the test of " + test.part.text);
  }

  [[nodiscard]] const Sheet* sheet_of(const std::string& kind) const {
    const auto found = std::find_if(pack_.sheets.begin(), pack_.sheets.end(), [&](const Sheet& sheet) {
      return record_kind(sheet.kind) == kind || row_kind(sheet.kind) == kind;
    });
    return found == pack_.sheets.end() ? nullptr : &*found;
  }

  /// A reading as `records_of` keeps it: an answer, else what stands first in the note.
  static std::string value_of(const Inspected& item, const SheetRow& row) {
    if (row.blank == Blank::yes_no && item.in_order) return *item.in_order ? "yes" : "no";
    return item.note.text.substr(0, item.note.text.find("; "));
  }

  void take(const Inspection& inspection, const Inspected& item) {
    if (item.what.text == whole_walk) return;  // its rows tell it
    const Sheet* sheet = sheet_of(inspection.kind.text);
    const auto names = [&](const SheetSection& section, const SheetRow& row) {
      const std::string part = row.part.empty() ? "station" : row.part;
      return part == item.part.text && (item.what.text == section.id + ": " + row.what || item.what.text == row.what);
    };
    const Found found = sheet == nullptr ? Found{} : find(*sheet, names);
    if (found.row == nullptr) return no_row(inspection.at, "'" + item.what.text + "' at " + item.part.text);
    std::string value = value_of(item, *found.row);
    if (value.empty()) return;
    if (found.row->test) looked_at_.insert(moment_of(*found.row->test, found.row->part, inspection.at, inspection.by));
    add(inspection.at, *sheet, found, std::move(value), inspection.by);
  }

  const SheetPack& pack_;
  std::set<TestAt> looked_at_;  ///< tests that an inspection tells as they were read; a test may round what was read
  Parsed<std::vector<SheetReading>> out_;
};

}  // namespace

Parsed<std::vector<SheetReading>> readings_of(const site::records::Records& records, const SheetPack& pack) {
  return RecordReader(pack).read(records);
}

}  // namespace forecourse::handover
