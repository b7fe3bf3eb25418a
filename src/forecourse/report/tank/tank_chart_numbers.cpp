#include <fmt/format.h>

#include "forecourse/report/tank/tank_report.h"
#include "forecourse/report/units.h"

namespace forecourse::report {

NumberTable tank_chart_numbers(const studies::TankTold& tank, site::Display display) {
  const auto head = [&](const char* words, Measure measure) {
    return std::string(words) + ", " + unit_label(measure, display, Glyphs::ascii);
  };
  NumberTable out{tank.id, {head("Depth", Measure::bore), head("Volume", Measure::volume), "Full, %"}, {3, 2, 3}, {}};
  const auto& rows = tank.chart.rows;
  const bool level = !rows.empty() && rows.front().level_volume.has_value();
  if (level) {
    out.heads.push_back(head("Level chart", Measure::volume));
    out.decimals.push_back(2);
  }
  for (const studies::TankChartRow& row : rows) {
    out.rows.push_back({shown_value(Measure::bore, display, row.depth),
                        shown_value(Measure::volume, display, row.volume), 100.0 * row.share});
    if (level) out.rows.back().push_back(shown_value(Measure::volume, display, *row.level_volume));
  }
  return out;
}

std::string to_csv(const NumberTable& table) {
  std::string out;
  for (std::size_t i = 0; i < table.heads.size(); ++i) out += (i == 0 ? "\"" : ",\"") + table.heads[i] + "\"";
  out += "\n";
  for (const auto& row : table.rows) {
    for (std::size_t i = 0; i < row.size(); ++i) {
      if (i > 0) out += ",";
      if (row[i]) out += fmt::format("{:.{}f}", *row[i], table.decimals[i]);
    }
    out += "\n";
  }
  return out;
}

}  // namespace forecourse::report
