#include "forecourse/store/read_records.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>

#include "forecourse/base/nearest_word.h"
#include "forecourse/store/export.h"
#include "forecourse/store/files.h"
#include "forecourse/store/records/record_of_row.h"
#include "forecourse/store/records/row_reader.h"
#include "forecourse/store/records/seen_rows.h"

namespace forecourse::store {
namespace {

using Records = site::records::Records;
namespace fs = std::filesystem;

/// Puts the rows of one text into a list, in the order of time; tells of those that come twice.
template <class RowRecord, class Record>
void fill(RowReader& reader, const Kind& kind, std::vector<Record>& list, std::vector<Diagnostic>& diagnostics) {
  SeenRows seen(kind);
  std::vector<RowRecord> read;
  Row row;
  for (RowReader::Took took = reader.next(row); took != RowReader::Took::end; took = reader.next(row)) {
    if (took == RowReader::Took::reject) continue;
    SourceSpan first{};
    const SeenRows::Seen was = seen.add(row, first);
    if (was == SeenRows::Seen::first) {
      read.push_back(record_of<RowRecord>(row));
      continue;
    }
    const bool same = was == SeenRows::Seen::same;
    diagnostics.push_back({same ? Severity::warning : Severity::error,
                           fmt::format("this {} stands twice, {}", kind.noun,
                                       same ? "with the same values: it counts once" : "with other values"),
                           row.where,
                           same ? "" : "delete the wrong one; if both are right, enter their times",
                           {{Severity::note, "first here", first, {}, {}}}});
  }
  const auto moment = [](const RowRecord& one) -> const records::Moment& {
    if constexpr (requires { one.incident; }) {
      return one.incident.at;
    } else {
      return one.at;
    }
  };
  std::ranges::stable_sort(read, is_before, moment);
  list.reserve(list.size() + read.size());
  for (RowRecord& one : read) put(list, std::move(one));
}

void tell_near_names(const fs::path& folder, std::vector<Diagnostic>& diagnostics) {
  std::vector<std::string> names;
  std::error_code trouble;
  for (const fs::directory_entry& entry : fs::directory_iterator(folder, trouble)) {
    if (entry.path().extension() == ".csv") names.push_back(entry.path().stem().string());
  }
  std::ranges::sort(names);
  for (const std::string& name : names) {
    if (find_kind(name) != nullptr) continue;
    const std::vector<std::string_view> known = kind_names();
    const auto near = nearest_word(name, std::span<const std::string_view>(known));
    if (!near) continue;
    diagnostics.push_back({Severity::warning,
                           fmt::format("{} is not read", (folder / (name + ".csv")).string()),
                           {},
                           fmt::format("is it {}.csv?", *near),
                           {}});
  }
}

void read_folder(const fs::path& folder, std::vector<SourceText>& texts, Parsed<Records>& into,
                 const site::Site* site) {
  bool any = false;
  for (const Kind& kind : kinds()) {
    const fs::path file = folder / (std::string(kind.name) + ".csv");
    std::error_code trouble;
    if (!fs::exists(file, trouble)) continue;
    any = true;
    read_records_file(file.string(), kind, texts, into, site);
  }
  tell_near_names(folder, into.diagnostics);
  if (any) return;
  into.diagnostics.push_back({Severity::error,
                              fmt::format("there are no records in {}", folder.string()),
                              {},
                              fmt::format("records are files named {}.csv", fmt::join(kind_names(), ".csv, ")),
                              {}});
}

/// The rows of a store as texts, so that what reads files tells of them too, and what is told has a place.
void read_store(const std::string& path, std::vector<SourceText>& texts, Parsed<Records>& into,
                const site::Site* site) {
  Parsed<std::unique_ptr<Store>> store = open_store(path, Opening::must_exist);
  into.diagnostics.insert(into.diagnostics.end(), store.diagnostics.begin(), store.diagnostics.end());
  if (!store.ok()) return;
  try {
    for (SourceText& text : export_records(*store.value)) {
      const Kind* kind = find_kind(fs::path(text.name).stem().string());
      texts.push_back({path + ": " + text.name, std::move(text.text)});
      read_records_text(*kind, texts, into, site);
    }
  } catch (const StoreFailure& failure) {
    into.diagnostics.push_back(
        {Severity::error, fmt::format("{} cannot be read: {}", path, failure.what()), {}, {}, {}});
  }
}

}  // namespace

void read_records_text(const Kind& kind, const std::vector<SourceText>& texts, Parsed<Records>& into,
                       const site::Site* site) {
  const std::string& text = texts.back().text;
  const auto index = static_cast<std::uint32_t>(texts.size() - 1);
  std::vector<Diagnostic>& told = into.diagnostics;
  const std::vector<Diagnostic> unreadable = why_no_csv(text, index);
  told.insert(told.end(), unreadable.begin(), unreadable.end());
  if (!unreadable.empty()) return;
  CsvReader csv(text, index, likely_separator(text));
  std::optional<Layout> layout = own_layout(csv, kind, index, told);
  if (!layout) return;
  const SiteNames names = site == nullptr ? SiteNames{} : names_of(*site);
  RowReader reader(csv, kind, std::move(*layout), site == nullptr ? nullptr : &names, told);
  std::size_t at = 0;
  each_kind(into.value, [&]<class RowRecord>(auto& list) {
    if (&kinds()[at++] == &kind) fill<RowRecord>(reader, kind, list, told);
  });
  reader.finish();
}

void read_records_file(const std::string& path, const Kind& kind, std::vector<SourceText>& texts, Parsed<Records>& into,
                       const site::Site* site) {
  std::optional<std::string> text = read_whole(path, into.diagnostics);
  if (!text) return;
  texts.push_back({path, std::move(*text)});
  read_records_text(kind, texts, into, site);
}

Parsed<Records> read_records(const std::string& path, std::vector<SourceText>& texts, const site::Site* site) {
  Parsed<Records> result;
  std::error_code trouble;
  if (fs::is_directory(path, trouble)) {
    read_folder(path, texts, result, site);
    return result;
  }
  if (is_store_file(path)) {
    read_store(path, texts, result, site);
    return result;
  }
  const Kind* kind = find_kind(fs::path(path).stem().string());
  if (kind != nullptr || !fs::exists(path, trouble)) {
    read_records_file(path, kind == nullptr ? kinds().front() : *kind, texts, result, site);
    return result;
  }
  result.diagnostics.push_back({Severity::error,
                                fmt::format("{} does not say what records it holds", path),
                                {},
                                fmt::format("name it as one of {}.csv, or give the folder it is in, or a store",
                                            fmt::join(kind_names(), ".csv, ")),
                                {}});
  return result;
}

}  // namespace forecourse::store
