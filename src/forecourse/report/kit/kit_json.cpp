#include "forecourse/report/kit/kit_report.h"
#include "forecourse/report/kit/kit_view.h"

namespace forecourse::report {
namespace {

using namespace handover;

const char* unit_of(const KitRow& row) { return row.is_pipe ? "length" : "each"; }

const char* word_of(Bears bears) {
  if (bears == Bears::nothing) return "nothing";
  return bears == Bears::fuel ? "fuel" : "vapor";
}

class Writer {
 public:
  explicit Writer(site::Display display) : display_(display) {}

  [[nodiscard]] Json sizes(const std::vector<KitSize>& all) const {
    return array_of(all, [&](const KitSize& one) {
      return Json{{"name", one.name},
                  {"value", number_or_null(one.value)},
                  {"unit", text_or_null(one.unit)},
                  {"text", text_or_null(one.text)},
                  {"shown", size_in_words(one, display_, Glyphs::unicode)}};
    });
  }

  [[nodiscard]] Json row(const KitRow& one) const {
    return {{"stop", Json{{"number", static_cast<int>(one.stop)}, {"name", handover::word(one.stop)}}},
            {"kind", one.kind},
            {"what", one.what},
            {"sizes", sizes(one.sizes)},
            {"function", one.function},
            {"needed", needed(one.needed)},
            {"rating_pressure_gauge_pa", number_or_null(one.rating)},
            {"rating_below_need", one.below_need},
            {"thread", nullptr},
            {"standards", array_of(one.standards, standard)},
            {"listed_to", one.listed_to},
            {"compatibility", compatibility(one.compatibility)},
            {"count", count_or_null(one.count)},
            {"unit", unit_of(one)},
            {"length_m", number_or_null(one.length)},
            {"runs_without_length", one.runs_without_length},
            {"ordered", one.not_ordered.empty()},
            {"not_ordered_because", text_or_null(one.not_ordered)},
            {"subjects", one.subjects},
            {"parts", one.parts},
            {"your_part_number", nullptr}};
  }

  [[nodiscard]] Json pipe(const PipeTotal& one) const {
    const auto known = [&](double length) { return one.runs_without_length < one.runs ? Json(length) : Json(); };
    return {{"what", one.what},
            {"sizes", sizes(one.sizes)},
            {"runs", one.runs},
            {"runs_without_length", one.runs_without_length},
            {"length_m", known(one.length)},
            {"length_low_m", known(one.length_low)},
            {"length_high_m", known(one.length_high)},
            {"order_length_m", known(one.order_length)},
            {"at_least", one.runs_without_length > 0},
            {"sticks", count_or_null(one.sticks)}};
  }

  [[nodiscard]] Json order(const OrderLine& one) const {
    return {{"what", one.what}, {"sizes", sizes(one.sizes)}, {"count", count_or_null(one.count)}, {"rows", one.rows}};
  }

 private:
  [[nodiscard]] Json needed(const RatingNeeded& one) const {
    return {{"bears", word_of(one.bears)},
            {"pressure_gauge_pa", number_or_null(one.pressure_gauge)},
            {"vacuum_pa", number_or_null(one.vacuum)},
            {"basis", text_or_null(one.basis)},
            {"missing", text_or_null(one.missing)},
            {"shown", text_or_null(needed_in_words(one, display_, Glyphs::unicode))}};
  }

  static Json standard(const KitStandard& one) {
    return {
        {"standard", one.standard}, {"clause", one.clause}, {"edition", one.edition}, {"seen", report::word(one.seen)}};
  }

  static Json compatibility(const Compatibility& one) {
    return {{"fit", handover::word(one.fit)},
            {"product_kinds", one.kinds},
            {"high_blend", one.high_blend},
            {"missing", text_or_null(one.missing)}};
  }

  site::Display display_;
};

Json spare_json(const Spare& one, const Kit& kit) {
  const KitRow& row = kit.rows[one.rows.front()];
  return {{"rows", one.rows},
          {"what", row.what},
          {"consequence", handover::word(one.consequence)},
          {"worst", one.worst},
          {"hoses_shut", one.hoses},
          {"hoses_of_station", one.hoses_of_station},
          {"products_stopped", one.products},
          {"reason", one.reason}};
}

}  // namespace

Json kit_document(const Kit& kit, const ReportFacts& facts) {
  const Writer writer(facts.display);
  JsonDocument out;
  out.study = "kit";
  out.version = kit.version;
  out.cautions = kit_cautions();
  out.options = {{"waste_share", number_or_null(kit.options.waste)},
                 {"stick_m", number_or_null(kit.options.stick_length)}};
  out.defaults = kit.defaults;
  out.result = {{"order", array_of(kit.order, [&](const OrderLine& one) { return writer.order(one); })},
                {"pipes", array_of(kit.pipes, [&](const PipeTotal& one) { return writer.pipe(one); })},
                {"rows", array_of(kit.rows, [&](const KitRow& one) { return writer.row(one); })},
                {"spares", array_of(kit.spares, [&](const Spare& one) { return spare_json(one, kit); })},
                {"not_told", not_told_in_words(kit, facts.display, Glyphs::unicode)}};
  out.warnings = kit.warnings;
  return document(out, facts.texts);
}

}  // namespace forecourse::report
