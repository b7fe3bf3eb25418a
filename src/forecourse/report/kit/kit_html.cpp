#include <fmt/format.h>

#include "forecourse/report/html/parts.h"
#include "forecourse/report/kit/kit_report.h"
#include "forecourse/report/kit/kit_view.h"

namespace forecourse::report {
namespace {

using namespace handover;

constexpr Glyphs glyphs = Glyphs::unicode;

std::string length(double si, site::Display display) { return number(Measure::length, display, si, glyphs); }

std::string order_table(const Kit& kit, site::Display display) {
  html::Table table{"To order",
                    "Parts of one kind and size, at all stops.",
                    {{"Part", ""}, {"Size", "", false, true}, {"Count", "", true}, {"Your part number", ""}},
                    {},
                    {}};
  for (const OrderLine& one : kit.order)
    table.rows.push_back({{one.what, sizes_in_words(one.sizes, display, glyphs), count_in_words(one.count), ""}});
  return html::table(table);
}

std::string pipe_table(const Kit& kit, site::Display display) {
  if (kit.pipes.empty()) return {};
  const std::string unit = unit_label(Measure::length, display, glyphs);
  html::Table table{"Pipe to order",
                    fmt::format("With {} % of waste.", number(100.0 * kit.options.waste.value_or(0.0), 0, glyphs)),
                    {{"Pipe", ""},
                     {"Size", "", false, true},
                     {"Runs", "", true},
                     {"Laid", unit, true},
                     {"With waste", unit, true},
                     {"Sticks", "", true}},
                    {},
                    {}};
  if (!kit.options.stick_length) table.columns.pop_back();
  for (const PipeTotal& one : kit.pipes) {
    table.rows.push_back(
        {{one.what, sizes_in_words(one.sizes, display, glyphs), runs_in_words(one),
          total_in_words(one, length(one.length, display)), total_in_words(one, length(one.order_length, display))}});
    if (kit.options.stick_length) table.rows.back().cells.push_back(count_in_words(one.sticks));
  }
  return html::table(table);
}

/// What it does, its size, and which parts it is.
std::string in_words(const KitRow& row, site::Display display) {
  constexpr std::size_t most = 4;
  const std::string sizes = sizes_in_words(row.sizes, display, glyphs);
  return row.function + (row.sizes.empty() ? " Size not entered." : " Size: " + sizes + ".") +
         " Of: " + subjects_in_words(row.subjects, most) + ".";
}

std::string rating(const KitRow& row, site::Display display) {
  std::string out = needed_in_words(row.needed, display, glyphs);
  if (!row.rating) return out;
  out += (out.empty() ? "rated " : "; rated ") + with_unit(Measure::pressure, display, *row.rating, glyphs);
  return row.below_need ? out + ", less than needed" : out;
}

std::string listing(const KitRow& row) {
  std::string out = standards_in_words(row.standards);
  for (const std::string& one : row.listed_to) out += "; entered: " + one;
  return out;
}

/// One table for the whole course: on paper it breaks where a page ends.
std::string schedule_table(const Kit& kit, site::Display display) {
  html::Table table{"Schedule",
                    "In the order of the course, by its stops.",
                    {{"Part", ""},
                     {"Stop", ""},
                     {"Does", "", false, true},
                     {"Amount", ""},
                     {"Rating needed", ""},
                     {"Listed to", ""},
                     {"Fuel", ""}},
                    {},
                    {}};
  for (const KitRow& row : kit.rows) {
    const std::string what = row.not_ordered.empty() ? row.what : row.what + " (" + row.not_ordered + ")";
    table.rows.push_back(
        {{what, handover::word(row.stop), in_words(row, display), amount_in_words(row, display, glyphs),
          rating(row, display), listing(row), compatibility_in_words(row.compatibility)},
         row.below_need});
  }
  return table.rows.empty() ? std::string() : html::table(table);
}

std::string spares_table(const Kit& kit) {
  if (kit.spares.empty()) return {};
  html::Table table{"Spares, by what their failure means",
                    "One of each is common practice, no source; how often a part fails is not known here.",
                    {{"Part", ""}, {"Its failure", ""}, {"Why", "", false, true}},
                    {},
                    {}};
  for (const Spare& one : kit.spares)
    table.rows.push_back({{kit.rows[one.rows.front()].what, handover::word(one.consequence), one.reason}});
  return html::table(table);
}

std::string whole(const Kit& kit, site::Display display) {
  std::string out = html::heading(2, "To order") + order_table(kit, display) + pipe_table(kit, display);
  out += html::heading(2, "What the order needs and the file does not tell") +
         html::list(not_told_in_words(kit, display, glyphs));
  out +=
      html::heading(2, "Schedule along the course") +
      html::paragraph(
          "Rating needed: of fuel, the greatest pressure without flow at the part, static and dead-head at "
          "the level of the tank that is entered; surge, and the expansion of fuel that is shut in and warms, are not "
          "computed. Of vapor, the settings of the vent valve. Threads are not entered: a "
          "site file has no key for them.");
  out += schedule_table(kit, display);
  return out + html::heading(2, "Spares") + spares_table(kit);
}

/// "tank 3, submersible pump 3", of each kind that is counted and ordered.
std::string counts(const Kit& kit) {
  std::string out;
  for (const PartKind& kind : part_kinds()) {
    int count = 0;
    for (const KitRow& row : kit.rows) {
      if (row.kind == kind.kind && row.not_ordered.empty() && !row.is_pipe) count += row.count.value_or(0);
    }
    if (count > 0) out += fmt::format("{}{} {}", out.empty() ? "" : ", ", kind.noun, count);
  }
  return out;
}

}  // namespace

std::string kit_section(const Kit& kit, site::Display display) {
  if (kit.order.empty() && kit.pipes.empty()) return {};
  std::string out = html::heading(2, "Equipment") + html::paragraph("Listed in the site file: " + counts(kit) + ".");
  std::vector<std::string> pipes;
  for (const PipeTotal& one : kit.pipes) {
    const std::string pipe = one.what + ", " + sizes_in_words(one.sizes, display, glyphs);
    if (one.runs_without_length == one.runs) {
      pipes.push_back(pipe + ": length not entered");
      continue;
    }
    const auto total = [&](double si) { return total_in_words(one, with_unit(Measure::length, display, si, glyphs)); };
    const std::string lacks = one.runs_without_length == 0
                                  ? ""
                                  : fmt::format("; {} of {} runs without a length", one.runs_without_length, one.runs);
    pipes.push_back(
        fmt::format("{}: {} laid, {} with waste{}", pipe, total(one.length), total(one.order_length), lacks));
  }
  return out + html::list(pipes) +
         html::paragraph("Sizes, ratings, standards, compatibility and spares: `forecourse kit`.");
}

std::string kit_report(const Kit& kit, const site::Site& site, const ReportFacts& facts) {
  return study_page("Equipment schedule", "kit", kit_cautions().front(), whole(kit, site.display),
                    {kit.version, kit.defaults, kit.warnings, kit_cautions()}, site, facts);
}

}  // namespace forecourse::report
