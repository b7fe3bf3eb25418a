#include "forecourse/server/records/station_records.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <filesystem>
#include <system_error>

#include "forecourse/server/pages/day.h"
#include "forecourse/store/csv/csv_writer.h"
#include "forecourse/store/import.h"
#include "forecourse/store/read_records.h"
#include "forecourse/store/store.h"

namespace forecourse::server {
namespace {

namespace fs = std::filesystem;

/// True for a folder that holds records itself.
bool has_records(const fs::path& folder) {
  std::error_code trouble;
  return std::ranges::any_of(store::kind_names(), [&](std::string_view kind) {
    return fs::exists(folder / (std::string(kind) + ".csv"), trouble);
  });
}

/// A file with its size and time, as a text that is another when the file is.
std::string stamp_of_file(const fs::path& file) {
  std::error_code trouble;
  const auto size = fs::file_size(file, trouble);
  if (trouble) return {};
  const auto time = fs::last_write_time(file, trouble).time_since_epoch();
  return fmt::format("{} {} {}\n", file.string(), size,
                     std::chrono::duration_cast<std::chrono::nanoseconds>(time).count());
}

std::string stamp_of(const std::string& path) {
  std::error_code trouble;
  if (!fs::is_directory(path, trouble)) return path + "\n" + stamp_of_file(path) + stamp_of_file(path + "-wal");
  std::string out = path + "\n";
  for (const std::string_view kind : store::kind_names()) {
    out += stamp_of_file(fs::path(path) / (std::string(kind) + ".csv"));
  }
  return out;
}

std::string stamp_of(const site::Site& site) {
  const store::SiteNames names = store::names_of(site);
  return fmt::format("{}|{}|{}", fmt::join(names.tanks, ","), fmt::join(names.hoses, ","),
                     fmt::join(names.products, ","));
}

bool is_same_file(const std::string& a, const std::string& b) {
  std::error_code trouble;
  return a == b || fs::equivalent(a, b, trouble);
}

Entered not_stored(std::string error, std::string hint) { return {false, false, std::move(error), std::move(hint)}; }

/// The columns that any of the rows has.
std::vector<std::string> columns_of(const std::vector<EnteredRow>& rows) {
  std::vector<std::string> out;
  for (const EnteredRow& row : rows) {
    for (const EnteredValue& value : row) {
      if (std::ranges::find(out, value.column) == out.end()) out.push_back(value.column);
    }
  }
  return out;
}

std::string cell_of(const EnteredRow& row, const std::string& column) {
  const auto found = std::ranges::find(row, column, &EnteredValue::column);
  return found == row.end() ? std::string() : store::guarded(found->text);
}

/// Rows as a text with a line of names above them, so that it is read as a file is.
std::string rows_text(const std::vector<EnteredRow>& rows) {
  const std::vector<std::string> names = columns_of(rows);
  std::string text;
  store::append_row(text, names);
  for (const EnteredRow& row : rows) {
    std::vector<std::string> cells;
    cells.reserve(names.size());
    for (const std::string& name : names) cells.push_back(cell_of(row, name));
    store::append_row(text, cells);
  }
  return text;
}

std::string today_text() {
  const site::Date day = today();
  return fmt::format("{:04}-{:02}-{:02}", day.year, day.month, day.day);
}

constexpr const char* entered_here = "entered in the workbench";

Entered no_store(const std::string& path) {
  Entered out = not_stored(path.empty() ? "no records are given" : "the records are files, which are not written here",
                           "make a store of them with `forecourse records import`");
  out.read_only = true;
  return out;
}

Entered add_rows(const std::string& path, const store::Kind& kind, const std::vector<EnteredRow>& rows,
                 const store::SiteNames& names) {
  const auto opened = store::open_store(path, store::Opening::must_exist);
  if (!opened.ok()) return not_stored(opened.diagnostics.front().message, opened.diagnostics.front().hint);
  const std::vector<SourceText> texts{{entered_here, rows_text(rows)}};
  const std::array<store::TextToImport, 1> what{{{0, &kind}}};
  store::ImportOptions options;
  options.names = &names;
  options.at = today_text();
  const auto imported = store::import_texts(*opened.value, texts, what, options);
  if (imported.value.stored) return {true, false, {}, {}};
  for (const Diagnostic& one : imported.diagnostics) {
    if (one.severity == Severity::error) return not_stored(one.message, one.hint);
  }
  return not_stored("nothing was stored", "");
}

}  // namespace

std::string StationRecords::path_of(const std::string& site_path) const {
  if (!given_.empty() && is_same_file(site_path, site_)) return given_;
  const fs::path file(site_path);
  const fs::path folder = file.parent_path();
  const std::string stem = file.stem().string();
  std::error_code trouble;
  if (const fs::path kept = folder / (stem + ".db"); store::is_store_file(kept.string())) return kept.string();
  for (const fs::path& beside : {folder / "records" / stem, folder / "records"}) {
    if (has_records(beside)) return beside.string();
  }
  return {};
}

RecordsOf StationRecords::of(const std::string& site_path) {
  return
      [this, path = path_of(site_path)](const site::Site& site) { return path.empty() ? nullptr : read(path, site); };
}

std::shared_ptr<const ReadRecords> StationRecords::read(const std::string& path, const site::Site& site) {
  const std::lock_guard lock(mutex_);
  std::string stamp = stamp_of(path) + stamp_of(site);
  if (last_ && stamp == stamp_) return last_;
  auto now = std::make_shared<ReadRecords>();
  now->path = path;
  now->is_store = store::is_store_file(path);
  std::vector<SourceText> texts(1);  // the place of the site file
  now->read = store::read_records(path, texts, &site);
  now->texts.assign(std::make_move_iterator(texts.begin() + 1), std::make_move_iterator(texts.end()));
  stamp_ = std::move(stamp);
  last_ = now;
  return now;
}

bool StationRecords::changed(const std::string& site_path) {
  const std::string path = path_of(site_path);
  std::string now = path.empty() ? std::string() : stamp_of(path);
  const std::lock_guard lock(mutex_);
  const bool first = !looked_once_;
  looked_once_ = true;
  if (now == looked_) return false;
  looked_ = std::move(now);
  return !first;
}

Entered StationRecords::enter(const std::string& site_path, const site::Site& site, const std::string& kind_name,
                              const std::vector<EnteredRow>& rows) {
  const std::string path = path_of(site_path);
  if (path.empty() || !store::is_store_file(path)) return no_store(path);
  const store::Kind* kind = store::find_kind(kind_name);
  if (kind == nullptr) return not_stored("there are no records '" + kind_name + "'", "");
  try {
    return add_rows(path, *kind, rows, store::names_of(site));
  } catch (const store::StoreFailure& failure) {
    return not_stored(fmt::format("the store cannot be written: {}", failure.what()), "");
  }
}

Entered StationRecords::take_back(const std::string& site_path, std::string& taken) {
  const std::string path = path_of(site_path);
  if (path.empty() || !store::is_store_file(path)) return no_store(path);
  try {
    const auto opened = store::open_store(path, store::Opening::must_exist);
    if (!opened.ok()) return not_stored(opened.diagnostics.front().message, opened.diagnostics.front().hint);
    const std::vector<std::string> rows = opened.value->take_back(entered_here);
    if (rows.empty()) return not_stored("nothing was entered here that could be taken back", "");
    taken = fmt::format("{}", fmt::join(rows, ", "));
    return {true, false, {}, {}};
  } catch (const store::StoreFailure& failure) {
    return not_stored(fmt::format("the store cannot be written: {}", failure.what()), "");
  }
}

}  // namespace forecourse::server
