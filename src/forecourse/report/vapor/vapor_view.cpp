#include "forecourse/report/vapor/vapor_view.h"

#include <algorithm>
#include <cmath>

namespace forecourse::report {
namespace {

using parts::ThroughputTier;
using studies::LossTold;
using studies::ProductVapor;
using studies::VaporResult;

const char* tier_words(ThroughputTier tier) {
  switch (tier) {
    case ThroughputTier::below_10000:
      return "below 10,000 gal";
    case ThroughputTier::from_10000:
      return "from 10,000 to below 100,000 gal";
    case ThroughputTier::from_100000:
      return "100,000 gal or more";
  }
  return "";
}

class Shown {
 public:
  Shown(site::Display display, Glyphs glyphs) : display_(display), glyphs_(glyphs) {}

  [[nodiscard]] std::string value(Measure measure, const std::optional<double>& si) const {
    return number(measure, display_, si.value_or(NAN), glyphs_);
  }
  [[nodiscard]] std::string head(const char* words, Measure measure) const {
    return std::string(words) + ", " + unit_label(measure, display_, glyphs_);
  }
  [[nodiscard]] std::string percent(const std::optional<double>& share, int decimals) const {
    return number(100.0 * share.value_or(NAN), decimals, glyphs_);
  }

 private:
  site::Display display_;
  Glyphs glyphs_;
};

std::string here_words(const std::optional<bool>& here) { return !here ? "not known" : *here ? "yes" : "no"; }

std::string lost_sentence(const ProductVapor& product, site::Display display, Glyphs glyphs) {
  const std::string head = product.product + ": ";
  if (!product.throughput) return head + "what is lost in a month is not determined: enter operations.throughput.";
  if (!product.lost) {
    return head +
           "what is lost as it is filled here is not determined: enter the fills of its tanks with their drop tubes.";
  }
  const auto mass = [&](const std::optional<double>& kilograms) {
    return kilograms ? with_unit(Measure::mass, display, *kilograms, glyphs) : std::string("not determined");
  };
  std::string out = head + "with " + with_unit(Measure::volume, display, *product.throughput, glyphs) +
                    " a month, by published factors " + mass(product.lost) + " of vapor are lost as it is filled here";
  return out + " (with vapor balance " + mass(product.with_stage_one) + ", without " + mass(product.without_stage_one) +
         "). The factors are from memory, not verified.";
}

}  // namespace

std::vector<std::string> vapor_answer(const VaporResult& result, site::Display display, Glyphs glyphs) {
  std::vector<std::string> out;
  if (result.gasoline_throughput) {
    out.push_back("Throughput of gasoline " + with_unit(Measure::volume, display, *result.gasoline_throughput, glyphs) +
                  " a month: tier " + tier_words(*result.tier) + " of the federal rule.");
  } else {
    out.emplace_back(
        "Throughput of gasoline is not entered for every gasoline: which tier of the federal rule applies is not "
        "determined.");
  }
  for (const ProductVapor& product : result.products) {
    if (product.gasoline) out.push_back(lost_sentence(product, display, glyphs));
  }
  return out;
}

WordTable tier_table(const VaporResult& result) {
  WordTable table{{"Applies", "To stations of", "Asks"}, {false, false, false}, {}};
  const auto add = [&](ThroughputTier from, const char* stations, const char* asks) {
    const bool applies = result.tier && *result.tier >= from;
    table.rows.push_back({!result.tier ? "not determined" : applies ? "yes" : "no", stations, asks});
  };
  add(ThroughputTier::below_10000, "any throughput",
      "minimize spills and open containers (63.11116); keep records of throughput");
  add(ThroughputTier::from_10000, "10,000 gal a month or more",
      "submerged fill, its opening at most 12 in above the bottom, 6 in if installed after 9 November 2006; tanks "
      "below "
      "250 gal exempt (63.11117)");
  add(ThroughputTier::from_100000, "100,000 gal a month or more",
      "vapor balance, exempt below 250 gal, or below 2,000 gal if built before 10 January 2008; two-point connection "
      "on "
      "tanks built after 9 November 2006; vent valves that open at 2.5 to 6 in of water and 6 to 10 in of vacuum; test "
      "of valves and static pressure test every 3 years (63.11118, 63.11120, table 1)");
  return table;
}

WordTable pressure_table(const VaporResult& result, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  WordTable table{{"Product", show.head("At", Measure::temperature), "True vapor pressure, psia", "kPa absolute",
                   "Vapor, g/mol", "How it was come by"},
                  {false, true, true, true, true, false},
                  {}};
  for (const ProductVapor& product : result.products) {
    const double pressure = product.true_vapor_pressure.value_or(NAN);
    table.rows.push_back({product.product, show.value(Measure::temperature, product.temperature),
                          number(shown_value(Measure::pressure, site::Display::us, pressure), 2, glyphs),
                          number(shown_value(Measure::pressure, site::Display::si, pressure), 1, glyphs),
                          number(1e3 * product.molar_mass.value_or(NAN), 1, glyphs), product.pressure_source});
  }
  return table;
}

WordTable loss_table(const ProductVapor& product, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  WordTable table{{"Where", "By", show.head("Lost", Measure::vapor_loss), show.head("In a month", Measure::mass),
                   "Done here", "How well known"},
                  {false, false, true, true, false, false},
                  {}};
  for (const LossTold& loss : product.losses) {
    table.rows.push_back({loss.what, loss.by, show.value(Measure::vapor_loss, loss.mass_per_volume),
                          show.value(Measure::mass, loss.mass_per_month), here_words(loss.here),
                          loss.missing.empty() ? studies::word(loss.status) : "not determined: " + loss.missing});
  }
  return table;
}

WordTable static_table(const VaporResult& result, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  WordTable table;
  table.heads.push_back(show.head("Ullage", Measure::volume));
  table.numbers.push_back(true);
  for (const studies::StaticTargets& band : result.static_targets) {
    const std::string count = band.nozzles_to == 0
                                  ? std::to_string(band.nozzles_from) + " or more"
                                  : std::to_string(band.nozzles_from) + " to " + std::to_string(band.nozzles_to);
    table.heads.push_back(count + " nozzles" + (band.here ? " (here)" : "") +
                          (band.constant_read ? "" : " (constant in doubt)") + ", " +
                          unit_label(Measure::ullage_pressure, display, glyphs));
    table.numbers.push_back(true);
  }
  for (std::size_t i = 0; i < result.static_targets.front().targets.size(); ++i) {
    std::vector<std::string> row{show.value(Measure::volume, result.static_targets.front().targets[i].ullage)};
    for (const studies::StaticTargets& band : result.static_targets) {
      row.push_back(show.value(Measure::ullage_pressure, band.targets[i].pressure));
    }
    table.rows.push_back(std::move(row));
  }
  return table;
}

WordTable leak_table(site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  WordTable table{{show.head("At 2 in of water", Measure::vapor_leak),
                   show.head("At 4 in of vacuum", Measure::vapor_leak), "Of", "By"},
                  {true, true, false, false},
                  {}};
  table.rows.push_back({show.value(Measure::vapor_leak, parts::site_pressure_leak),
                        show.value(Measure::vapor_leak, parts::site_vacuum_leak),
                        "all vent valves of the site together", "40 CFR 63 Subpart CCCCCC, table 1 (1)(g)"});
  table.rows.push_back({show.value(Measure::vapor_leak, parts::valve_pressure_leak),
                        show.value(Measure::vapor_leak, parts::valve_vacuum_leak), "each vent valve, in California",
                        "Executive Order VR-101-D, exhibit 3"});
  return table;
}

WordTable uptake_table(const studies::ProductCare& care, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  WordTable table{{show.head("Temperature", Measure::temperature), "Water held, % by volume"}, {true, true}, {}};
  for (const studies::WaterUptake& point : care.uptake_e10) {
    table.rows.push_back({show.value(Measure::temperature, point.temperature), show.percent(point.share, 2)});
  }
  return table;
}

WordTable water_table(const studies::ProductCare& care, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  WordTable table{{"Tank", show.head("At", Measure::temperature), "Water held, % by volume",
                   show.head("Water bottom", Measure::bore), "What follows"},
                  {false, true, true, true, false},
                  {}};
  for (const studies::TankWater& tank : care.water) {
    table.rows.push_back({tank.tank + ", " + tank.product, show.value(Measure::temperature, tank.temperature),
                          tank.share ? show.percent(tank.share, 2) : "not determined",
                          show.value(Measure::bore, tank.water_bottom), tank.words});
  }
  return table;
}

WordTable stock_table(const studies::ProductCare& care, site::Display display, Glyphs glyphs) {
  const Shown show(display, glyphs);
  WordTable table{{"Into", show.head("Delivered", Measure::volume), show.head("at", Measure::temperature),
                   show.head("In the tank at", Measure::temperature), show.head("Change", Measure::volume), "By"},
                  {false, true, true, true, true, false},
                  {}};
  for (const studies::StockChange& stock : care.stock) {
    const std::string name = "tank " + stock.tank + (stock.compartment.empty() ? "" : ", from " + stock.compartment);
    table.rows.push_back({name, show.value(Measure::volume, stock.delivered),
                          show.value(Measure::temperature, stock.delivered_at),
                          show.value(Measure::temperature, stock.stored_at), show.value(Measure::volume, stock.change),
                          stock.factor ? stock.words : "not determined: " + stock.words});
  }
  return table;
}

WordTable material_table(const studies::ProductCare& care) {
  WordTable table{{"Material", "With E85", "Source"}, {false, false, false}, {}};
  for (const studies::MaterialTold& material : care.materials) {
    table.rows.push_back({material.material, studies::word(material.with_e85), material.source});
  }
  return table;
}

WordTable tank_material_table(const studies::ProductCare& care) {
  WordTable table{{"Tank", "Made of", "By 40 CFR 280.32"}, {false, false, false}, {}};
  for (const studies::TankMaterial& tank : care.tanks) {
    table.rows.push_back(
        {tank.tank + ", " + tank.product, tank.material.empty() ? "not entered" : tank.material, tank.words});
  }
  return table;
}

svg::CurveChart pressure_chart(const VaporResult& result, site::Display display) {
  svg::CurveChart chart;
  chart.id = "vapor-pressure";
  chart.title = "True vapor pressure";
  chart.description = "Absolute pressure of the vapor over each fuel against its temperature.";
  chart.x_axis = unit_label(Measure::temperature, display);
  chart.y_axis = display == site::Display::us ? "psia" : "kPa absolute";
  std::size_t dash = 0;
  for (const ProductVapor& product : result.products) {
    if (product.curve.empty()) continue;
    svg::Curve curve{product.product, {}, {}, dash++};
    for (const studies::VaporPoint& point : product.curve) {
      curve.x.push_back(shown_value(Measure::temperature, display, point.temperature));
      curve.y.push_back(shown_value(Measure::pressure, display, point.pressure));
    }
    chart.curves.push_back(std::move(curve));
  }
  return chart;
}

svg::CurveChart static_chart(const VaporResult& result, site::Display display) {
  svg::CurveChart chart;
  chart.id = "static-test";
  chart.title = "Static pressure test";
  chart.description = "Least pressure left after 5 minutes against the ullage tested.";
  chart.x_axis = "ullage, " + unit_label(Measure::volume, display);
  chart.y_axis = "above the atmosphere, " + unit_label(Measure::ullage_pressure, display);
  for (const studies::StaticTargets& band : result.static_targets) {
    if (!band.here) continue;
    svg::Curve curve;
    for (const studies::StaticTarget& target : band.targets) {
      curve.x.push_back(shown_value(Measure::volume, display, target.ullage));
      curve.y.push_back(shown_value(Measure::ullage_pressure, display, target.pressure));
    }
    chart.curves.push_back(std::move(curve));
  }
  return chart;
}

}  // namespace forecourse::report
