#include "forecourse/checks/rules/period.h"
#include "forecourse/handover/sheets/sheets.h"
#include "forecourse/report/sheets/sheets_report.h"

namespace forecourse::report {
namespace {

using handover::SheetRow;

Json fact_or_null(const std::optional<bool>& fact) { return fact ? Json(*fact) : Json(nullptr); }

Json limit_json(const handover::RowLimit& limit) {
  if (limit.words.empty() && limit.clause.empty() && !limit.at_least && !limit.at_most) return nullptr;
  return {{"asks", text_or_null(limit.words)},        {"at_least", number_or_null(limit.at_least)},
          {"at_most", number_or_null(limit.at_most)}, {"limit_itself_meets", !limit.strict},
          {"clause", text_or_null(limit.clause)},     {"edition", text_or_null(limit.edition)},
          {"clause_verified", limit.verified},        {"binds", limit.binds}};
}

Json figure_json(const handover::SheetFigure& figure) {
  return {{"label", figure.label},
          {"amount", handover::word(figure.amount)},
          {"value", number_or_null(figure.value)},
          {"unit", handover::unit_of(figure.amount)}};
}

Json row_json(const SheetRow& row, const std::vector<SourceText>& texts) {
  Json out{{"id", row.id},
           {"what", row.what},
           {"part", text_or_null(row.part)},
           {"path", text_or_null(row.path)},
           {"effect", text_or_null(row.effect)},
           {"blank", handover::word(row.blank)},
           {"amount", handover::word(row.amount)},
           {"unit", handover::unit_of(row.amount)},
           {"value", number_or_null(row.value)},
           {"value_by", text_or_null(row.value_by)},
           {"words", text_or_null(row.words)},
           {"figures", array_of(row.figures, figure_json)},
           {"expected", fact_or_null(row.expected)},
           {"missing", text_or_null(row.missing)},
           {"rests_on", text_or_null(row.rests_on)},
           {"tolerance",
            {{"low", number_or_null(row.tolerance.low)},
             {"high", number_or_null(row.tolerance.high)},
             {"source", text_or_null(row.tolerance.source)}}},
           {"limit", limit_json(row.limit)},
           {"who", text_or_null(row.who)}};
  const bool placed = row.where.end > row.where.begin;
  out["place"] = place_json(placed ? std::optional(row.where) : std::nullopt, texts);
  return out;
}

Json section_json(const handover::SheetSection& section, const std::vector<SourceText>& texts) {
  return {{"id", section.id},
          {"title", section.title},
          {"notes", section.notes},
          {"ordered", section.ordered},
          {"effects", section.effects},
          {"rows", array_of(section.rows, [&](const SheetRow& row) { return row_json(row, texts); })}};
}

Json sheet_json(const handover::Sheet& sheet, const std::vector<SourceText>& texts) {
  return {{"id", handover::word(sheet.kind)},
          {"title", sheet.title},
          {"first", sheet.first},
          {"cautions", sheet.cautions},
          {"sections", array_of(sheet.sections, [&](const auto& one) { return section_json(one, texts); })}};
}

Json reading_json(const handover::ReadingTold& one, const std::vector<SourceText>& texts) {
  return {{"sheet", handover::word(one.sheet)},
          {"section", one.section},
          {"row", one.row.id},
          {"part", text_or_null(one.row.part)},
          {"what", one.row.what},
          {"typed", one.value},
          {"amount", number_or_null(one.amount)},
          {"unit", handover::unit_of(one.row.amount)},
          {"answer", fact_or_null(one.answer)},
          {"value", number_or_null(one.row.value)},
          {"difference", number_or_null(one.difference)},
          {"low", number_or_null(one.row.tolerance.low)},
          {"high", number_or_null(one.row.tolerance.high)},
          {"verdict", handover::word(one.verdict)},
          {"reason", text_or_null(one.reason)},
          {"by", text_or_null(one.typed.by.text)},
          {"day", checks::text(one.typed.at.day)},
          {"note", text_or_null(one.typed.note.text)},
          {"place", place_json(one.typed.where, texts)}};
}

}  // namespace

Json sheets_document(const handover::SheetPack& pack, const SheetsFacts& facts) {
  JsonDocument out;
  out.study = "sheets";
  out.version = pack.version;
  out.cautions = handover::sheet_cautions();
  Json kinds = Json::array();
  for (const handover::Sheet& sheet : pack.sheets) kinds.push_back(handover::word(sheet.kind));
  out.options = {{"on", checks::text(pack.day)},
                 {"sheets", kinds},
                 {"tolerance_flow_share", number_or_null(pack.options.agreed.flow)},
                 {"tolerance_pressure_pa", number_or_null(pack.options.agreed.pressure)},
                 {"tolerance_height_m", number_or_null(pack.options.agreed.height)}};
  out.defaults = pack.defaults;
  out.result = {{"first_in_an_emergency", handover::first_in_an_emergency()},
                {"sheets", array_of(pack.sheets, [&](const auto& one) { return sheet_json(one, facts.texts); })}};
  out.result["readings"] = nullptr;
  if (facts.readings != nullptr) {
    out.result["readings"] = {
        {"within", facts.readings->within},
        {"outside", facts.readings->outside},
        {"not_determined", facts.readings->not_determined},
        {"stored", facts.stored},
        {"lines", array_of(facts.readings->readings, [&](const auto& one) { return reading_json(one, facts.texts); })}};
  }
  out.warnings = pack.warnings;
  return document(out, facts.texts);
}

}  // namespace forecourse::report
