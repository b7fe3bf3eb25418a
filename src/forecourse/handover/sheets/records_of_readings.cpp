#include <algorithm>
#include <cmath>

#include "forecourse/base/unit_text.h"
#include "forecourse/checks/rules/period.h"
#include "forecourse/handover/sheets/walk_of_readings.h"
#include "forecourse/site/records/test_words.h"

namespace forecourse::handover {
namespace {

/// Rows of one test have ids that begin alike: "sump-tight", "sump-change".
std::string test_of(const std::string& id) { return id.substr(0, id.find('-')); }

bool same_test(const ReadingTold& a, const ReadingTold& b) {
  return a.sheet == b.sheet && a.section == b.section && a.row.part == b.row.part &&
         test_of(a.row.id) == test_of(b.row.id) && checks::days_between(a.typed.at.day, b.typed.at.day) == 0;
}

/// Whether the same was read again later that day, and no longer outside.
bool mended(const ReadingTold& outside, const ReadingsTold& all) {
  return std::any_of(all.readings.begin(), all.readings.end(), [&](const ReadingTold& one) {
    return same_test(one, outside) && one.row.what == outside.row.what && one.verdict != Verdict::outside &&
           one.typed.at.time && outside.typed.at.time && one.typed.at.time->si() > outside.typed.at.time->si();
  });
}

/// A reading of the same test that is outside; null: none.
const ReadingTold* outside_beside(const ReadingTold& told, const ReadingsTold& all) {
  for (const ReadingTold& one : all.readings) {
    const bool other = &one != &told && one.verdict == Verdict::outside && same_test(one, told);
    if (other && one.row.what != told.row.what && !mended(one, all)) return &one;
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
    if (told_.typed.at.time) add(out, "time", clock(told_.typed.at.time->si()));
    return out;
  }

  static void add(RecordRow& row, const char* column, std::string cell) {
    row.columns.emplace_back(column);
    row.cells.push_back(std::move(cell));
  }

  /// "06:30"
  static std::string clock(double since_midnight) {
    const auto minutes = static_cast<int>(std::lround(from_si(since_midnight, "min")));
    const auto two = [](int n) { return (n < 10 ? "0" : "") + std::to_string(n); };
    constexpr int minutes_of_hour = 60;
    return two(minutes / minutes_of_hour) + ":" + two(minutes % minutes_of_hour);
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
