#include <algorithm>

#include "forecourse/base/unit_text.h"
#include "forecourse/checks/rules/period.h"
#include "forecourse/handover/sheets/walk_of_readings.h"

namespace forecourse::handover {
namespace {

using site::records::TestKind;

const char* record_word(TestKind kind) {
  switch (kind) {
    case TestKind::line_tightness:
      return "line-tightness";
    case TestKind::tank_tightness:
      return "tank-tightness";
    case TestKind::leak_detector:
      return "leak-detector";
    case TestKind::shear_valve_trip:
      return "shear-valve-trip";
    case TestKind::overfill_device:
      return "overfill-device";
    case TestKind::spill_container:
      return "spill-container";
    case TestKind::sump:
      return "sump";
    case TestKind::interstice:
      return "interstice";
    case TestKind::sensor:
      return "sensor";
    case TestKind::emergency_stop:
      return "emergency-stop";
    case TestKind::flow:
      return "flow";
    case TestKind::vent_valve:
      return "vent-valve";
    case TestKind::vapor_return:
      return "vapor-return";
    case TestKind::vapor_recovery:
      return "vapor-recovery";
    case TestKind::gauge_leak_test:
      return "gauge-leak-test";
    case TestKind::statistics:
      return "statistics";
    case TestKind::line_acceptance:
      return "line-acceptance";
    case TestKind::protection:
      return "protection";
    case TestKind::hand_held:
      return "hand-held";
  }
  return "";
}

class RecordMaker {
 public:
  explicit RecordMaker(const ReadingTold& told) : told_(told) {}

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
    add(out, "kind", record_word(*told_.row.test));
    add(out, "part", told_.row.part);
    if (told_.answer) add(out, "passed", *told_.answer ? "yes" : "no");
    if (told_.row.amount == Amount::flow) add(out, "flow", told_.value);
    add(out, "by", told_.typed.by.text);
    add(out, "note", std::string(word(told_.sheet)) + ", " + told_.row.what);
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
    const int minutes = static_cast<int>(from_si(since_midnight, "min") + 0.5);
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
};

}  // namespace

std::string record_kind(SheetKind kind) { return kind == SheetKind::thirty_day ? "30-day" : word(kind); }

std::vector<RecordRow> records_of(const ReadingsTold& told) {
  std::vector<RecordRow> out;
  out.reserve(2 * told.readings.size());
  for (const ReadingTold& one : told.readings) {
    const RecordMaker make(one);
    if (one.row.test && !one.row.part.empty()) out.push_back(make.test());
    out.push_back(make.inspection());
  }
  return out;
}

}  // namespace forecourse::handover
