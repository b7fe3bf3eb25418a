#include "forecourse/report/draw/draw_report.h"

namespace forecourse::report {
namespace {

using namespace handover;

Json json(const Point& point) { return Json::array({number_or_null(point.x), number_or_null(point.y)}); }

Json points(const std::vector<Point>& all) {
  return array_of(all, [](const Point& one) { return json(one); });
}

const char* line_word(LineType line) {
  switch (line) {
    case LineType::dashed:
      return "dashed";
    case LineType::chain:
      return "chain";
    case LineType::dotted:
      return "dotted";
    case LineType::solid:
      break;
  }
  return "solid";
}

const char* anchor_word(Anchor anchor) {
  return anchor == Anchor::left ? "left" : anchor == Anchor::middle ? "middle" : "right";
}

Json json(const Layer& layer) {
  return {{"id", layer.id},
          {"words", layer.words},
          {"color_index", layer.color},
          {"line", line_word(layer.line)},
          {"width_m", layer.width},
          {"printed", layer.printed}};
}

Json json(const Path& path) {
  return {{"layer", path.layer}, {"points_m", points(path.points)}, {"closed", path.closed}, {"area", path.area}};
}

Json json(const Circle& circle) {
  return {
      {"layer", circle.layer}, {"center_m", json(circle.center)}, {"radius_m", circle.radius}, {"area", circle.area}};
}

Json json(const Arc& arc) {
  return {{"layer", arc.layer},
          {"center_m", json(arc.center)},
          {"radius_m", arc.radius},
          {"from_rad", arc.from},
          {"to_rad", arc.to}};
}

Json json(const Text& text) {
  return {{"layer", text.layer},
          {"at_m", json(text.at)},
          {"text", text.text},
          {"height_m", text.height},
          {"anchor", anchor_word(text.anchor)},
          {"angle_rad", text.angle}};
}

Json json(const handover::Dimension& d) {
  return {{"layer", d.layer},
          {"what", d.what},
          {"from_m", json(d.from)},
          {"to_m", json(d.to)},
          {"line_from_m", json(d.line_from)},
          {"line_to_m", json(d.line_to)},
          {"value_m", number_or_null(d.value)},
          {"text", d.text},
          {"text_at_m", json(d.text_at)},
          {"height_m", d.height},
          {"angle_rad", d.angle}};
}

Json json(const Symbol& symbol) {
  return {{"kind", symbol.kind},
          {"words", symbol.words},
          {"layer", symbol.layer},
          {"paths", array_of(symbol.paths, [](const Path& one) { return json(one); })},
          {"circles", array_of(symbol.circles, [](const Circle& one) { return json(one); })}};
}

Json json(const Mark& mark) {
  return {{"kind", mark.kind},
          {"part", mark.part},
          {"subject", text_or_null(mark.subject)},
          {"at_m", json(mark.at)},
          {"place", mark.place}};
}

Json json(const NotPlaced& one) {
  return {{"kind", one.kind}, {"part", one.part}, {"subject", text_or_null(one.subject)}, {"why", one.why}};
}

Json json(const Zone& zone) {
  return {{"part", zone.part},       {"subject", zone.subject}, {"words", zone.words},     {"division", zone.division},
          {"radius_m", zone.radius}, {"clause", zone.clause},   {"edition", zone.edition}, {"seen", "text"}};
}

Json json(const ZoneGap& gap) { return {{"part", gap.part}, {"subject", gap.subject}, {"why", gap.why}}; }

Json json(const LineRow& line) {
  return {{"id", line.id},
          {"product", text_or_null(line.product)},
          {"bore_m", number_or_null(line.bore)},
          {"length_m", number_or_null(line.length)},
          {"straight_m", number_or_null(line.drawn)},
          {"fall", number_or_null(line.fall)},
          {"burial_m", number_or_null(line.burial)}};
}

Json json(const DrawingSheet& sheet) {
  return {{"paper", sheet.paper}, {"width_m", sheet.width}, {"height_m", sheet.height},
          {"scale", sheet.scale}, {"words", sheet.words},   {"corner_m", json(sheet.corner)}};
}

template <class T>
Json all(const std::vector<T>& items) {
  return array_of(items, [](const T& one) { return json(one); });
}

Json json(const Drawing& d) {
  Json cells = Json::object();
  for (const TitleCell& cell : d.cells) cells[cell.label] = cell.text;
  return {{"id", d.id},
          {"title", d.title},
          {"sheet", json(d.sheet)},
          {"cells", std::move(cells)},
          {"parts", d.marks.size() + d.not_placed.size() + d.elsewhere.size()},
          {"placed", d.marks.size()},
          {"marks", all(d.marks)},
          {"not_placed", all(d.not_placed)},
          {"elsewhere", d.elsewhere},
          {"lines", all(d.lines)},
          {"zones", all(d.zones)},
          {"zone_gaps", all(d.zone_gaps)},
          {"notes", d.notes},
          {"layers", all(d.layers)},
          {"symbols", all(d.symbols)},
          {"paths", all(d.paths)},
          {"circles", all(d.circles)},
          {"arcs", all(d.arcs)},
          {"texts", all(d.texts)},
          {"dimensions", all(d.dimensions)}};
}

}  // namespace

Json draw_document(const DrawingSet& set, const DrawFacts& facts) {
  JsonDocument out;
  out.study = "draw";
  out.version = set.version;
  out.cautions = set.cautions;
  out.options = {{"which", text_or_null(set.options.which)},
                 {"paper", text_or_null(set.options.paper)},
                 {"scale", text_or_null(set.options.scale)},
                 {"hose", text_or_null(set.options.hose)},
                 {"date", text_or_null(set.options.date)},
                 {"drawn_by", text_or_null(set.options.drawn_by)},
                 {"checked_by", text_or_null(set.options.checked_by)}};
  out.result = {{"drawings", array_of(set.drawings, [](const Drawing& one) { return json(one); })}};
  out.warnings = set.warnings;
  return document(out, facts.texts);
}

}  // namespace forecourse::report
