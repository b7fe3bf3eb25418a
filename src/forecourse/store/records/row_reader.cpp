#include "forecourse/store/records/row_reader.h"

#include <fmt/format.h>

#include <algorithm>

#include "forecourse/store/records/clock_change.h"

namespace forecourse::store {
namespace {

constexpr std::size_t most_told = 200;

}  // namespace

RowReader::RowReader(CsvReader& reader, const Kind& kind, Layout layout, const SiteNames* names,
                     std::vector<Diagnostic>& diagnostics)
    : reader_(reader), kind_(kind), layout_(std::move(layout)), names_(names), diagnostics_(diagnostics) {}

RowReader::Took RowReader::next(Row& row) {
  while (reader_.next(cells_)) {
    if (is_left_out()) {
      ++count_.left_out;
      continue;
    }
    row.where = reader_.row_span();
    row.values.resize(kind_.columns.size());
    const bool good = read_values(row);
    ++(good ? count_.read : count_.rejected);
    if (good) look_at_clock(row);
    return good ? Took::row : Took::reject;
  }
  return Took::end;
}

bool RowReader::is_left_out() const {
  return std::ranges::any_of(layout_.left_out, [&](const LeftOut& out) {
    return out.cell < cells_.size() && std::ranges::find(out.texts, cells_[out.cell].text) != out.texts.end();
  });
}

void RowReader::reject(SourceSpan where, std::string message, std::string hint) {
  if (told_++ < most_told) {
    diagnostics_.push_back({Severity::error, std::move(message), where, std::move(hint), {}});
  }
}

bool RowReader::read_values(Row& row) {
  bool good = true;
  for (; csv_faults_ < reader_.diagnostics().size(); ++csv_faults_) {
    const Diagnostic& fault = reader_.diagnostics()[csv_faults_];
    reject(fault.where.value_or(row.where), fault.message, fault.hint);
    good = false;
  }
  if (cells_.size() != layout_.cells) {
    reject(row.where,
           fmt::format("this row has {} cell{}, but the header names {} columns", cells_.size(),
                       cells_.size() == 1 ? "" : "s", layout_.cells),
           "a cell that holds the separator is put in quotes; an empty cell keeps its separator");
    return false;
  }
  for (std::size_t i = 0; i < row.values.size(); ++i) good = read_value(i, row.values[i]) && good;
  return good && is_whole(row);
}

bool RowReader::read_value(std::size_t place, Value& value) {
  const Column& column = kind_.columns[place];
  const ColumnSource& source = layout_.sources[place];
  value.text.clear();
  value.number = 0.0;
  value.where = reader_.row_span();
  if (source.constant) {
    value = *source.constant;
  } else if (source.cell && !cells_[*source.cell].text.empty()) {
    CsvCell cell = cells_[*source.cell];
    if (source.of_moment) cell.text = std::string(part_of_moment(cell.text, column.type));
    for (const auto& [seen, meant] : source.words) {
      if (cell.text == seen) {
        cell.text = meant;
        break;
      }
    }
    value.where = cell.where;
    if (!cell.text.empty()) {
      auto read = read_cell(column, cell, layout_.form, source.unit);
      if (const CellFault* fault = std::get_if<CellFault>(&read)) {
        reject(cell.where, fault->message, fault->hint);
        return false;
      }
      value = std::move(std::get<Value>(read));
    }
  }
  if (value.text.empty()) {
    if (column.need == Need::optional) return true;
    reject(value.where, fmt::format("{} is missing", column.name), fmt::format("enter it: {}", column.doc));
    return false;
  }
  if (names_ == nullptr) return true;
  const auto fault = unknown_name(*names_, column, value.text);
  if (fault) reject(value.where, fault->message, fault->hint);
  return !fault;
}

bool RowReader::is_whole(const Row& row) {
  for (const std::vector<std::size_t>& set : kind_.one_of) {
    if (std::ranges::any_of(set, [&](std::size_t i) { return row.values[i].given(); })) continue;
    std::vector<std::string_view> names;
    names.reserve(set.size());
    for (const std::size_t i : set) names.push_back(kind_.columns[i].name);
    reject(row.where, fmt::format("this {} has no {}", kind_.noun, fmt::join(names, " and no ")), "enter one of them");
    return false;
  }
  return true;
}

void RowReader::look_at_clock(const Row& row) {
  if (!row.values[1].given()) return;  // day and time are the first two columns of every kind
  const auto day = stored_day(row.values[0].text);
  const ClockChange change = day ? clock_change(*day, row.values[1].number) : ClockChange::none;
  if (change == ClockChange::none) return;
  Changes& changes = change == ClockChange::skipped ? skipped_ : doubled_;
  if (changes.count++ == 0) changes.first = row.values[1].where;
}

void RowReader::finish() {
  const auto warn = [&](const Changes& changes, std::string_view what, std::string hint) {
    if (changes.count == 0) return;
    diagnostics_.push_back({Severity::warning,
                            fmt::format("{} time{} in {}, where clocks change by the rule of the United States; the "
                                        "first is here",
                                        changes.count, changes.count == 1 ? " is" : "s are", what),
                            changes.first,
                            std::move(hint),
                            {}});
  };
  warn(skipped_, "the hour that clocks pass over in March",
       "taken as written; if clocks change there, was the clock set late?");
  warn(doubled_, "the hour that comes twice in November",
       "taken as written and in the order of the file; if clocks change there, say which hour is meant in a note");
  if (told_ <= most_told) return;
  diagnostics_.push_back({Severity::note,
                          fmt::format("{} more errors in this file are not listed", told_ - most_told),
                          reader_.row_span(),
                          "put those above right first",
                          {}});
}

}  // namespace forecourse::store
