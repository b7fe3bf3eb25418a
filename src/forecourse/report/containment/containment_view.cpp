#include "forecourse/report/containment/containment_view.h"

#include <algorithm>

namespace forecourse::report {
namespace {

using studies::ContainedSump;
using studies::ContainmentResult;
using studies::Holds;

class Shown {
 public:
  Shown(site::Display display, Glyphs glyphs) : display_(display), glyphs_(glyphs) {}

  [[nodiscard]] std::string volume(const std::optional<double>& si) const {
    return si ? number(Measure::volume, display_, *si, glyphs_) : none();
  }
  [[nodiscard]] std::string height(const std::optional<double>& si) const {
    return si ? number(Measure::bore, display_, *si, glyphs_) : none();
  }
  [[nodiscard]] std::string time(const std::optional<double>& seconds) const {
    return seconds ? time_span(*seconds, glyphs_) : none();
  }
  [[nodiscard]] std::string inflow(double si) const { return inflow_words(si, display_, glyphs_); }
  [[nodiscard]] std::string head(const char* words, Measure measure) const {
    return std::string(words) + ", " + unit_label(measure, display_, glyphs_);
  }

 private:
  [[nodiscard]] std::string none() const { return glyphs_ == Glyphs::unicode ? "\u2013" : "-"; }

  site::Display display_;
  Glyphs glyphs_;
};

std::string joined(const std::vector<std::string>& reasons) {
  std::string out;
  for (const std::string& reason : reasons) out += (out.empty() ? "" : "; ") + reason;
  return out;
}

/// Adds a row, or its last cell's name to that of a row which says the same.
void add_to_like(std::vector<std::string> row, std::size_t name, std::vector<std::vector<std::string>>& rows) {
  for (auto& other : rows) {
    if (!std::equal(row.begin(), row.begin() + static_cast<std::ptrdiff_t>(name), other.begin())) continue;
    other[name] += ", " + row[name];
    return;
  }
  rows.push_back(std::move(row));
}

template <class Items>
std::size_t assured(const Items& items) {
  return static_cast<std::size_t>(
      std::count_if(items.begin(), items.end(), [](const auto& item) { return item.holds == Holds::assured; }));
}

}  // namespace

std::string inflow_words(double si, site::Display display, Glyphs glyphs) {
  const double per_minute = shown_value(Measure::flow, display, si);
  return with_unit(per_minute < 0.5 ? Measure::leak : Measure::flow, display, si, glyphs);
}

std::string sump_name(const ContainedSump& sump) { return (sump.of_tank ? "tank " : "dispenser ") + sump.owner; }

std::string containment_in_short(const ContainmentResult& result) {
  const auto of = [](std::size_t part, std::size_t whole, const char* what) {
    return std::to_string(part) + " of " + std::to_string(whole) + " " + what;
  };
  return of(assured(result.sumps), result.sumps.size(), "sumps") + ", " +
         of(assured(result.joints), result.joints.size(), "joints") + " and " +
         of(assured(result.lines), result.lines.size(), "lines") + " have containment that is assured.";
}

WordTable sump_table(const ContainmentResult& result, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  WordTable table{{show.head("To the sensor", Measure::volume), show.head("To the lowest seal", Measure::volume),
                   show.head("To the brim", Measure::volume), "Holds", "Why not", "Sumps"},
                  {true, true, true, false, false, false},
                  {}};
  for (const ContainedSump& sump : result.sumps) {
    const std::string why = sump.problem.empty() ? joined(sump.reasons) : sump.problem;
    const bool known = sump.problem.empty();
    add_to_like(
        {show.volume(sump.at_sensor), show.volume(sump.at_seal),
         show.volume(known ? std::optional(sump.brim) : std::nullopt), studies::word(sump.holds), why, sump_name(sump)},
        5, table.rows);
  }
  return table;
}

WordTable fill_table(const ContainmentResult& result, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  WordTable table{{"Inflow", "Sensor wet", "Lowest seal", "Brim", "Sensor tells", "By then", "Sumps"},
                  {true, true, true, true, true, true, false},
                  {}};
  for (const ContainedSump& sump : result.sumps) {
    for (const studies::SumpFill& fill : sump.fills) {
      const std::string late = fill.over_before_seen ? " (runs over before)" : "";
      const auto by_then =
          fill.volume_when_seen ? with_unit(Measure::volume, display, *fill.volume_when_seen, glyphs) : show.volume({});
      add_to_like({show.inflow(fill.inflow), show.time(fill.to_sensor), show.time(fill.to_seal),
                   show.time(fill.to_brim), show.time(fill.seen_at) + late, by_then, sump.owner},
                  6, table.rows);
    }
  }
  return table;
}

WordTable height_table(const ContainedSump& sump, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  WordTable table{{show.head("Height", Measure::bore), show.head("Holds", Measure::volume)}, {true, true}, {}};
  for (const studies::SumpPoint& point : sump.points) {
    table.rows.push_back({show.height(point.height), show.volume(point.volume)});
  }
  return table;
}

WordTable joint_table(const ContainmentResult& result) {
  WordTable table{{"Containment", "Fuel goes", "From"}, {false, false, false}, {}};
  for (const studies::Joint& joint : result.joints) {
    add_to_like({studies::word(joint.holds), joint.words, joint.what}, 2, table.rows);
  }
  return table;
}

WordTable line_table(const ContainmentResult& result) {
  WordTable table{{"Containment", "What leaks goes", "Lines"}, {false, false, false}, {}};
  for (const studies::DrainBack& line : result.lines) {
    add_to_like({studies::word(line.holds), line.words, line.line}, 2, table.rows);
  }
  return table;
}

}  // namespace forecourse::report
