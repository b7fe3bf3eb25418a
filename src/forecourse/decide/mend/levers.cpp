#include "forecourse/decide/mend/levers.h"

#include <algorithm>
#include <utility>

#include "forecourse/decide/mend/lever_rows.h"
#include "forecourse/decide/mend/own_levers.h"

namespace forecourse::decide {
namespace {

/// The path of a key of the finding's part; empty where the part is of another kind.
std::string path_to(const LeverQuestion& question, PartOf part, std::string_view key) {
  if (part == PartOf::station) return std::string(key);
  const std::string path = path_of(question.site, part, question.finding.subject);
  return path.empty() ? path : path + "." + std::string(key);
}

void add_amounts(const LeverQuestion& question, std::vector<Lever>& out) {
  for (const AmountRow& row : amount_rows()) {
    if (row.of != question.of) continue;
    std::string path = path_to(question, row.part, row.key);
    if (path.empty()) continue;
    out.push_back({std::move(path), std::string(row.words), LeverKind::amount, row.sense, row.grid, row.one_to_one});
  }
}

/// \return whether the requirement is on a fact
bool add_facts(const LeverQuestion& question, std::vector<Lever>& out) {
  bool any = false;
  for (const FactRow& row : fact_rows()) {
    if (row.of != question.of) continue;
    any = true;
    std::string path = path_to(question, row.part, row.key);
    if (path.empty()) continue;
    Lever one{std::move(path), row.words.empty() ? question.change : std::string(row.words), LeverKind::word};
    one.value = row.value;
    out.push_back(std::move(one));
  }
  return any;
}

bool has_pipes(PartOf part) {
  return part == PartOf::dispenser || part == PartOf::vent || part == PartOf::fill || part == PartOf::tank ||
         part == PartOf::processor;
}

void add_places(const LeverQuestion& question, std::vector<Lever>& out) {
  for (const PlaceRow& row : place_rows()) {
    if (row.of != question.of) continue;
    for (const PartPath& one : part_paths(question.site, row.part)) {
      const std::string words = std::string(row.words) + (row.own ? "" : " " + one.subject);
      if (!row.own || one.subject == question.finding.subject) {
        add_moves(one.path + ".position", words, has_pipes(row.part), out);
      }
    }
  }
}

void add_sizes(const LeverQuestion& question, std::vector<Lever>& out) {
  for (const SizeRow& row : size_rows()) {
    if (row.of != question.of) continue;
    std::string path = path_to(question, row.part, row.key);
    if (!path.empty()) out.push_back({std::move(path), std::string(row.words), LeverKind::size});
  }
}

bool is_listing(const std::string& of) { return of.ends_with("-listed-ul") || of.ends_with("-listed-en"); }

MendWay other_way(const LeverQuestion& question) {
  if (question.finding.change == "test again" && question.finding.margin.value_or(-1.0) >= 0.0) {
    return MendWay::duty;  // its value is kept, and its test too old
  }
  if (question.is_day || question.of.starts_with("ledger|")) return MendWay::duty;
  if (question.of.starts_with("meter|")) return MendWay::retest;
  if (is_listing(question.of)) return MendWay::replace;
  return way_without_lever(question.of);
}

}  // namespace

MendWay way_without_lever(std::string_view of) {
  for (const OtherRow& row : other_rows()) {
    if (row.of == of) return row.way;
  }
  return MendWay::none;
}

std::string reason_of(MendWay way) {
  switch (way) {
    case MendWay::duty:
      return "what is due is mended by doing it; its day is entered then";
    case MendWay::replace:
      return "what the new part has is entered once it is fitted";
    case MendWay::retest:
      return "what a test or a reading found is not edited: it is made again, and that is entered";
    case MendWay::work:
      return "it is done at the station, and what is found after it is entered";
    case MendWay::change:
    case MendWay::none:
      break;
  }
  return "it is mended by no one value of the site file";
}

Levers levers_of(const LeverQuestion& question) {
  Levers out;
  out.words = question.change;
  if (!question.who.empty()) out.words += (out.words.empty() ? "" : "; by ") + question.who;
  add_amounts(question, out.levers);
  const bool of_fact = add_facts(question, out.levers);
  add_places(question, out.levers);
  add_sizes(question, out.levers);
  for (Lever& one : own_levers(question)) out.levers.push_back(std::move(one));
  if (!out.levers.empty()) {
    const bool words =
        std::all_of(out.levers.begin(), out.levers.end(), [](const Lever& one) { return one.kind == LeverKind::word; });
    out.way = of_fact || words ? MendWay::work : MendWay::change;
    return out;
  }
  out.way = other_way(question);
  out.reason = reason_of(out.way);
  return out;
}

}  // namespace forecourse::decide
