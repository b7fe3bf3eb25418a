#include <algorithm>

#include "forecourse/checks/rules/period.h"
#include "forecourse/handover/sheets/walk_of_readings.h"
#include "forecourse/site/records/test_words.h"

namespace forecourse::handover {
namespace {

/// Whether a reading belongs to a test that was made of the same part on the same day.
bool is_reading_of(const ReadingTold& one, const ReadingTold& test) {
  return one.row.reading_of && one.row.reading_of == test.row.test && one.sheet == test.sheet &&
         one.row.part == test.row.part && checks::days_between(one.typed.at.day, test.typed.at.day) == 0;
}

bool same_row(const ReadingTold& a, const ReadingTold& b) {
  return a.sheet == b.sheet && a.section == b.section && a.row.part == b.row.part && a.row.what == b.row.what;
}

/// Whether the same was read again later that day, and no longer outside.
bool mended(const ReadingTold& outside, const ReadingsTold& all) {
  return std::any_of(all.readings.begin(), all.readings.end(), [&](const ReadingTold& one) {
    return same_row(one, outside) && checks::days_between(one.typed.at.day, outside.typed.at.day) == 0 &&
           one.verdict != Verdict::outside && one.typed.at.time && outside.typed.at.time &&
           one.typed.at.time->si() > outside.typed.at.time->si();
  });
}

/// A reading of the test that is outside; null: none.
const ReadingTold* outside_beside(const ReadingTold& test, const ReadingsTold& all) {
  for (const ReadingTold& one : all.readings) {
    if (one.verdict == Verdict::outside && is_reading_of(one, test) && !mended(one, all)) return &one;
  }
  return nullptr;
}

class RecordMaker {
 public:
  RecordMaker(const ReadingTold& told, const ReadingsTold& all) : told_(told), outside_(outside_beside(told, all)) {}

  [[nodiscard]] RecordRow inspection() const {
    RecordRow out = begin("inspections");
    add(out, "kind", row_kind(told_.sheet));
    add(out, "by", told_.typed.by.text);
    add(out, "part", told_.row.part.empty() ? "station" : told_.row.part);
    add(out, "what", told_.section + ": " + told_.row.what);
    add(out, "in_order", in_order());
    add(out, "note", note());
    return out;
  }

  [[nodiscard]] RecordRow test() const {
    RecordRow out = begin("tests");
    add(out, "kind", std::string(word(*told_.row.test)));
    add(out, "part", told_.row.part);
    if (told_.answer) add(out, "passed", *told_.answer && outside_ == nullptr ? "yes" : "no");
    if (told_.row.amount == Amount::flow) add(out, "flow", told_.value);
    add(out, "by", told_.typed.by.text);
    std::string note = std::string(word(told_.sheet)) + ", " + told_.row.what;
    if (told_.answer.value_or(false) && outside_ != nullptr) {
      note += "; not passed: " + outside_->row.what + " was " + outside_->value + ", " + outside_->reason;
    }
    add(out, "note", std::move(note));
    return out;
  }

 private:
  [[nodiscard]] RecordRow begin(const char* kind) const {
    RecordRow out;
    out.kind = kind;
    out.where = told_.typed.where;
    add(out, "day", checks::text(told_.typed.at.day));
    if (told_.typed.at.time) add(out, "time", clock_text(told_.typed.at.time->si()));
    return out;
  }

  static void add(RecordRow& row, const char* column, std::string cell) {
    row.columns.emplace_back(column);
    row.cells.push_back(std::move(cell));
  }

  /// As it was typed; what a number means is found anew whenever it is held against its sheet.
  [[nodiscard]] std::string in_order() const {
    if (!told_.answer || !told_.row.effect.empty()) return {};
    return *told_.answer ? "yes" : "no";
  }

  [[nodiscard]] std::string note() const {
    std::string out = told_.value + (told_.typed.note.empty() ? "" : "; " + told_.typed.note.text);
    std::replace(out.begin(), out.end(), '\n', ' ');
    return out;
  }

  const ReadingTold& told_;
  const ReadingTold* outside_;  ///< a reading of the same test that it cannot be passed with; null: none
};

}  // namespace

std::string record_kind(SheetKind kind) { return kind == SheetKind::thirty_day ? "30-day" : word(kind); }

std::vector<RecordRow> records_of(const ReadingsTold& told) {
  std::vector<RecordRow> out;
  out.reserve(2 * told.readings.size());
  for (const ReadingTold& one : told.readings) {
    const RecordMaker make(one, told);
    if (one.row.test && !one.row.part.empty()) out.push_back(make.test());
    out.push_back(make.inspection());
  }
  return out;
}

}  // namespace forecourse::handover
