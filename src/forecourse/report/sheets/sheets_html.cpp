#include <fmt/format.h>

#include <algorithm>

#include "forecourse/handover/sheets/sheets.h"
#include "forecourse/report/html/parts.h"
#include "forecourse/report/sheets/sheet_tables.h"
#include "forecourse/report/sheets/sheets_report.h"
#include "forecourse/report/sheets/sheets_view.h"
#include "forecourse/report/study_page.h"

namespace forecourse::report {
namespace {

using handover::SheetSection;
using svg::escape;

/// Blanks, boxes and large type; on paper narrower margins of cells.
constexpr const char* rules = R"css(
.first{font-size:34px;line-height:1.2;font-weight:700;border:4px solid var(--ink);padding:var(--s3) var(--s4);margin:var(--s4) 0;max-width:none}
.line{display:inline-block;min-width:4.5em;border-bottom:1px solid var(--ink);height:1.5em} .long{min-width:11em}
.box{display:inline-block;width:.95em;height:.95em;border:1px solid var(--ink);margin:0 .2em 0 0;vertical-align:-.1em}
.fill{white-space:nowrap} .write{width:9.5em} .sheet{width:100%} .sheet td,.sheet th{padding-right:var(--s3)} .sheet tbody th{font-weight:400;min-width:0}
.sheet tbody th.fill{font-weight:700} .sheet thead th{color:var(--ink)} .sheet thead span{display:inline;white-space:normal}
.small{color:var(--ink2);font-size:12px} .sign{margin:var(--s3) 0;max-width:none} .pack{break-before:page}
@media print{.first{font-size:22pt;border-width:3pt;margin:0 0 8pt} .sheet{font-size:8.5pt} .sheet td,.sheet th{padding:3px 7px 3px 0}
.small{font-size:7.5pt} h2{font-size:16pt;margin-top:12pt} .sheet thead th{font-size:8pt;line-height:1.2} h3{font-size:12pt;margin-top:10pt} .sign{font-size:9pt}
.pack h2{margin-top:0} .wall thead{display:none}}
)css";

constexpr const char* card_rules = R"css(
.first{font-size:48px} .sheet{font-size:16px} .long{min-width:16em}
@media print{.first{font-size:30pt} h1{font-size:18pt} header>p{font-size:11pt} h2{font-size:12.5pt;margin-top:7pt}
.sheet{font-size:10pt} .scroll{margin:3pt 0} .caution{padding:3pt 6pt} .ground{display:none}}
)css";

/// What the card for the wall leaves out on paper.
constexpr const char* wall_rules = "@media print{.cells,.warnings,.wall thead{display:none}}\n";

std::string section_html(const SheetSection& section, site::Display display, int level) {
  std::string out = html::heading(level, section.title);
  for (const std::string& note : section.notes) out += html::paragraph(note);
  if (section.rows.empty()) return out;
  return out + sheet_tables(section, display);
}

std::string sections_html(const handover::Sheet& sheet, site::Display display, int level) {
  std::string out;
  for (const SheetSection& section : sheet.sections) out += section_html(section, display, level);
  return out;
}

bool is_card(handover::SheetKind kind) {
  return kind == handover::SheetKind::delivery_card || kind == handover::SheetKind::emergency_card;
}

bool is_for_wall(const handover::Sheet& sheet) { return sheet.kind == handover::SheetKind::emergency_card; }

std::string readings_html(const handover::ReadingsTold& all, site::Display display) {
  html::Table table;
  table.caption = "Readings";
  table.note = fmt::format("{} within, {} outside, {} not determined.", all.within, all.outside, all.not_determined);
  table.columns = {{"Part", "", false, false},
                   {"Sheet", "", false, false},
                   {"Reading", "", false, true},
                   {"Verdict", "", false, false}};
  for (const handover::ReadingTold& one : all.readings) {
    table.rows.push_back({{one.row.part.empty() ? "station" : one.row.part, handover::word(one.sheet),
                           in_words(one, display), handover::word(one.verdict)},
                          one.verdict == handover::Verdict::outside});
  }
  return html::heading(2, "Readings") + html::table(table);
}

/// How much was not entered; the rows that rest on what nobody published say so themselves.
std::string defaults_html(const std::vector<DefaultUsed>& defaults) {
  if (defaults.empty()) return {};
  const auto invented = std::count_if(defaults.begin(), defaults.end(), [](const auto& one) { return !is_firm(one); });
  return html::heading(2, "Values that were not entered") +
         html::paragraph(
             fmt::format("{} values, of which {} rest on no publication. A row that rests on one of those says "
                         "so. All stand in sheets.json with their sources.",
                         defaults.size(), invented));
}

}  // namespace

std::string sheet_page(const handover::Sheet& sheet, const handover::SheetPack& pack, const site::Site& site,
                       const SheetsFacts& facts) {
  html::Page page = titled_page(sheet.title, sheet.title, pack.version, site, facts.date, facts.texts);
  page.first = sheet.first;
  page.rules = std::string(rules) + (is_card(sheet.kind) ? card_rules : "") + (is_for_wall(sheet) ? wall_rules : "");
  page.caution = sheet.cautions.front();
  const std::vector<std::string> more(sheet.cautions.begin() + 1, sheet.cautions.end());
  const std::string all = sections_html(sheet, site.display, 2);
  page.body = html::list(more) + (is_for_wall(sheet) ? "<div class=\"wall\">\n" + all + "</div>\n" : all);
  page.body += "<div class=\"warnings\">\n" + warnings_html(pack.warnings) + "</div>\n";
  return html::page(page);
}

std::string sheets_page(const handover::SheetPack& pack, const site::Site& site, const SheetsFacts& facts) {
  html::Page page = titled_page("Sheets", "sheets", pack.version, site, facts.date, facts.texts);
  page.rules = rules;
  page.caution = handover::sheet_cautions().front();
  const std::vector<std::string> all = handover::sheet_cautions();
  page.body = html::list({all.begin() + 1, all.end()});
  std::vector<std::string> titles;
  titles.reserve(pack.sheets.size());
  for (const handover::Sheet& sheet : pack.sheets) titles.push_back(sheet.title);
  page.body += html::heading(2, "What is in it") + html::list(titles);
  if (facts.readings != nullptr) page.body += readings_html(*facts.readings, site.display);
  for (const handover::Sheet& sheet : pack.sheets) {
    page.body += is_for_wall(sheet) ? "<div class=\"pack wall\">\n" : "<div class=\"pack\">\n";
    page.body += html::heading(2, sheet.title);
    std::string first;
    for (const std::string& one : sheet.first) first += (first.empty() ? "" : "<br>") + escape(one);
    if (!first.empty()) page.body += "<p class=\"first\" role=\"note\">" + first + "</p>\n";
    page.body += html::list(sheet.cautions) + sections_html(sheet, site.display, 3) + "</div>\n";
  }
  page.body += "<div class=\"pack\">\n";
  page.body += defaults_html(pack.defaults) + warnings_html(pack.warnings) + run_again_html(facts.command) + "</div>\n";
  return html::page(page);
}

}  // namespace forecourse::report
