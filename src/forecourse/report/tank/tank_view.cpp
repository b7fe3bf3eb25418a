#include "forecourse/report/tank/tank_view.h"

#include <algorithm>
#include <cmath>

namespace forecourse::report {
namespace {

using namespace studies;

/// Values as this report shows them.
class Shown {
 public:
  Shown(site::Display display, Glyphs glyphs) : display_(display), glyphs_(glyphs) {}

  [[nodiscard]] std::string volume(const std::optional<double>& si) const {
    return si ? number(shown_value(Measure::volume, display_, *si), 0, glyphs_) : none();
  }
  [[nodiscard]] std::string depth(const std::optional<double>& si) const {
    return si ? number(Measure::bore, display_, *si, glyphs_) : none();
  }
  [[nodiscard]] std::string along(const std::optional<double>& si) const {
    return si ? number(Measure::length, display_, *si, glyphs_) : none();
  }
  [[nodiscard]] std::string share(const std::optional<double>& si) const { return si ? percent(*si, glyphs_) : none(); }
  [[nodiscard]] std::string time(const std::optional<double>& si) const {
    return si ? time_span(*si, glyphs_) : none();
  }
  [[nodiscard]] std::string flow(double si) const { return with_unit(Measure::flow, display_, si, glyphs_); }
  [[nodiscard]] std::string volume_of(double si) const {
    return volume(si) + " " + unit_label(Measure::volume, display_, glyphs_);
  }
  [[nodiscard]] std::string depth_of(double si) const { return with_unit(Measure::bore, display_, si, glyphs_); }
  [[nodiscard]] std::string head(const char* words, Measure measure) const {
    return std::string(words) + ", " + unit_label(measure, display_, glyphs_);
  }
  [[nodiscard]] std::string none() const { return glyphs_ == Glyphs::unicode ? "\u2013" : "-"; }

