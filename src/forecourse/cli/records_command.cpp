#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

#include "forecourse/base/nearest_word.h"
#include "forecourse/checks/station/check_record_parts.h"
#include "forecourse/cli/commands.h"
#include "forecourse/cli/console.h"
#include "forecourse/cli/output.h"
#include "forecourse/report/json_document.h"
#include "forecourse/report/terminal/page.h"
#include "forecourse/server/pages/day.h"
#include "forecourse/store/csv/csv_writer.h"
#include "forecourse/store/export.h"
#include "forecourse/store/files.h"
#include "forecourse/store/import.h"
#include "forecourse/store/read_records.h"

namespace forecourse::cli {
namespace {

namespace fs = std::filesystem;
using report::Json;

std::string this_day() {
  const site::Date day = server::today();
  return fmt::format("{:04}-{:02}-{:02}", day.year, day.month, day.day);
}

report::terminal::Page page_here() {
  const Console console = this_console();
  return report::terminal::Page({static_cast<std::size_t>(console.width), console.color, console.utf8, false});
}

void fail(const std::string& message, const std::string& hint = "") {
  print_error("error: " + message + "\n" + (hint.empty() ? "" : "  hint: " + hint + "\n"));
}

void print_document(Json options, Json result, const std::vector<Diagnostic>& told,
                    const std::vector<SourceText>& texts) {
  report::JsonDocument document;
  document.study = "records";
  document.version = FORECOURSE_VERSION;
  document.options = std::move(options);
  document.result = std::move(result);
  document.warnings = told;
  print(report::to_text(report::document(document, texts)));
}

/// Opens a store and calls `use` with it; what goes wrong with the store is told.
template <class Use>
Exit with_store(const std::string& path, store::Opening opening, Use use) {
  try {
    const auto opened = store::open_store(path, opening);
    print_error(report::to_text(opened.diagnostics, {}));
    return opened.ok() ? use(*opened.value) : Exit::bad_input;
  } catch (const store::StoreFailure& failure) {
    fail(fmt::format("the store {}: {}", path, failure.what()));
    return Exit::bad_input;
  }
}

/// The texts of one import, and what of them is to be imported.
struct ToImport {
  std::vector<SourceText> texts;
  std::vector<store::TextToImport> what;
  std::vector<Diagnostic> diagnostics;
};

void add_file(const std::string& path, const store::Kind* kind, ToImport& all) {
  auto text = store::read_whole(path, all.diagnostics);
  if (!text) return;
  all.what.push_back({static_cast<std::uint32_t>(all.texts.size()), kind});
  all.texts.push_back({path, std::move(*text)});
}

void add_folder(const fs::path& folder, ToImport& all) {
  const std::size_t before = all.what.size();
  for (const store::Kind& kind : store::kinds()) {
    const std::string file = (folder / (std::string(kind.name) + ".csv")).lexically_normal().string();
    std::error_code trouble;
    if (fs::exists(file, trouble)) add_file(file, &kind, all);
  }
  if (all.what.size() > before) return;
  all.diagnostics.push_back({Severity::error,
                             fmt::format("there are no records in {}", folder.string()),
                             {},
                             fmt::format("records are files named {}.csv", fmt::join(store::kind_names(), ".csv, ")),
                             {}});
}

ToImport read_files(const RecordsArguments& arguments) {
  ToImport all;
  for (const std::string& path : arguments.files) {
    std::error_code trouble;
    const store::Kind* kind = store::find_kind(fs::path(path).stem().string());
    if (fs::is_directory(path, trouble) && arguments.mapping.empty()) {
      add_folder(path, all);
    } else if (kind != nullptr || !arguments.mapping.empty()) {
      add_file(path, kind, all);
    } else {
      all.diagnostics.push_back({Severity::error,
                                 fmt::format("{} does not say what records it holds", path),
                                 {},
                                 fmt::format("name it as one of {}.csv, or describe it once and give --mapping",
                                             fmt::join(store::kind_names(), ".csv, ")),
                                 {}});
    }
  }
  return all;
}

std::string outcome_words(const store::Import& done, const RecordsArguments& arguments) {
  std::size_t added = 0;
  std::size_t rejected = 0;
  for (const store::ImportedText& one : done.texts) {
    added += one.added;
    rejected += one.rejected;
  }
  const std::string rows = fmt::format("{} row{}", added, added == 1 ? "" : "s");
  if (done.stored && added == 0) return "Nothing new: everything is in the store already.";
  if (done.stored) return fmt::format("Stored: {} {} on the disk.", rows, added == 1 ? "is" : "are");
  const bool would = rejected == 0 || arguments.without_rejects;
  if (arguments.dry_run && would) return fmt::format("Dry run: nothing was stored; {} would be.", rows);
  const std::string why = rejected == 0 ? "a file cannot be read"
                                        : fmt::format("{} row{} rejected", rejected, rejected == 1 ? " is" : "s are");
  return fmt::format(
      "Nothing was stored: {}.{}", why,
      rejected > 0 && !arguments.files.empty() ? " Put them right, or store the others with --without-rejects." : "");
}

void tell_import(const store::Import& done, const RecordsArguments& arguments) {
  report::terminal::Table table{{{"records"},
                                 {"added", true},
                                 {"there already", true},
                                 {"rejected", true},
                                 {"left out", true},
                                 {"file", false, true}},
                                {}};
  for (const store::ImportedText& one : done.texts) {
    table.rows.push_back({std::string(one.kind->name), std::to_string(one.added), std::to_string(one.there),
                          std::to_string(one.rejected), std::to_string(one.left_out),
                          fs::path(one.name).filename().string()});
  }
  report::terminal::Page page = page_here();
  page.table(table);
  page.paragraph(outcome_words(done, arguments));
  print(page.text());
}

Json import_json(const store::Import& done) {
  return {{"stored", done.stored}, {"files", report::array_of(done.texts, [](const store::ImportedText& one) {
                                      return Json{{"file", one.name},         {"records", one.kind->name},
                                                  {"added", one.added},       {"there_already", one.there},
                                                  {"rejected", one.rejected}, {"left_out", one.left_out}};
                                    })}};
}

/// Imports what was read; everything that is wrong is told on standard error.
Exit import_into(store::Store& store, const RecordsArguments& arguments, const store::ImportOptions& options,
                 const ToImport& all) {
  const auto imported = store::import_texts(store, all.texts, all.what, options);
  if (arguments.json) {
    print_document(
        {{"store", arguments.store}, {"dry_run", options.dry_run}, {"without_rejects", options.without_rejects}},
        import_json(imported.value), imported.diagnostics, all.texts);
  } else {
    print_error(report::to_text(imported.diagnostics, all.texts));
    tell_import(imported.value, arguments);
  }
  const bool wanted = imported.value.stored || (options.dry_run && (imported.ok() || options.without_rejects));
  return wanted ? Exit::fine : Exit::bad_input;
}

/// Tries or does the import of what was read.
/// Warnings of parts that the station does not have, in texts of our own form.
std::vector<Diagnostic> unknown_parts(const ToImport& all, const site::Site& site) {
  std::vector<Diagnostic> out;
  for (const store::TextToImport& one : all.what) {
    if (one.kind == nullptr) continue;
    const auto end = all.texts.begin() + static_cast<std::ptrdiff_t>(one.text) + 1;
    Parsed<site::records::Records> read;
    store::read_records_text(*one.kind, {all.texts.begin(), end}, read);  // what is wrong else is told by the import
    for (Diagnostic& told : checks::check_record_parts(read.value, site)) out.push_back(std::move(told));
  }
  return out;
}

Exit import_all(const RecordsArguments& arguments, ToImport all) {
  store::ImportOptions options;
  options.dry_run = arguments.dry_run;
  options.without_rejects = arguments.without_rejects;
  options.at = this_day();
  Parsed<store::Mapping> mapping;
  if (!arguments.mapping.empty()) {
    if (auto text = store::read_whole(arguments.mapping, all.diagnostics)) {
      const auto index = static_cast<std::uint32_t>(all.texts.size());
      all.texts.push_back({arguments.mapping, std::move(*text)});
      mapping = store::read_mapping(all.texts.back().text, index);
      all.diagnostics.insert(all.diagnostics.end(), mapping.diagnostics.begin(), mapping.diagnostics.end());
      options.mapping = &mapping.value;
    }
  }
  SiteSource site;
  store::SiteNames names;
  if (!arguments.site.empty()) {
    SiteArguments asked;
    asked.path = arguments.site;
    if (!load_site(asked, site)) return Exit::bad_input;
    names = store::names_of(site.site);
    options.names = &names;
    if (options.mapping == nullptr) print_error(report::to_text(unknown_parts(all, site.site), all.texts));
  }
  print_error(report::to_text(all.diagnostics, all.texts));
  if (has_error(all.diagnostics)) return Exit::bad_input;
  std::error_code trouble;
  const bool in_memory = arguments.dry_run && !fs::exists(arguments.store, trouble);  // a dry run makes no file
  return with_store(in_memory ? ":memory:" : arguments.store, store::Opening::may_create,
                    [&](store::Store& store) { return import_into(store, arguments, options, all); });
}

/// One row as a text of two lines, so that it is read as a file is.
bool row_text(const RecordsArguments& arguments, std::string& text) {
  std::vector<std::string> names;
  std::vector<std::string> values;
  for (const std::string& one : arguments.values) {
    const std::size_t equals = one.find('=');
    if (equals == std::string::npos) {
      fail("'" + one + "' has no '='", "write depth=\"71 1/4 in\"");
      return false;
    }
    names.push_back(one.substr(0, equals));
    values.push_back(store::guarded(one.substr(equals + 1)));
  }
  store::append_row(text, names);
  store::append_row(text, values);
  return true;
}

Json summary_json(const std::vector<store::KindSummary>& all, const std::vector<std::string>& faults) {
  return {{"sound", faults.empty()}, {"faults", faults}, {"records", report::array_of(all, [](const auto& one) {
                                                            return Json{
                                                                {"kind", one.kind->name},
                                                                {"rows", one.rows},
                                                                {"first_day", report::text_or_null(one.first_day)},
                                                                {"last_day", report::text_or_null(one.last_day)}};
                                                          })}};
}

}  // namespace

Exit records_import_command(const RecordsArguments& arguments) { return import_all(arguments, read_files(arguments)); }

Exit records_add_command(const RecordsArguments& arguments) {
  const store::Kind* kind = store::find_kind(arguments.kind);
  if (kind == nullptr) {
    const auto known = store::kind_names();
    const auto near = nearest_word(arguments.kind, std::span<const std::string_view>(known));
    fail("there are no records '" + arguments.kind + "'",
         near ? fmt::format("did you mean '{}'?", *near) : fmt::format("one of {}", fmt::join(known, ", ")));
    return Exit::bad_input;
  }
  ToImport all;
  all.texts.push_back({"entered", {}});
  if (!row_text(arguments, all.texts.back().text)) return Exit::bad_input;
  all.what.push_back({0, kind});
  return import_all(arguments, std::move(all));
}

Exit records_export_command(const RecordsArguments& arguments) {
  return with_store(arguments.store, store::Opening::must_exist, [&](store::Store& store) {
    if (!make_folder(arguments.out)) return Exit::bad_input;
    std::string written;
    Json files = Json::array();
    for (const SourceText& text : store::export_records(store)) {
      const std::string path = (fs::path(arguments.out) / text.name).string();
      if (!write_file(path, text.text)) return Exit::bad_input;
      written += "written: " + path + "\n";
      files.push_back(path);
    }
    if (arguments.json) {
      print_document({{"store", arguments.store}, {"out", arguments.out}}, {{"files", files}}, {}, {});
    } else {
      print(written.empty() ? "The store holds no records.\n" : written);
    }
    return Exit::fine;
  });
}

Exit records_backup_command(const RecordsArguments& arguments) {
  return with_store(arguments.store, store::Opening::must_exist, [&](store::Store& store) {
    store.back_up(arguments.out);
    if (arguments.json) {
      print_document({{"store", arguments.store}, {"to", arguments.out}}, {{"file", arguments.out}}, {}, {});
    } else {
      print("written and checked: " + arguments.out + "\n");
    }
    return Exit::fine;
  });
}

Exit records_list_command(const RecordsArguments& arguments) {
  return with_store(arguments.store, store::Opening::must_exist, [&](store::Store& store) {
    const std::vector<store::KindSummary> all = store.summary();
    const std::vector<std::string> faults = store.faults();
    if (arguments.json) {
      print_document({{"store", arguments.store}}, summary_json(all, faults), {}, {});
    } else {
      report::terminal::Page page = page_here();
      page.title("Records in " + arguments.store);
      report::terminal::Table table{{{"records"}, {"rows", true}, {"first day"}, {"last day"}}, {}};
      for (const store::KindSummary& one : all) {
        if (one.rows == 0) continue;
        table.rows.push_back({std::string(one.kind->name), std::to_string(one.rows), one.first_day, one.last_day});
      }
      if (table.rows.empty()) page.paragraph("There are none yet.");
      if (!table.rows.empty()) page.table(table);
      page.paragraph(faults.empty() ? "The integrity check of the file finds nothing wrong."
                                    : "The integrity check finds the file damaged: go back to a backup.");
      for (const std::string& fault : faults) page.item(fault);
      print(page.text());
    }
    return faults.empty() ? Exit::fine : Exit::bad_input;
  });
}

}  // namespace forecourse::cli
