#include "forecourse/store/read_draw.h"

#include <fmt/format.h>

#include <algorithm>

#include "forecourse/base/nearest_word.h"
#include "forecourse/store/records/record_of_row.h"
#include "forecourse/store/records/site_names.h"

namespace forecourse::store {
namespace {

class Draw {
 public:
  Draw(const std::string& written, std::uint32_t index, const SiteNames& names, std::vector<Diagnostic>& wrong)
      : written_(written), index_(index), kind_(*find_kind("provings")), names_(names), wrong_(wrong) {
    row_.where = span(0, written.size());
    row_.values.resize(kind_.columns.size());
    for (Value& value : row_.values) value.where = row_.where;
  }

  void take_parts() {
    for (std::size_t begin = 0; begin <= written_.size();) {
      const std::size_t end = std::min(written_.find(',', begin), written_.size());
      take_part(begin, end);
      begin = end + 1;
    }
  }

  /// What was not written of a column. What is wrong with it is told where it stands.
  void fill(std::string_view column, const std::string& text) {
    const std::size_t place = kind_.find(column).value();
    if (!row_.values[place].given() && !text.empty()) take(place, text, row_.where);
  }

  void look_whole() {
    if (!row_.values[kind_.find("hose").value()].given()) refuse(row_.where, "this draw has no hose", "name its hose");
    for (const std::vector<std::size_t>& set : kind_.one_of) {
      const auto given = [&](std::size_t i) { return row_.values[i].given() || tried(i); };
      if (std::any_of(set.begin(), set.end(), given)) continue;
      std::vector<std::string_view> missing;
      missing.reserve(set.size());
      for (const std::size_t i : set) missing.push_back(kind_.columns[i].name);
      refuse(row_.where, fmt::format("this draw has no {}", fmt::join(missing, " and no ")),
             "write \"indicated=5 gal, measure=5 gal, scale=-7 in3\"");
    }
  }

  [[nodiscard]] site::records::Proving record() const { return record_of<site::records::Proving>(row_); }

 private:
  void take_part(std::size_t begin, std::size_t end) {
    const std::size_t equals = written_.find('=', begin);
    if (trimmed(begin, end).empty()) return;
    if (equals >= end) {
      return refuse(span(begin, end), fmt::format("'{}' has no '='", trimmed(begin, end)), "write scale=-7 in3");
    }
    std::string name = trimmed(begin, equals);
    std::replace(name.begin(), name.end(), '-', '_');
    const auto place = kind_.find(name);
    if (!place) {
      const auto names = column_names(kind_);
      const auto near = nearest_word(name, std::span<const std::string_view>(names));
      return refuse(
          span(begin, equals), fmt::format("a draw has no '{}'", name),
          near ? fmt::format("did you mean '{}'?", *near) : fmt::format("it has: {}", fmt::join(names, ", ")));
    }
    if (tried(*place)) return refuse(span(begin, equals), fmt::format("{} is written twice", name), "");
    tried_.push_back(*place);
    const std::string text = trimmed(equals + 1, end);
    take(*place, text, span(equals + 1, end));
    const auto unknown = unknown_name(names_, kind_.columns[*place], text);
    if (unknown) refuse(span(equals + 1, end), unknown->message, unknown->hint);
  }

  void take(std::size_t place, const std::string& text, const SourceSpan& where) {
    const Column& column = kind_.columns[place];
    auto read = read_cell(column, {text, where}, {}, "");
    if (const auto* fault = std::get_if<CellFault>(&read)) return refuse(where, fault->message, fault->hint);
    row_.values[place] = std::move(std::get<Value>(read));
  }

  [[nodiscard]] bool tried(std::size_t place) const {
    return std::find(tried_.begin(), tried_.end(), place) != tried_.end();
  }
  [[nodiscard]] std::string trimmed(std::size_t begin, std::size_t end) const {
    const std::string_view text = std::string_view(written_).substr(begin, end - begin);
    const std::size_t first = text.find_first_not_of(' ');
    if (first == std::string_view::npos) return {};
    return std::string(text.substr(first, text.find_last_not_of(' ') - first + 1));
  }
  [[nodiscard]] SourceSpan span(std::size_t begin, std::size_t end) const {
    return {index_, static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(end)};
  }
  void refuse(const SourceSpan& where, std::string message, std::string hint) {
    wrong_.push_back({Severity::error, std::move(message), where, std::move(hint), {}});
  }

  const std::string& written_;
  std::uint32_t index_;
  const Kind& kind_;
  const SiteNames& names_;
  std::vector<Diagnostic>& wrong_;
  Row row_;
  std::vector<std::size_t> tried_;
};

}  // namespace

Parsed<std::vector<site::records::Proving>> read_draws(const std::vector<std::string>& written, const std::string& hose,
                                                       const std::string& today, std::vector<SourceText>& texts,
                                                       const site::Site& site) {
  Parsed<std::vector<site::records::Proving>> out;
  const SiteNames names = names_of(site);
  for (std::size_t i = 0; i < written.size(); ++i) {
    texts.push_back({fmt::format("draw {}", i + 1), written[i]});
    Draw draw(written[i], static_cast<std::uint32_t>(texts.size() - 1), names, out.diagnostics);
    draw.take_parts();
    draw.fill("day", today);
    draw.fill("hose", hose);
    draw.fill("draw", std::to_string(i + 1));
    draw.look_whole();
    out.value.push_back(draw.record());
  }
  return out;
}

}  // namespace forecourse::store
