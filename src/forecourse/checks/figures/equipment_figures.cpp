#include <algorithm>
#include <iterator>

#include "forecourse/checks/figures/each_part.h"

namespace forecourse::checks {
namespace {

// What is marked on equipment or was tested at it, and where it stands.

constexpr double bursts_at_least = 5.0;  ///< times the rating [ul_567, 6.1]

std::vector<FigureAt> breakaway_pull(const Facts& facts) {
  std::vector<FigureAt> out;
  each_hose_of(facts.site, [&](const site::Hose& hose, const site::Dispenser&) {
    if (!hose.breakaway && !hose.parting) return;
    static const site::Maybe<Force> unknown;
    const site::Maybe<Force>& pull = hose.parting ? hose.parting->pull : unknown;
    out.push_back(entered_amount(hose.id.text, hose.where, pull, "enter parting = { pull = ... } of the hose"));
  });
  return out;
}

/// Ratings of one part of each hose that has it.
template <std::optional<site::Part> site::Hose::*part>
std::vector<FigureAt> rating(const Facts& facts) {
  std::vector<FigureAt> out;
  each_hose_of(facts.site, [&](const site::Hose& hose, const site::Dispenser&) {
    if (!(hose.*part)) return;
    out.push_back(entered_amount(hose.id.text, (hose.*part)->where, (hose.*part)->rating, "enter its rating"));
  });
  return out;
}

std::vector<FigureAt> breakaway_burst(const Facts& facts) {
  std::vector<FigureAt> out;
  each_hose_of(facts.site, [&](const site::Hose& hose, const site::Dispenser&) {
    if (!hose.breakaway) return;
    FigureAt one = entered_amount(hose.id.text, hose.breakaway->where, hose.breakaway->burst,
                                  "enter burst and rating of the breakaway");
    if (hose.breakaway->rating) {
      one.at_least = bursts_at_least * hose.breakaway->rating->likely.si();
    } else {
      one.enter = "enter rating of the breakaway";
    }
    out.push_back(std::move(one));
  });
  return out;
}

/// The wider of whip and curb hose.
std::vector<FigureAt> hose_bore(const Facts& facts) {
  std::vector<FigureAt> out;
  each_hose_of(facts.site, [&](const site::Hose& hose, const site::Dispenser&) {
    FigureAt one;
    one.subject = hose.id.text;
    one.where = hose.where;
    bool known = hose.curb.has_value();
    double widest = 0.0;
    for (const auto* pipe : {&hose.whip, &hose.curb}) {
      if (!*pipe) continue;
      const std::optional<double> bore = bore_of(**pipe);
      known = known && bore;
      widest = std::max(widest, bore.value_or(0.0));
    }
    if (known) {
      one.value = widest;
    } else {
      one.enter = "enter bore of whip and curb of the hose";
    }
    out.push_back(std::move(one));
  });
  return out;
}

std::vector<FigureAt> coldest_air(const Facts& facts) {
  return {entered_amount("station", facts.site.where, facts.site.coldest_air, "enter coldest_air under [site]")};
}

std::vector<FigureAt> hottest_air(const Facts& facts) {
  return {entered_amount("station", facts.site.where, facts.site.hottest_air, "enter hottest_air under [site]")};
}

/// Whether a line is of one of some materials.
std::vector<FigureAt> of_material(const Facts& facts, std::initializer_list<std::string_view> materials) {
  return each_line(facts, [&](const site::Line& line) {
    const std::string& material = line.pipe.material.text;
    site::Fact is;
    if (!material.empty()) is = std::find(materials.begin(), materials.end(), material) != materials.end();
    return entered_fact(line.id.text, line.where, is, "enter material of the line");
  });
}

std::vector<FigureAt> line_not_of_metal(const Facts& facts) { return of_material(facts, {"fiberglass", "plastic"}); }

std::vector<FigureAt> line_bends(const Facts& facts) { return of_material(facts, {"plastic", "flexible-metal"}); }

std::vector<FigureAt> line_fiberglass(const Facts& facts) { return of_material(facts, {"fiberglass"}); }

std::vector<FigureAt> line_ground(const Facts& facts) {
  return each_line(facts, [&](const site::Line& line) {
    return entered_amount(line.id.text, line.where, facts.site.ground_temperature,
                          "enter ground_temperature under [site]");
  });
}

std::vector<FigureAt> line_in_sump(const Facts& facts) {
  return each_line(facts, [](const site::Line& line) {
    return entered_amount(line.id.text, line.where, line.in_sump, "enter in_sump of the line");
  });
}

/// Ethanol in the fuel of each hose; of a blended one the most that a product of it has.
std::vector<FigureAt> hose_ethanol(const Facts& facts) {
  std::vector<FigureAt> out;
  each_hose_of(facts.site, [&](const site::Hose& hose, const site::Dispenser&) {
    FigureAt one;
    one.subject = hose.id.text;
    one.where = hose.where;
    std::vector<site::Name> products{hose.product};
    if (hose.product.empty()) {
      products.clear();
      for (const site::BlendShare& share : hose.blend) products.push_back(share.product);
    }
    double most = 0.0;
    bool known = !products.empty();
    for (const site::Name& id : products) {
      const site::Product* product = product_of(facts.site, id);
      known = known && product != nullptr && product->ethanol;
      if (known) most = std::max(most, product->ethanol->likely.si());
    }
    if (known) {
      one.value = most;
    } else {
      one.enter = "enter ethanol of the product";
    }
    out.push_back(std::move(one));
  });
  return out;
}

std::vector<FigureAt> fill_turns_at(const Facts& facts) {
  std::vector<FigureAt> out;
  each_fill_of(facts.site, [&](const std::string& id, const site::Fill& fill, const site::Tank&) {
    out.push_back(entered_amount(id, fill.where, fill.turns_at, "enter turns_at of the fill"));
  });
  return out;
}

std::vector<FigureAt> overfill_valve_leak(const Facts& facts) {
  std::vector<FigureAt> out;
  each_fill_of(facts.site, [&](const std::string& id, const site::Fill& fill, const site::Tank&) {
    if (!fill.overfill_valve) return;
    out.push_back(entered_amount(id, fill.overfill_valve->where, fill.overfill_valve->vapor_leak,
                                 "enter vapor_leak of the overfill valve"));
  });
  return out;
}

template <auto member>
std::vector<FigureAt> of_vent_valve(const Facts& facts) {
  std::vector<FigureAt> out;
  each_vent_valve_of(facts.site, [&](const std::string& id, const site::VentValve& valve) {
    out.push_back(
        entered_amount(id, valve.where, valve.*member, "enter its settings and leaks under valve of the vent"));
  });
  return out;
}

}  // namespace

std::vector<Figure> equipment_figures() {
  const QuantityKind* const length = &Length::kind();
  const QuantityKind* const pressure = &GaugePressure::kind();
  const QuantityKind* const difference = &PressureDifference::kind();
  const QuantityKind* const temperature = &Temperature::kind();
  const QuantityKind* const flow = &VolumeFlow::kind();
  constexpr auto amount = FigureKind::amount;
  constexpr auto fact = FigureKind::fact;
  constexpr auto fuel = Measured::fuel;
  constexpr auto vapor = Measured::vapor;
  return {
      {"breakaway-pull", "pull at which a breakaway parts", amount, &Force::kind(), "N", fuel, breakaway_pull},
      {"breakaway-rating", "rating of a breakaway", amount, pressure, "Pa", fuel, rating<&site::Hose::breakaway>},
      {"breakaway-burst", "pressure at which a breakaway bursts", amount, pressure, "Pa", fuel, breakaway_burst},
      {"swivel-rating", "rating of a swivel", amount, pressure, "Pa", fuel, rating<&site::Hose::swivel>},
      {"nozzle-rating", "rating of a nozzle", amount, pressure, "Pa", fuel, rating<&site::Hose::nozzle>},
      {"hose-bore", "bore of a hose", amount, length, "m", fuel, hose_bore},
      {"hose-ethanol", "ethanol in the fuel of a hose", amount, &Ratio::kind(), "share", fuel, hose_ethanol},
      {"coldest-air", "coldest air at the dispensers", amount, temperature, "K", fuel, coldest_air},
      {"hottest-air", "hottest air at the dispensers", amount, temperature, "K", fuel, hottest_air},
      {"line-not-of-metal", "a line of fiberglass or plastic", fact, nullptr, "", fuel, line_not_of_metal},
      {"line-fiberglass", "a line of reinforced plastic", fact, nullptr, "", fuel, line_fiberglass},
      {"line-bends", "a line of plastic or flexible metal", fact, nullptr, "", fuel, line_bends},
      {"line-ground", "temperature of the ground at a line", amount, temperature, "K", fuel, line_ground},
      {"line-in-sump", "length of a line inside a sump", amount, length, "m", fuel, line_in_sump},
      {"fill-turns-at", "moment at which a fill's adaptor turns", amount, &Moment::kind(), "N m", fuel, fill_turns_at},
      {"overfill-valve-leak", "vapor leak of drop tube and overfill valve", amount, flow, "m3/s", vapor,
       overfill_valve_leak},
      {"vent-valve-pressure-leak", "leak of a vent valve at 2 in of water", amount, flow, "m3/s", vapor,
       of_vent_valve<&site::VentValve::pressure_leak>},
      {"vent-valve-vacuum-leak", "leak of a vent valve at 4 in of water of vacuum", amount, flow, "m3/s", vapor,
       of_vent_valve<&site::VentValve::vacuum_leak>},
      {"vent-valve-opens-at", "pressure at which a vent valve opens", amount, difference, "Pa", vapor,
       of_vent_valve<&site::VentValve::opens_at>},
      {"vent-valve-vacuum-opens-at", "vacuum at which a vent valve opens", amount, difference, "Pa", vapor,
       of_vent_valve<&site::VentValve::vacuum_opens_at>},
  };
}

}  // namespace forecourse::checks