 private:
  site::Display display_;
  Glyphs glyphs_;
};

std::string settled(const OverfillSetting& setting) {
  if (!setting.impossible.empty()) return "impossible: " + setting.impossible;
  if (!setting.missing.empty()) return "not determined: enter " + setting.missing;
  return "";
}

}  // namespace

std::string percent(double share, Glyphs glyphs) {
  return number(100.0 * share, 1, glyphs) + (glyphs == Glyphs::unicode ? "\u00a0%" : " %");
}

std::string siphon_name(const SiphonTold& siphon) {
  std::string out;
  for (const std::string& id : siphon.ids) out += (out.empty() ? "" : ", ") + id;
  return out;
}

WordTable tank_table(const TankResult& result, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  WordTable table{{"Tank", "Product", show.head("Holds", Measure::volume), show.head("Dip", Measure::bore),
                   show.head("In it", Measure::volume), "Full", show.head("Water", Measure::volume),
                   show.head("Ullage", Measure::volume)},
                  {false, false, true, true, true, true, true, true},
                  {}};
  for (std::size_t i = 0; i < (result.tanks.empty() ? 0 : result.tanks.front().rooms.size()); ++i)
    table.heads.push_back("Room to " + percent(result.tanks.front().rooms[i].share, glyphs));
  table.numbers.resize(table.heads.size(), true);
  for (const TankTold& tank : result.tanks) {
    std::vector<std::string> row{tank.id, tank.product};
    const bool known = tank.problem.empty();
    const auto of = [&](auto member) { return tank.now ? std::optional<double>((*tank.now).*member) : std::nullopt; };
    row.push_back(show.volume(known ? std::optional(tank.capacity) : std::nullopt));
    row.push_back(show.depth(of(&TankNow::depth)));
    row.push_back(show.volume(of(&TankNow::volume)));
    row.push_back(show.share(of(&TankNow::share)));
    row.push_back(show.volume(tank.now ? tank.now->water : std::nullopt));
    row.push_back(show.volume(of(&TankNow::ullage)));
    for (const TankRoom& room : tank.rooms) row.push_back(show.volume(room.room));
    row.resize(table.heads.size(), show.none());
    table.rows.push_back(std::move(row));
  }
  return table;
}

WordTable place_table(const TankTold& tank, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  WordTable table{{"Place", show.head("From the low end", Measure::length), show.head("Dip now", Measure::bore)},
                  {false, true, true},
                  {}};
  for (const TankRoom& room : tank.rooms) table.heads.push_back("Dip at " + percent(room.share, glyphs));
  table.heads.push_back(show.head("Dry with up to", Measure::volume));
  table.heads.push_back(show.head("Covered above", Measure::volume));
  table.numbers.resize(table.heads.size(), true);
  for (std::size_t i = 0; i < tank.places.size(); ++i) {
    const TankPlace& place = tank.places[i];
    std::vector<std::string> row{place.what, show.along(place.along), show.depth(place.depth)};
    for (const TankRoom& room : tank.rooms) row.push_back(room.depths[i] ? show.depth(room.depths[i]) : "covered");
    row.push_back(show.volume(place.dry_below));
    row.push_back(show.volume(place.covered_above));
    table.rows.push_back(std::move(row));
  }
  return table;
}

WordTable route_table(const TankTold& tank, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  WordTable table{{"Route", "Device", show.head("At", Measure::volume), "Full", show.head("Depth there", Measure::bore),
                   "What is asked", "Note"},
                  {false, false, true, true, true, false, false},
                  {}};
  for (const OverfillSetting& s : tank.overfill.settings) {
    table.rows.push_back({s.route, word(s.device), show.volume(s.volume), show.share(s.share), show.depth(s.depth),
                          s.words, settled(s)});
  }
  return table;
}

WordTable set_table(const TankTold& tank, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  WordTable table{
      {"Device", show.head("Set at", Measure::bore), show.head("Acts at", Measure::volume), "Full", "Before full"},
      {false, true, true, true, true},
      {}};
  for (const DeviceSet& set : tank.overfill.set) {
    table.rows.push_back(
        {set.what, show.depth(set.depth), show.volume(set.volume), show.share(set.share), show.time(set.before_full)});
  }
  return table;
}

WordTable wrong_table(const TankTold& tank, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  WordTable table{{"Set by", "Device", "Meant", show.head("Depth set", Measure::bore),
                   show.head("Acts at", Measure::volume), "In truth", "In time"},
                  {false, false, true, true, true, true, false},
                  {}};
  for (const WrongSetting& w : tank.overfill.wrong) {
    table.rows.push_back({w.by, word(w.device), show.share(w.share), show.depth(w.depth), show.volume(w.volume),
                          show.share(w.true_share), w.late ? "too late" : "early enough"});
  }
  return table;
}

WordTable chart_table(const TankTold& tank, site::Display display, Glyphs glyphs, std::size_t most) {
  const Shown show(display, glyphs);
  WordTable table{
      {show.head("Depth", Measure::bore), show.head("Volume", Measure::volume), "Full"}, {true, true, true}, {}};
  const bool level = !tank.chart.rows.empty() && tank.chart.rows.front().level_volume.has_value();
  if (level) {
    table.heads.push_back(show.head("Level chart", Measure::volume));
    table.numbers.push_back(true);
  }
  const std::size_t each = std::max<std::size_t>(1, (tank.chart.rows.size() + most - 1) / most);
  for (std::size_t i = 0; i < tank.chart.rows.size(); ++i) {
    if (i % each != 0 && i + 1 != tank.chart.rows.size()) continue;
    const TankChartRow& r = tank.chart.rows[i];
    table.rows.push_back({show.depth(r.depth), show.volume(r.volume), show.share(r.share)});
    if (level) table.rows.back().push_back(show.volume(r.level_volume));
  }
  return table;
}

WordTable fit_table(const CalibrationTold& fit, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  const auto shown = [&](const FittedSize& size, double value) {
    if (size.unit == "m3") return show.volume_of(value);
    if (size.unit == "m2") return with_unit(Measure::area, display, value, glyphs);
    return size.unit == "m" ? show.depth_of(value) : percent(value, glyphs);
  };
  WordTable table{{"Size", "Entered", "Fitted", "Standard error", "Note"}, {false, true, true, true, false}, {}};
  for (const FittedSize& size : fit.sizes) {
    table.rows.push_back({size.what, shown(size, size.entered),
                          size.held.empty() ? shown(size, size.value) : show.none(),
                          size.standard_error ? shown(size, *size.standard_error) : show.none(),
                          size.held.empty() ? "" : "held: " + size.held});
  }
  return table;
}

WordTable fit_chart_table(const CalibrationTold& fit, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  WordTable table{{show.head("Depth", Measure::bore), show.head("As entered", Measure::volume),
                   show.head("Fitted", Measure::volume), show.head("Standard error", Measure::volume)},
                  {true, true, true, true},
                  {}};
  for (const FittedChartRow& row : fit.chart) {
    table.rows.push_back({show.depth(row.depth), show.volume(row.entered), show.volume(row.fitted),
                          number(Measure::volume, display, row.standard_error, glyphs)});
  }
  return table;
}

WordTable siphon_table(const SiphonTold& siphon, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  WordTable table{
      {"Tank", show.head("Surface", Measure::length), show.head("In it", Measure::volume),
       show.head("At one level", Measure::volume), show.head("Stays if the siphon is lost", Measure::volume)},
      {false, true, true, true, true},
      {}};
  for (const SiphonedTank& tank : siphon.tanks) {
    table.rows.push_back({tank.id, show.along(tank.surface), show.volume(tank.volume), show.volume(tank.equal_volume),
                          siphon.lost_at && !siphon.manifold ? show.volume(tank.stranded) : show.none()});
  }
  return table;
}

WordTable draw_table(const SiphonTold& siphon, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  WordTable table{{"Pump draws", "Through the bar", show.head("Pump's tank lower by", Measure::bore),
                   show.head("One gauge tells more by", Measure::volume), "One level again after"},
                  {true, true, true, true, true},
                  {}};
  for (const SiphonDraw& draw : siphon.draws) {
    table.rows.push_back({show.flow(draw.draw), show.flow(draw.bar_flow), show.depth(draw.difference),
                          show.volume(draw.gauge_error), show.time(draw.recovers)});
  }
  return table;
}

std::vector<std::string> tank_remarks(const TankTold& tank, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  std::vector<std::string> out;
  if (!tank.not_read.empty()) out.push_back("What is in it is not determined: " + tank.not_read + ".");
  if (tank.now && tank.now->least)
    out.push_back("By the spread of its depth there are from " + show.volume_of(*tank.now->least) + " to " +
                  show.volume_of(*tank.now->most) + " in it.");
  if (tank.now && tank.now->standard_error)
    out.push_back("By the gauge's uncertainty the volume has a standard error of " +
                  show.volume_of(*tank.now->standard_error) + ".");
  if (tank.pitched && tank.places.size() == 1 && tank.places.front().what == "low end")
    out.emplace_back("No place along the tank is entered; depths are at the low end.");
  if (tank.chart.dry_below > 1e-6 * tank.capacity)
    out.push_back("At the place of the chart (" + tank.chart.what + ") the stick stands dry while there are up to " +
                  show.volume_of(tank.chart.dry_below) + " in the tank.");
  if (tank.chart.unseen_above > 1e-6 * tank.capacity)
    out.push_back("Where it is covered, there is still room for " + show.volume_of(tank.chart.unseen_above) + ".");
  if (tank.from_90_to_95)
    out.push_back("From 90 % to 95 % it takes " + show.time(tank.from_90_to_95) + " at " + show.flow(*tank.rate) + ".");
  if (!tank.rate) out.emplace_back("The delivery rate is not entered: minutes before full are not determined.");
  for (const std::string& remark : tank.overfill.remarks) out.push_back(remark + ".");
  return out;
}

std::vector<std::string> fit_remarks(const CalibrationTold& fit, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  std::vector<std::string> out;
  if (!fit.problem.empty()) return {"Not fitted: " + fit.problem + "."};
  out.push_back(
      "The readings lie " + show.depth_of(fit.residual) + " about the fit (one standard deviation)" +
      (fit.residual_entered ? ", " + show.depth_of(*fit.residual_entered) + " about the tank as entered." : "."));
  if (fit.uncertainty && fit.residual > 2.0 * *fit.uncertainty)
    out.push_back("That is more than the uncertainty entered, " + show.depth_of(*fit.uncertainty) +
                  ": something else differs too.");
  out.push_back("The fitted tank holds " + show.volume_of(fit.capacity) +
                (fit.capacity_error ? ", standard error " + show.volume_of(*fit.capacity_error) + "." : "."));
  for (const std::string& pair : fit.not_apart) out.push_back(pair + ".");
  return out;
}

std::vector<std::string> siphon_remarks(const SiphonTold& siphon, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  if (!siphon.problem.empty()) return {"Not determined: " + siphon.problem + "."};
  std::vector<std::string> out;
  if (siphon.equal_after && *siphon.equal_after > 0.0)
    out.push_back("The levels are within " + show.depth_of(close_levels()) + " of each other after " +
                  show.time(siphon.equal_after) + ".");
  if (siphon.equal_after && *siphon.equal_after == 0.0) out.emplace_back("The tanks stand at one level.");
  if (!siphon.equal_after) out.emplace_back("The levels do not find each other within a day.");
  if (!siphon.draws.empty())
    out.push_back("A pump has drawn for " + show.time(siphon.draw_time) + " in each line." +
                  (siphon.gauge.empty() ? " No tank has a gauge." : " The gauge is in tank " + siphon.gauge + "."));
  if (siphon.lost_at && !siphon.manifold)
    out.push_back(
        "Air enters when the surface falls to the ends of the siphon, with " +
        show.volume_of(siphon.lost_volume.value_or(0.0)) +
        " in all of them. Without the siphon the pump draws its own tank down alone, its gauge tells that tank "
        "alone, and what stands in the others stays there.");
  if (siphon.crest_pressure)
    out.push_back("At the crest the liquid is then at " +
                  with_unit(Measure::pressure, display, *siphon.crest_pressure, glyphs) + " absolute" +
                  (siphon.vapor_pressure
                       ? *siphon.crest_pressure > *siphon.vapor_pressure
                             ? ", above its vapor pressure of " +
                                   with_unit(Measure::pressure, display, *siphon.vapor_pressure, glyphs) + "."
                             : ", below its vapor pressure of " +
                                   with_unit(Measure::pressure, display, *siphon.vapor_pressure, glyphs) +
                                   ": it parts there before."
                       : "."));
  for (const std::string& remark : siphon.remarks) out.push_back(remark + ".");
  return out;
}

}  // namespace forecourse::report
