#include "forecourse/server/answers/station/diagnostics_json.h"

#include <algorithm>

#include "forecourse/report/diagnostic_text.h"
#include "forecourse/report/svg/shapes.h"
#include "forecourse/site/text/document.h"

namespace forecourse::server {
namespace {

using report::Json;

/// Code points of a span on its first line.
std::size_t length_of(const std::string& text, SourceSpan where) {
  const std::string_view all(text);
  const std::size_t begin = std::min<std::size_t>(where.begin, all.size());
  const std::string_view under = all.substr(begin, where.end > begin ? where.end - begin : 0);
  return report::svg::length(under.substr(0, under.find('\n')));
}

Json diagnostic_json(const Diagnostic& d, const std::string& text, const std::vector<StationPart>& parts) {
  Json out{{"severity", word(d.severity)}, {"message", d.message}, {"hint", d.hint}};
  const bool placed = d.where && d.where->text == 0;
  const report::LineColumn at = placed ? report::line_column(text, d.where->begin) : report::LineColumn{0, 0};
  out["line"] = at.line;
  out["column"] = at.column;
  out["length"] = placed ? length_of(text, *d.where) : 0;
  out["path"] = report::text_or_null(placed ? path_at(parts, *d.where) : std::string());
  return out;
}

}  // namespace

Json diagnostics_json(const std::vector<Diagnostic>& diagnostics, const std::string& text,
                      const std::vector<StationPart>& parts) {
  return report::array_of(diagnostics, [&](const Diagnostic& d) { return diagnostic_json(d, text, parts); });
}

Json diagnostics_json(const std::vector<Diagnostic>& diagnostics, const std::string& text) {
  if (diagnostics.empty()) return Json::array();
  return diagnostics_json(diagnostics, text, station_parts(site::read_document(text, 0).value.root, text));
}

std::map<std::string, std::string> problems_by_path(const std::vector<Diagnostic>& diagnostics,
                                                    const std::vector<StationPart>& parts) {
  std::map<std::string, std::string> out;
  for (const Diagnostic& d : diagnostics) {
    if (!d.where || d.severity == Severity::note) continue;
    out.try_emplace(path_at(parts, *d.where), d.message + (d.hint.empty() ? "" : "; " + d.hint));
  }
  return out;
}

}  // namespace forecourse::server
