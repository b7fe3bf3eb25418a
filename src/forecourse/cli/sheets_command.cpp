#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <optional>

#include "forecourse/base/nearest_word.h"
#include "forecourse/base/unit_text.h"
#include "forecourse/checks/rules/period.h"
#include "forecourse/checks/station/check_station.h"
#include "forecourse/cli/commands.h"
#include "forecourse/cli/console.h"
#include "forecourse/cli/output.h"
#include "forecourse/cli/pdf.h"
#include "forecourse/cli/rule_source.h"
#include "forecourse/cli/sheets_workbook.h"
#include "forecourse/handover/sheets/sheets.h"
#include "forecourse/handover/sheets/walk_of_readings.h"
#include "forecourse/report/sheets/sheets_report.h"
#include "forecourse/server/pages/day.h"
#include "forecourse/store/csv/csv_writer.h"
#include "forecourse/store/files.h"
#include "forecourse/store/import.h"
#include "forecourse/store/read_records.h"
#include "forecourse/store/readings/read_sheet_readings.h"

namespace forecourse::cli {
namespace {

namespace fs = std::filesystem;
using handover::SheetKind;

void fail(const std::string& message, const std::string& hint) {
  print_error("error: " + message + "\n  hint: " + hint + "\n");
}

bool read_kinds(const std::vector<std::string>& ids, std::vector<SheetKind>& out) {
  for (const std::string& id : ids) {
    if (const auto kind = handover::sheet_kind(id)) {
      out.push_back(*kind);
      continue;
    }
    const std::vector<std::string> known = handover::sheet_kind_words();
    const auto near = nearest_word(id, std::span<const std::string>(known));
    fail("there is no sheet '" + id + "'",
         near ? fmt::format("did you mean '{}'?", *near) : fmt::format("one of {}", fmt::join(known, ", ")));
    return false;
  }
  return true;
}

/// One of the tolerances, "flow=5 %".
bool read_tolerance(const std::string& text, handover::AgreedTolerances& out) {
  const std::size_t equals = text.find('=');
  const std::string name = text.substr(0, equals);
  const auto take = [&](const QuantityKind& kind, std::optional<double>& into) {
    const auto read = read_quantity(text.substr(equals + 1), kind);
    if (const auto* wrong = std::get_if<UnitTextError>(&read)) {
      fail("--tolerance " + name + " " + wrong->message,
           wrong->hint.empty() ? std::string("write ") + kind.examples : wrong->hint);
      return false;
    }
    into = std::get<double>(read);
    if (name == "flow" && *into >= 1.0) {
      fail("--tolerance flow of 100 % or more lets any flow pass", "write flow=\"5 %\"");
      return false;
    }
    if (*into > 0.0) return true;
    fail("--tolerance " + name + " is not above zero", "leave it out where none is agreed");
    return false;
  };
  if (equals != std::string::npos) {
    if (name == "flow") return take(Ratio::kind(), out.flow);
    if (name == "pressure") return take(PressureDifference::kind(), out.pressure);
    if (name == "height") return take(Length::kind(), out.height);
  }
  fail("'" + text + "' is no tolerance", R"(write flow="5 %", pressure="2 psi" or height="1/4 in")");
  return false;
}

/// What was typed back, held against its sheets.
struct Readings {
  std::optional<handover::ReadingsTold> told;
  std::vector<std::string> stored;
};

/// What was typed, from `readings.csv` as `--out` writes it, or from records: a file, a folder or a store of them.
Parsed<std::vector<site::records::SheetReading>> typed_readings(const SheetsArguments& arguments,
                                                                const handover::SheetPack& pack, SiteSource& source) {
  std::error_code trouble;
  const bool records = fs::is_directory(arguments.readings, trouble) || store::is_store_file(arguments.readings) ||
                       store::find_kind(fs::path(arguments.readings).stem().string()) != nullptr;
  if (records) {
    auto read = store::read_records(arguments.readings, source.texts, &source.site);
    if (!read.ok()) return {{}, read.diagnostics};
    auto out = handover::readings_of(read.value, pack);
    out.diagnostics.insert(out.diagnostics.begin(), read.diagnostics.begin(), read.diagnostics.end());
    return out;
  }
  std::vector<Diagnostic> unread;
  auto text = store::read_whole(arguments.readings, unread);
  if (!text) return {{}, unread};
  source.texts.push_back({arguments.readings, std::move(*text)});
  return store::read_sheet_readings(source.texts);
}

bool hold(const SheetsArguments& arguments, const handover::SheetPack& pack, SiteSource& source, Readings& out) {
  const std::size_t before = source.texts.size();
  const auto typed = typed_readings(arguments, pack, source);
  auto held = handover::hold_readings(pack, typed.value, pack.day);
  const bool own_form = source.texts.size() == before + 1 && source.texts.back().name == arguments.readings &&
                        store::find_kind(fs::path(arguments.readings).stem().string()) == nullptr;
  std::vector<Diagnostic> told = typed.diagnostics;
  told.insert(told.end(), held.diagnostics.begin(), held.diagnostics.end());
  if (own_form) std::ranges::copy(handover::without_a_name(held.value), std::back_inserter(told));
  print_error(report::to_text(told, source.texts));
  if (has_error(told)) return false;
  if (!arguments.store.empty() && !own_form) {
    fail("--store keeps the readings of a readings.csv; these are records already",
         "forecourse records import " + arguments.store + " " + arguments.readings);
    return false;
  }
  out.told = std::move(held.value);
  return true;
}

/// The records of one kind as a text in our own form, each on the line of the reading that it keeps.
struct RecordText {
  SourceText text;
  const store::Kind* kind = nullptr;
  std::map<std::size_t, SourceSpan> places;  ///< of the readings, by their lines
};

RecordText text_of(const std::vector<handover::RecordRow>& rows, const store::Kind& kind, const SourceText& typed) {
  RecordText out{{fmt::format("{} ({})", typed.name, kind.name), {}}, &kind, {}};
  std::vector<std::string> columns;
  columns.reserve(kind.columns.size());
  for (const store::Column& column : kind.columns) columns.emplace_back(column.name);
  store::append_row(out.text.text, columns);
  std::size_t line = 1;
  for (const handover::RecordRow& row : rows) {
    if (row.kind != kind.name) continue;
    std::vector<std::string> cells(columns.size());
    for (std::size_t i = 0; i < row.columns.size(); ++i) {
      const auto at = std::find(columns.begin(), columns.end(), row.columns[i]);
      if (at != columns.end()) {
        cells[static_cast<std::size_t>(at - columns.begin())] = store::guarded(row.cells[i]);
      }
    }
    const std::size_t own = report::line_column(typed.text, row.where.begin).line;
    for (; line + 1 < own; ++line) out.text.text += '\n';
    store::append_row(out.text.text, cells);
    out.places.emplace(++line, row.where);
  }
  return out;
}

/// Diagnostics about lines of the records, at the readings that they keep.
std::vector<Diagnostic> at_readings(std::vector<Diagnostic> told, const std::vector<RecordText>& texts) {
  for (Diagnostic& one : told) {
    if (!one.where || one.where->text >= texts.size()) continue;
    const RecordText& text = texts[one.where->text];
    const auto place = text.places.find(report::line_column(text.text.text, one.where->begin).line);
    one.where = place == text.places.end() ? std::nullopt : std::optional(place->second);
  }
  return told;
}

Exit keep(const SheetsArguments& arguments, const handover::SheetPack& pack, const SiteSource& source,
          Readings& readings) {
  std::vector<handover::RecordRow> rows = handover::records_of(*readings.told);
  for (handover::RecordRow& walk : handover::walks_of(*readings.told, pack)) rows.push_back(std::move(walk));
  std::vector<RecordText> all;
  for (const char* name : {"tests", "inspections"}) {
    RecordText text = text_of(rows, *store::find_kind(name), source.texts.back());
    if (!text.places.empty()) all.push_back(std::move(text));
  }
  if (all.empty()) {
    readings.stored = {"nothing was typed: the store is as it was"};
    return Exit::fine;
  }
  std::vector<SourceText> texts;
  std::vector<store::TextToImport> what;
  for (RecordText& one : all) {
    what.push_back({static_cast<std::uint32_t>(texts.size()), one.kind});
    texts.push_back(one.text);
  }
  try {
    const auto opened = store::open_store(arguments.store, store::Opening::may_create);
    print_error(report::to_text(opened.diagnostics, {}));
    if (!opened.ok()) return Exit::bad_input;
    store::ImportOptions options;
    const site::Date day = *day_of("");
    options.at = checks::text(day);
    const auto done = store::import_texts(*opened.value, texts, what, options);
    print_error(report::to_text(at_readings(done.diagnostics, all), source.texts));
    if (!done.value.stored) return Exit::bad_input;
    for (const store::ImportedText& one : done.value.texts) {
      readings.stored.push_back(fmt::format("{}: {} stored, {} there before", one.kind->name, one.added, one.there));
    }
    return Exit::fine;
  } catch (const store::StoreFailure& failure) {
    fail(fmt::format("the store {}: {}", arguments.store, failure.what()), "nothing was stored");
    return Exit::bad_input;
  }
}

std::string blanks_text(const handover::SheetPack& pack, site::Display display) {
  std::string out;
  store::append_row(out, store::sheet_columns());
  for (std::vector<std::string>& row : report::sheet_blanks(pack, display)) {
    for (std::string& cell : row) cell = store::guarded(cell);
    store::append_row(out, row);
  }
  return out;
}

bool write_all(const SheetsArguments& arguments, const SiteSource& source, const handover::SheetPack& pack,
               report::SheetsFacts& facts) {
  if (!make_folder(arguments.site.out)) return false;
  const fs::path folder(arguments.site.out);
  const auto write = [&](const std::string& name, const std::string& text) {
    facts.written.push_back((folder / name).string());
    return write_file(facts.written.back(), text);
  };
  for (const handover::Sheet& sheet : pack.sheets) {
    const std::string name = std::string("sheet-") + handover::word(sheet.kind) + ".html";
    if (!write(name, report::sheet_page(sheet, pack, source.site, facts))) return false;
  }
  const std::string page = report::sheets_page(pack, source.site, facts);
  if (!write("sheets.html", page) || !write("readings.csv", blanks_text(pack, source.site.display)) ||
      !write("sheets.json", report::to_text(report::sheets_document(pack, facts)))) {
    return false;
  }
  facts.written.push_back((folder / "sheets.xlsx").string());
  if (!write_sheets_workbook(facts.written.back(), report::sheet_blanks(pack, source.site.display))) return false;
  if (!arguments.pdf) return true;
  facts.written.push_back((folder / "sheets.pdf").string());
  return write_pdf(facts.written.back(), page, paper_of(arguments.paper, source.site.display));
}

bool read_options(const SheetsArguments& arguments, handover::SheetOptions& out) {
  if (arguments.pdf && arguments.site.out.empty()) {
    fail("--pdf needs --out, the folder to write into", "--out out/sheets");
    return false;
  }
  if (!arguments.store.empty() && arguments.readings.empty()) {
    fail("--store needs --readings, the file that was filled in", "--readings readings.csv");
    return false;
  }
  if (!read_kinds(arguments.sheets, out.kinds)) return false;
  return std::all_of(arguments.tolerances.begin(), arguments.tolerances.end(),
                     [&](const std::string& one) { return read_tolerance(one, out.agreed); });
}

}  // namespace

Exit sheets_command(const SheetsArguments& arguments) {
  handover::SheetOptions options;
  SiteSource source;
  if (!read_options(arguments, options) || !load_site(arguments.site, source)) return Exit::bad_input;
  const std::optional<site::Date> on = day_of(arguments.on);
  std::optional<site::records::Records> records;
  if (!on || !read_given_records(arguments.records, source, records)) return Exit::bad_input;
  const site::records::Records* given = records ? &*records : nullptr;
  const checks::Studied studied = checks::study_for_checks(source.site, given);
  const checks::Facts known = checks::facts_of(source.site, studied, *on, given);
  handover::SheetPack pack = handover::make_sheets(known, studied, options);
  pack.warnings.insert(pack.warnings.begin(), source.warnings.begin(), source.warnings.end());
  Readings readings;
  if (!arguments.readings.empty()) {
    handover::SheetOptions all = options;
    all.kinds.clear();
    const handover::SheetPack whole = options.kinds.empty() ? pack : handover::make_sheets(known, studied, all);
    if (!hold(arguments, whole, source, readings)) return Exit::bad_input;
    if (!arguments.store.empty() && keep(arguments, whole, source, readings) != Exit::fine) return Exit::bad_input;
  }
  report::SheetsFacts facts{server::in_words(*on), arguments.command,
                            source.texts,          readings.told ? &*readings.told : nullptr,
                            readings.stored,       {}};
  if (!arguments.site.out.empty() && !write_all(arguments, source, pack, facts)) return Exit::bad_input;
  if (arguments.site.json) {
    print(report::to_text(report::sheets_document(pack, facts)));
  } else {
    const Console console = this_console();
    print(report::sheets_summary(
        pack, source.site,
        {static_cast<std::size_t>(console.width), console.color, console.utf8, arguments.site.verbose}, facts));
  }
  return readings.told && readings.told->outside > 0 ? Exit::falls_short : Exit::fine;
}

}  // namespace forecourse::cli
