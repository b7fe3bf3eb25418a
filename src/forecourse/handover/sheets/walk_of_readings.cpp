#include "forecourse/handover/sheets/walk_of_readings.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <tuple>

#include "forecourse/base/unit_text.h"
#include "forecourse/checks/rules/period.h"

namespace forecourse::handover {
namespace {

/// Whether a section holds what the rule of its walk-through lists; the other sections are of other rules.
bool is_asked(SheetKind sheet, const std::string& section) {
  if (sheet == SheetKind::thirty_day) return section == "spill" || section == "detection";
  return sheet == SheetKind::annual && section == "sump";
}

/// A row of a sheet: section, part and words.
using RowName = std::tuple<std::string, std::string, std::string>;

std::set<RowName> asked_of(const Sheet& sheet) {
  std::set<RowName> out;
  for (const SheetSection& section : sheet.sections) {
    if (!is_asked(sheet.kind, section.id)) continue;
    for (const SheetRow& row : section.rows) out.insert({section.id, row.part, row.what});
  }
  return out;
}

/// What was answered of a walk-through on one day; of a row that was answered twice the later counts.
using Answers = std::map<RowName, const ReadingTold*>;

bool is_later(const ReadingTold& a, const ReadingTold& b) {
  return a.typed.at.time && (!b.typed.at.time || b.typed.at.time->si() < a.typed.at.time->si());
}

/// The answers of each day.
std::map<std::string, Answers> answers_of(const ReadingsTold& told, SheetKind sheet) {
  std::map<std::string, Answers> out;
  for (const ReadingTold& one : told.readings) {
    const bool counts = one.sheet == sheet && is_asked(sheet, one.section) && one.answer && !one.typed.by.empty();
    if (!counts) continue;
    const ReadingTold*& known =
        out[checks::text(one.typed.at.day)].try_emplace({one.section, one.row.part, one.row.what}, &one).first->second;
    if (is_later(one, *known)) known = &one;
  }
  return out;
}

RecordRow walk(SheetKind sheet, const std::string& day, const Answers& answers) {
  const ReadingTold* last = answers.begin()->second;
  std::string faults;
  for (const auto& [name, one] : answers) {
    if (is_later(*one, *last)) last = one;
    if (!*one->answer) faults += (faults.empty() ? "not: " : "; ") + one->row.part + " " + one->row.what;
  }
  RecordRow out{
      "inspections",
      {"day", "kind", "by", "part", "what", "in_order", "note"},
      {day, record_kind(sheet), last->typed.by.text, "station", whole_walk, faults.empty() ? "yes" : "no", faults},
      last->typed.where};
  if (last->typed.at.time) {
    out.columns.emplace_back("time");
    out.cells.push_back(clock_text(last->typed.at.time->si()));
  }
  return out;
}

}  // namespace

std::string clock_text(double since_midnight) {
  const auto minutes = static_cast<int>(std::lround(from_si(since_midnight, "min")));
  return fmt::format("{:02}:{:02}", minutes / 60, minutes % 60);
}

std::string row_kind(SheetKind kind) {
  const bool walked = kind == SheetKind::thirty_day || kind == SheetKind::annual;
  return record_kind(kind) + (walked ? " row" : "");
}

std::vector<RecordRow> walks_of(const ReadingsTold& told, const SheetPack& pack) {
  std::vector<RecordRow> out;
  for (const Sheet& sheet : pack.sheets) {
    const std::set<RowName> asked = asked_of(sheet);
    if (asked.empty()) continue;
    for (const auto& of_day : answers_of(told, sheet.kind)) {
      const Answers& answers = of_day.second;
      const bool whole =
          std::all_of(asked.begin(), asked.end(), [&](const RowName& row) { return answers.contains(row); });
      if (whole) out.push_back(walk(sheet.kind, of_day.first, answers));
    }
  }
  return out;
}

}  // namespace forecourse::handover
