#include "forecourse/report/study_page.h"

#include "forecourse/report/html/parts.h"

namespace forecourse::report {
namespace {

std::vector<std::string> in_words(const std::vector<DefaultUsed>& defaults, site::Display display, Glyphs glyphs) {
  std::vector<std::string> out;
  out.reserve(defaults.size());
  for (const DefaultUsed& used : defaults) {
    out.push_back((used.system.empty() ? "" : used.system + ": ") + used.what + " " +
                  default_value(used, display, glyphs) + ", " + word(used.status) + " (" + used.source + ")");
  }
  return out;
}

std::string in_words(const Diagnostic& warning) {
  return warning.message + (warning.hint.empty() ? "" : ": " + warning.hint);
}

std::string listed(const char* heading, const std::vector<std::string>& items) {
  return items.empty() ? std::string() : html::heading(2, heading) + html::list(items);
}

}  // namespace

html::Page titled_page(const std::string& study, const std::string& cell, const std::string& version,
                       const site::Site& site, const std::string& date, const std::vector<SourceText>& texts) {
  html::Page page;
  page.station = site.name.empty() ? "Station without a name" : site.name.text;
  page.study = study;
  page.cells = {{"Station", site.name.text}, {"Study", cell}};
  if (!texts.empty()) page.cells.emplace_back("Site file", texts.front().name);
  if (!date.empty()) page.cells.emplace_back("Date", date);
  page.cells.emplace_back("Units", site.display == site::Display::us ? "US customary" : "SI");
  page.cells.emplace_back("Made with", "forecourse " + version);
  return page;
}

std::string warnings_html(const std::vector<Diagnostic>& warnings) {
  std::vector<std::string> out;
  out.reserve(warnings.size());
  for (const Diagnostic& warning : warnings) out.push_back(in_words(warning));
  return listed("Warnings", out);
}

std::string run_again_html(const std::string& command) {
  if (command.empty()) return {};
  return html::heading(2, "Run it again") + html::paragraph(command, "command");
}

std::string study_page(const std::string& study, const std::string& cell, const std::string& caution,
                       const std::string& body, const AroundStudy& around, const site::Site& site,
                       const ReportFacts& facts) {
  html::Page page = titled_page(study, cell, around.version, site, facts.date, facts.texts);
  page.caution = caution;
  page.body = body + listed("Values that were not entered", in_words(around.defaults, site.display, Glyphs::unicode)) +
              warnings_html(around.warnings) + listed("Cautions", around.cautions) + run_again_html(facts.command);
  return html::page(page);
}

void tell_end(const AroundStudy& around, site::Display display, Glyphs glyphs, const std::vector<std::string>& written,
              terminal::Page& page) {
  if (!around.defaults.empty()) page.heading("Values that were not entered");
  for (const std::string& one : in_words(around.defaults, display, glyphs)) page.item(one);
  if (!around.warnings.empty()) page.heading("Warnings");
  for (const Diagnostic& warning : around.warnings) page.notice("Warning", in_words(warning));
  page.heading("Cautions");
  for (const std::string& caution : around.cautions) page.item(caution);
  for (const std::string& path : written) page.item("written: " + path);
}

}  // namespace forecourse::report
