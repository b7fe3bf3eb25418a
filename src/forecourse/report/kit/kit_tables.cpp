#include <fmt/format.h>

#include "forecourse/report/kit/kit_report.h"
#include "forecourse/report/kit/kit_view.h"

namespace forecourse::report {
namespace {

using namespace handover;
using Cell = CellTable::Cell;

constexpr Glyphs plain = Glyphs::ascii;  // files are read by other programs

Cell count_cell(const std::optional<int>& count) { return count ? Cell(static_cast<double>(*count)) : Cell(); }

Cell text_cell(std::string text) { return text.empty() ? Cell() : Cell(std::move(text)); }

std::string joined(const std::vector<std::string>& texts) {
  std::string out;
  for (const std::string& one : texts) out += (out.empty() ? "" : "; ") + one;
  return out;
}

/// A number; words where it is a least one, so that no sum takes it for the whole.
Cell length_cell(double length, bool at_least, site::Display display) {
  if (at_least) return "at least " + number(Measure::length, display, length, plain);
  return shown_value(Measure::length, display, length);
}

CellTable schedule(const Kit& kit, site::Display display) {
  const std::string unit = unit_label(Measure::length, display, plain);
  CellTable out{"Schedule",
                {"Stop", "Part", "Size", "Function", "Rating needed", "Basis", "Rating entered", "Thread",
                 "Listed to, by function", "Listed to, as entered", "Fuel", "Count", "Unit", "Length, " + unit, "Of",
                 "Paths", "Your part number"},
                {}};
  for (const KitRow& row : kit.rows) {
    const Cell length = row.length ? length_cell(*row.length, row.runs_without_length > 0, display) : Cell();
    out.rows.push_back({std::string(handover::word(row.stop)), row.what, sizes_in_words(row.sizes, display, plain),
                        row.function, text_cell(needed_in_words(row.needed, display, plain)),
                        text_cell(row.needed.missing.empty() ? row.needed.basis : row.needed.missing),
                        row.rating ? Cell(with_unit(Measure::pressure, display, *row.rating, plain)) : Cell(),
                        std::string("not entered"), standards_in_words(row.standards), text_cell(joined(row.listed_to)),
                        text_cell(compatibility_in_words(row.compatibility)), count_cell(row.count),
                        std::string(row.is_pipe ? "run" : "each"), length, joined(row.subjects), joined(row.parts),
                        Cell()});
  }
  return out;
}

CellTable order(const Kit& kit, site::Display display) {
  CellTable out{"Order", {"Part", "Size", "Count", "Your part number"}, {}};
  for (const OrderLine& one : kit.order)
    out.rows.push_back({one.what, sizes_in_words(one.sizes, display, plain), count_cell(one.count), Cell()});
  return out;
}

CellTable pipe(const Kit& kit, site::Display display) {
  const std::string unit = unit_label(Measure::length, display, plain);
  CellTable out{"Pipe",
                {"Pipe", "Size", "Runs", "Runs without length", "Laid, " + unit, "With waste, " + unit, "Sticks",
                 "Your part number"},
                {}};
  for (const PipeTotal& one : kit.pipes) {
    const auto total = [&](double length) {
      const bool none = one.runs_without_length == one.runs;
      return none ? Cell("not entered") : length_cell(length, one.runs_without_length > 0, display);
    };
    out.rows.push_back({one.what, sizes_in_words(one.sizes, display, plain), static_cast<double>(one.runs),
                        static_cast<double>(one.runs_without_length), total(one.length), total(one.order_length),
                        count_cell(one.sticks), Cell()});
  }
  return out;
}

CellTable spares(const Kit& kit, site::Display display) {
  CellTable out{"Spares", {"Part", "Size", "Its failure", "Why", "Hoses shut", "Your part number"}, {}};
  for (const Spare& one : kit.spares) {
    const KitRow& row = kit.rows[one.rows.front()];
    out.rows.push_back({row.what, sizes_in_words(row.sizes, display, plain),
                        std::string(handover::word(one.consequence)), one.reason, static_cast<double>(one.hoses.size()),
                        Cell()});
  }
  return out;
}

std::string quoted(const std::string& text) {
  std::string out = "\"";
  constexpr std::string_view starts_a_formula = "=+-@\t\r";
  if (!text.empty() && starts_a_formula.find(text.front()) != std::string_view::npos) out += "'";
  for (const char c : text) {
    if (c == '"') out += '"';
    out += c;
  }
  return out + "\"";
}

std::string csv(const Cell& cell) {
  if (const auto* text = std::get_if<std::string>(&cell)) return quoted(*text);
  if (const auto* value = std::get_if<double>(&cell)) return fmt::format("{:.10g}", *value);
  return {};
}

}  // namespace

std::vector<CellTable> kit_tables(const Kit& kit, site::Display display) {
  return {schedule(kit, display), order(kit, display), pipe(kit, display), spares(kit, display)};
}

std::string to_csv(const CellTable& table) {
  std::string out;
  for (std::size_t i = 0; i < table.heads.size(); ++i) out += (i == 0 ? "" : ",") + quoted(table.heads[i]);
  out += "\n";
  for (const auto& row : table.rows) {
    for (std::size_t i = 0; i < row.size(); ++i) out += (i == 0 ? "" : ",") + csv(row[i]);
    out += "\n";
  }
  return out;
}

}  // namespace forecourse::report
