#include "forecourse/server/pages/station_pages.h"

#include <fmt/format.h>

#include <array>
#include <filesystem>
#include <utility>
#include <vector>

#include "forecourse/report/html/paper.h"
#include "forecourse/report/station/station_report.h"
#include "forecourse/server/answers/wants/opened_site.h"
#include "forecourse/server/pages/day.h"
#include "forecourse/server/pages/pdf.h"
#include "forecourse/server/pages/shell_word.h"

namespace forecourse::server {

using report::Json;

/// A text, and all that its studies say.
struct StationPages::Studied {
  std::string text;
  std::string file;
  site::Date day;
  OpenedSite opened;
  report::StationStudies studies;

  [[nodiscard]] bool is(const std::string& of_text, const std::string& of_file, const site::Date& on) const {
    return text == of_text && file == of_file && day.year == on.year && day.month == on.month && day.day == on.day;
  }
};

namespace {

constexpr auto report_members = std::to_array<WantMember>({{"sections", "string[]"},
                                                           {"cells", "Record<string, string>"},
                                                           {"units", "Units"},
                                                           {"paper", "\"a4\" | \"letter\""},
                                                           {"format", "\"html\" | \"paper\" | \"pdf\""}});

/// What is asked for, read.
struct Request {
  report::ReportChoice choice;
  std::string units;
  std::string paper;
  std::string format;
};

Request read_request(WantReader& want, const Json& asked) {
  Request out;
  out.choice.sections = want.texts("sections");
  out.units = read_units(want);
  out.paper = want.word("paper", {"a4", "letter"});
  out.format = want.word("format", {"html", "paper", "pdf"});
  if (!want.has("cells")) return out;
  const Json& cells = asked["cells"];
  if (!cells.is_object()) want.refuse("'cells' is an object", "write {\"client\": \"...\"}");
  for (const auto& [name, text] : cells.items()) {
    if (!text.is_string()) {
      want.refuse("the title cell '" + name + "' is a text", "write it in quotes");
    } else if (const auto wrong = report::fill_cell(name, text.get<std::string>(), out.choice.cells)) {
      want.refuse(wrong->message, wrong->hint);
    }
  }
  return out;
}

/// The command that makes the same page.
std::string command_of(const std::string& file, const Request& asked) {
  const std::string stem = std::filesystem::path(file).stem().string();
  std::string out = "forecourse study " + shell_word(file) + " --out " + shell_word("out/" + stem);
  if (!asked.units.empty()) out += " --units " + asked.units;
  std::string ids;
  for (const std::string& id : asked.choice.sections) ids.append(ids.empty() ? "" : ",").append(id);
  if (!ids.empty()) out += " --sections " + ids;
  for (const auto& [name, text] : asked.choice.cells) {
    if (!text.empty()) out.append(" --cell ").append(shell_word(fmt::format("{}={}", name, text)));
  }
  return out;
}

Json cells_json(const site::Site& site, const site::Date& day) {
  Json out = Json::array();
  for (const report::TitleCell& cell : report::title_cells()) {
    const std::string text = cell.name == "station" ? site.name.text : cell.name == "date" ? in_words(day) : "";
    out.push_back({{"name", cell.name}, {"label", cell.label}, {"when_empty", cell.when_empty}, {"text", text}});
  }
  return out;
}

}  // namespace

StationPages::StationPages() : pages_set_(2) {}
StationPages::~StationPages() = default;

std::shared_ptr<const StationPages::Studied> StationPages::studied(const std::string& text, const std::string& file) {
  const std::lock_guard lock(mutex_);
  const site::Date day = today();
  if (last_ && last_->is(text, file, day)) return last_;
  auto made = std::make_shared<Studied>(Studied{text, file, day, open_site(text, file, ""), {}});
  if (made->opened.problem.is_null()) made->studies = report::study_station(made->opened.site, {}, day);
  last_ = made;
  return last_;
}

Reply StationPages::sections(const std::string& text, const std::string& file) {
  const auto station = studied(text, file);
  const OpenedSite& opened = station->opened;
  if (!opened.problem.is_null()) return json_reply(opened.problem, 422);
  const std::string command = command_of(file, {});
  const report::StationSource source{station->studies, opened.site, opened.texts, opened.warnings, command};
  Json out = {{"sections", Json::array()}, {"cells", cells_json(opened.site, station->day)}};
  for (const report::StationSection& section : report::station_sections(opened.site)) {
    const bool has_content = !section.write(source).empty();
    out["sections"].push_back({{"id", section.id},
                               {"name", section.name},
                               {"has_content", has_content},
                               {"why_not", has_content ? Json() : Json(section.why_empty)}});
  }
  const std::string hint = pdf_hint();
  out["pdf"] = {{"available", hint.empty()}, {"hint", hint.empty() ? Json() : Json(hint)}};
  return json_reply(out);
}

Reply StationPages::report(const std::string& text, const std::string& file, const Json& asked,
                           const GivenUp& given_up) {
  WantReader want(asked, report_members);
  const Request request = read_request(want, asked);
  if (!want.good()) return json_reply(want.problem(), 400);
  const auto station = studied(text, file);
  const OpenedSite& opened = station->opened;
  if (!opened.problem.is_null()) return json_reply(opened.problem, 422);
  const std::vector<Diagnostic> wrong = report::check_sections(request.choice.sections, opened.site);
  if (!wrong.empty()) return json_reply(refused(wrong), 400);
  site::Site site = opened.site;
  if (!request.units.empty()) site.display = request.units == "us" ? site::Display::us : site::Display::si;
  const std::string html = report::station_report(
      station->studies, site, {in_words(station->day), command_of(file, request), opened.texts, opened.warnings},
      request.choice);
  const report::html::Paper paper = paper_of(request.paper, site.display);
  if (request.format == "paper") return {200, report::html::on_paper(html, paper), "text/html", {}};
  return request.format == "pdf" ? pdf(html, paper, given_up) : Reply{200, html, "text/html", {}};
}

Reply StationPages::pdf(const std::string& html, report::html::Paper paper, const GivenUp& given_up) {
  if (!pages_set_.try_acquire()) {
    return refusal(429, "two PDFs are being made already", "try again when one of them is done");
  }
  // given back also where something is thrown
  const std::shared_ptr<void> place(nullptr, [this](void*) { pages_set_.release(); });
  std::string bytes;
  const PdfMade made = make_pdf(bytes, html, paper, given_up);
  if (!made.good()) return refusal(made.absent ? 503 : 500, "no PDF was made: " + made.error, made.hint);
  return {200, std::move(bytes), "application/pdf", {}};
}

}  // namespace forecourse::server
