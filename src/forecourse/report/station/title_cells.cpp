#include "forecourse/report/station/title_cells.h"

#include <algorithm>
#include <array>
#include <cctype>

#include "forecourse/base/nearest_word.h"

namespace forecourse::report {
namespace {

constexpr std::array<TitleCell, 7> cells_known{{
    {"station", "Station", "not given"},
    {"client", "Client", "not given"},
    {"prepared by", "Prepared by", "not given"},
    {"checked by", "Checked by", "not checked"},
    {"date", "Date", "not given"},
    {"drawing number", "Drawing number", "not given"},
    {"revision", "Revision", "not given"},
}};

std::string trimmed(std::string_view text) {
  const auto first = text.find_first_not_of(" \t\r\n");
  if (first == std::string_view::npos) return {};
  return std::string(text.substr(first, text.find_last_not_of(" \t\r\n") - first + 1));
}

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return text;
}

Diagnostic error(std::string message, std::string hint) {
  return {Severity::error, std::move(message), SourceSpan{}, std::move(hint), {}};
}

Diagnostic unknown_cell(const std::string& name) {
  std::vector<std::string_view> names;
  std::string all;
  for (const TitleCell& cell : cells_known) {
    names.push_back(cell.name);
    all.append(all.empty() ? "" : ", ").append(cell.name);
  }
  const auto near = nearest_word(name, std::span<const std::string_view>(names));
  return error("there is no title cell '" + name + "'",
               (near ? "did you mean '" + std::string(*near) + "'? " : "") + "there are: " + all);
}

}  // namespace

std::span<const TitleCell> title_cells() { return cells_known; }

std::optional<Diagnostic> fill_cell(std::string_view name, std::string_view text, CellTexts& cells) {
  const std::string wanted = trimmed(name);
  const std::string key = lower(wanted);
  const bool known = std::any_of(cells_known.begin(), cells_known.end(), [&](const auto& c) { return c.name == key; });
  if (!known) return unknown_cell(wanted);
  if (text.size() > longest_cell_text) {
    return error("the text of the title cell '" + key + "' is " + std::to_string(text.size()) + " bytes long",
                 "a cell holds " + std::to_string(longest_cell_text) + " bytes at most");
  }
  cells[key] = trimmed(text);
  return std::nullopt;
}

std::optional<Diagnostic> fill_cell(std::string_view name_and_text, CellTexts& cells) {
  const std::size_t equals = name_and_text.find('=');
  if (equals == std::string_view::npos) {
    return error("a title cell is a name, '=' and a text, but '" + std::string(name_and_text) + "' is written",
                 "write \"prepared by=R. Tay\"");
  }
  return fill_cell(name_and_text.substr(0, equals), name_and_text.substr(equals + 1), cells);
}

std::vector<std::pair<std::string, std::string>> printed(const CellTexts& cells) {
  std::vector<std::pair<std::string, std::string>> out;
  for (const TitleCell& cell : cells_known) {
    const auto found = cells.find(std::string(cell.name));
    const bool given = found != cells.end() && !found->second.empty();
    out.emplace_back(cell.label, given ? found->second : std::string(cell.when_empty));
  }
  return out;
}

}  // namespace forecourse::report
