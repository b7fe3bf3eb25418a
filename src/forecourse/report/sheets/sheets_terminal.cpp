#include <fmt/format.h>

#include "forecourse/handover/sheets/sheets.h"
#include "forecourse/report/sheets/sheets_report.h"
#include "forecourse/report/sheets/sheets_view.h"
#include "forecourse/report/study_page.h"
#include "forecourse/report/terminal/page.h"

namespace forecourse::report {
namespace {

using handover::Blank;

struct RowCounts {
  int blanks = 0;
  int with_value = 0;
  int missing = 0;
};

RowCounts count(const handover::Sheet& sheet) {
  RowCounts out;
  for (const handover::SheetSection& section : sheet.sections) {
    for (const handover::SheetRow& row : section.rows) {
      out.blanks += row.blank != Blank::none ? 1 : 0;
      out.with_value += row.value ? 1 : 0;
      out.missing += !row.value && !row.missing.empty() ? 1 : 0;
    }
  }
  return out;
}

class SheetsTerminal {
 public:
  SheetsTerminal(site::Display display, const terminal::Style& style)
      : display_(display), style_(style), glyphs_(style.utf8 ? Glyphs::unicode : Glyphs::ascii), page_(style) {}

  void overview(const handover::SheetPack& pack) {
    terminal::Table table{{{"Sheet"}, {"Title", false, true}, {"Blanks", true}, {"Figures", true}, {"Not known", true}},
                          {}};
    for (const handover::Sheet& sheet : pack.sheets) {
      const RowCounts counts = count(sheet);
      table.rows.push_back({handover::word(sheet.kind), sheet.title, std::to_string(counts.blanks),
                            std::to_string(counts.with_value), std::to_string(counts.missing)});
    }
    page_.table(table);
    page_.remark("Figures: rows with a value, computed or entered. Not known: rows that say what to enter.");
  }

  void sheet(const handover::Sheet& sheet) {
    page_.heading(sheet.title);
    for (const std::string& one : sheet.first) page_.notice("First", one);
    for (const std::string& one : sheet.cautions) page_.notice("Caution", one);
    for (const handover::SheetSection& one : sheet.sections) section(one);
  }

  void readings(const SheetsFacts& facts) {
    const handover::ReadingsTold& all = *facts.readings;
    page_.heading("Readings");
    page_.paragraph(
        fmt::format("{} within, {} outside, {} not determined.", all.within, all.outside, all.not_determined));
    for (const handover::Verdict verdict :
         {handover::Verdict::outside, handover::Verdict::not_determined, handover::Verdict::within}) {
      for (const handover::ReadingTold& one : all.readings) {
        if (one.verdict == verdict) page_.notice(handover::word(verdict), in_words(one, display_, glyphs_));
      }
    }
    for (const std::string& one : facts.stored) page_.item(one);
  }

  terminal::Page& page() { return page_; }
  [[nodiscard]] Glyphs glyphs() const { return glyphs_; }

 private:
  void section(const handover::SheetSection& section) {
    page_.heading(section.title);
    for (const std::string& note : section.notes) page_.remark(note);
    terminal::Table table{
        {{"Part"}, {"What", false, true}, {"Computed or entered", false, true}, {"Asked", false, true}, {"Blank"}}, {}};
    for (const handover::SheetRow& row : section.rows) {
      const RowWords words(row, display_, glyphs_);
      const bool written = row.blank == Blank::text || row.blank == Blank::signature;
      table.rows.push_back(
          {row.part, row.what, words.value(), words.limit(), written ? handover::word(row.blank) : words.blank_unit()});
    }
    page_.table(table);
  }

  site::Display display_;
  terminal::Style style_;
  Glyphs glyphs_;
  terminal::Page page_;
};

}  // namespace

std::string sheets_summary(const handover::SheetPack& pack, const site::Site& site, const terminal::Style& style,
                           const SheetsFacts& facts) {
  SheetsTerminal out(site.display, style);
  out.page().title((site.name.empty() ? "Station without a name" : site.name.text) + ": sheets");
  out.page().paragraph(handover::sheet_cautions().front() + " forecourse " + pack.version + ".");
  out.overview(pack);
  if (facts.readings != nullptr) out.readings(facts);
  if (style.verbose) {
    for (const handover::Sheet& sheet : pack.sheets) out.sheet(sheet);
  }
  tell_end({pack.version, pack.defaults, pack.warnings, handover::sheet_cautions()}, site.display, out.glyphs(),
           facts.written, out.page());
  return out.page().text();
}

std::vector<std::vector<std::string>> sheet_blanks(const handover::SheetPack& pack, site::Display display) {
  std::vector<std::vector<std::string>> out;
  for (const handover::Sheet& sheet : pack.sheets) {
    for (const handover::SheetSection& section : sheet.sections) {
      for (const handover::SheetRow& row : section.rows) {
        if (row.blank == Blank::none || row.blank == Blank::signature) continue;
        const RowWords words(row, display, Glyphs::ascii);
        out.push_back({handover::word(sheet.kind), section.id, row.part, row.what, words.value(), "",
                       words.blank_unit(), "", "", "", ""});
      }
    }
  }
  return out;
}

}  // namespace forecourse::report
