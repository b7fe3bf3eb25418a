#include "forecourse/server/answers/wants/records_told.h"

#include <filesystem>

#include "forecourse/server/answers/wants/want_reader.h"

namespace forecourse::server {
namespace {

constexpr std::size_t most_told = 20;  // of what is wrong with records

}  // namespace

using report::Json;

Json no_records() {
  Json out = refused("no records of this station are given",
                     "start with `forecourse serve SITE --records FOLDER`, or put a folder `records` beside the site "
                     "file, with dips.csv, deliveries.csv and sales.csv");
  out["records"] = nullptr;
  return out;
}

Json records_json(const ReadRecords& records) {
  return {{"name", std::filesystem::path(records.path).filename().string()}, {"store", records.is_store}};
}

Json unreadable(const ReadRecords& records, const std::vector<SourceText>& texts) {
  Json told = Json::array();
  for (const Diagnostic& one : records.read.diagnostics) {
    if (one.severity != Severity::error || told.size() == most_told) continue;
    const Json place = report::place_json(one.where, texts);
    told.push_back({{"message", one.message},
                    {"hint", one.hint},
                    {"file", place["file"].is_string()
                                 ? Json(std::filesystem::path(place["file"].get<std::string>()).filename().string())
                                 : Json()},
                    {"line", place["line"]}});
  }
  Json out = refused(records.read.diagnostics);
  out["records"] = records_json(records);
  out["wrong"] = std::move(told);
  return out;
}

}  // namespace forecourse::server
