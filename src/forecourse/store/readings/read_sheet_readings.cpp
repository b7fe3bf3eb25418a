#include "forecourse/store/readings/read_sheet_readings.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <optional>

#include "forecourse/base/nearest_word.h"
#include "forecourse/store/csv/csv_reader.h"
#include "forecourse/store/csv/csv_writer.h"
#include "forecourse/store/records/cell.h"

namespace forecourse::store {
namespace {

using site::records::SheetReading;

constexpr std::array<const char*, 6> needed{"sheet", "section", "part", "what", "value", "day"};

class SheetReadingReader {
 public:
  SheetReadingReader(const SourceText& source, std::uint32_t index)
      : csv_(source.text, index, likely_separator(source.text)) {}

  Parsed<std::vector<SheetReading>> read() {
    std::vector<CsvCell> row;
    if (!csv_.next(row)) {
      error(csv_.row_span(), "it has no header and no line", "fill in the readings.csv that --out writes");
    } else if (read_header(row)) {
      columns_ = row.size();
      while (csv_.next(row)) take(row);
    }
    out_.diagnostics.insert(out_.diagnostics.end(), csv_.diagnostics().begin(), csv_.diagnostics().end());
    return std::move(out_);
  }

 private:
  void error(SourceSpan where, std::string message, std::string hint) {
    out_.diagnostics.push_back({Severity::error, std::move(message), where, std::move(hint), {}});
  }

  bool read_header(const std::vector<CsvCell>& header) {
    const std::vector<std::string>& known = sheet_columns();
    for (std::size_t i = 0; i < header.size(); ++i) {
      const std::string& name = header[i].text;
      if (std::find(known.begin(), known.end(), name) != known.end()) {
        places_.emplace(name, i);
        continue;
      }
      const auto near = nearest_word(name, std::span<const std::string>(known));
      error(header[i].where, fmt::format("readings have no column '{}'", name),
            near ? fmt::format("did you mean '{}'?", *near)
                 : fmt::format("their columns are {}", fmt::join(known, ", ")));
    }
    for (const char* name : needed) {
      if (!places_.contains(name)) {
        error(csv_.row_span(), fmt::format("column {} is missing", name),
              fmt::format("columns of readings: {}", fmt::join(known, ", ")));
      }
    }
    return !has_error(out_.diagnostics);
  }

  [[nodiscard]] site::Name cell(const std::vector<CsvCell>& row, const char* column) const {
    const auto place = places_.find(column);
    if (place == places_.end() || place->second >= row.size()) return {{}, csv_.row_span()};
    const CsvCell& one = row[place->second];
    return {std::string(without_guard(one.text)), one.where};
  }

  /// The day and the time of a line; false, with the reason told, if there is none.
  bool read_moment(const std::vector<CsvCell>& row, SheetReading& reading) {
    const site::Name day = cell(row, "day");
    const auto read = stored_day(day.text);
    if (!read) {
      error(day.where, day.empty() ? "the day is missing" : fmt::format("'{}' is no day", day.text),
            "write it as 2026-11-05");
      return false;
    }
    reading.at.day = *read;
    reading.at.day.where = day.where;
    const site::Name time = cell(row, "time");
    if (time.empty()) return true;
    Column column;
    column.name = "time";
    column.type = ColumnType::time;
    const auto value = read_cell(column, {time.text, time.where}, {}, {});
    if (const auto* fault = std::get_if<CellFault>(&value)) {
      error(time.where, fault->message, fault->hint);
      return false;
    }
    reading.at.time = Duration::from_si(std::get<Value>(value).number);
    return true;
  }

  void take(const std::vector<CsvCell>& row) {
    if (row.size() < columns_) {
      return error(csv_.row_span(), fmt::format("the line has {} of {} columns", row.size(), columns_),
                   "it was cut off; take it anew from the file that --out writes");
    }
    SheetReading reading;
    reading.value = cell(row, "value");
    if (reading.value.empty()) return;
    reading.where = csv_.row_span();
    if (!read_moment(row, reading)) return;
    reading.sheet = cell(row, "sheet");
    reading.section = cell(row, "section");
    reading.part = cell(row, "part");
    reading.what = cell(row, "what");
    reading.unit = cell(row, "unit");
    reading.by = cell(row, "by");
    reading.note = cell(row, "note");
    out_.value.push_back(std::move(reading));
  }

  CsvReader csv_;
  std::size_t columns_ = 0;  ///< of the header
  std::map<std::string, std::size_t> places_;
  Parsed<std::vector<SheetReading>> out_;
};

}  // namespace

const std::vector<std::string>& sheet_columns() {
  static const std::vector<std::string> columns{"sheet", "section", "part", "what", "computed", "value",
                                                "unit",  "by",      "day",  "time", "note"};
  return columns;
}

Parsed<std::vector<SheetReading>> read_sheet_readings(const std::vector<SourceText>& texts) {
  const auto index = static_cast<std::uint32_t>(texts.size() - 1);
  const std::vector<Diagnostic> unreadable = why_no_csv(texts.back().text, index);
  if (!unreadable.empty()) return {{}, unreadable};
  return SheetReadingReader(texts.back(), index).read();
}

}  // namespace forecourse::store
