#include <algorithm>

#include "forecourse/base/unit_text.h"
#include "forecourse/checks/figures/each_part.h"
#include "forecourse/checks/figures/figure.h"

namespace forecourse::checks {
namespace {

// Pressures without flow, as the flow study finds them while pumps run against shut hoses, beside what parts are rated
// for. What a relief lets go once the pump stopped does not lower them.

/// At a place, of the systems that have it: the highest. Empty while it is not known in one of them.
std::optional<double> shutoff_at(const Facts& facts, std::string_view place) {
  std::optional<double> out;
  if (facts.flow == nullptr) return out;
  for (const studies::LineAtRest& line : facts.flow->lines_at_rest) {
    for (const studies::RestPlace& one : line.places) {
      if (one.id != place) continue;
      if (!one.shutoff_gauge || !one.elevation) return std::nullopt;
      out = std::max(out.value_or(*one.shutoff_gauge), *one.shutoff_gauge);
    }
  }
  return out;
}

constexpr const char* enter_shutoff =
    "enter what the flow study needs for the pressure without flow: pump curve, elevations";

/// The highest of some places; empty while it is not known at one of them.
FigureAt shutoff(const Facts& facts, std::string subject, SourceSpan where, std::initializer_list<std::string> places) {
  FigureAt out = of_part(std::move(subject), where);
  for (const std::string& place : places) {
    const std::optional<double> one = shutoff_at(facts, place);
    if (!one) {
      out.value.reset();
      out.enter = enter_shutoff;
      break;
    }
    out.value = std::max(out.value.value_or(*one), *one);
  }
  return out;
}

/// Whether a line of one of its products is one of which nothing is determined.
bool draws_on_unknown(const Facts& facts, const site::Hose& hose) {
  if (facts.flow == nullptr) return true;
  const auto& lines = facts.flow->lines_at_rest;
  return std::any_of(lines.begin(), lines.end(), [&](const studies::LineAtRest& line) {
    const bool blended = std::any_of(hose.blend.begin(), hose.blend.end(),
                                     [&](const site::BlendShare& share) { return share.product.text == line.product; });
    return blended && !line.reason.empty();
  });
}

/// The limit of the part itself: the pressure that it is rated for.
void rate(FigureAt& at, const site::Maybe<GaugePressure>& rating, const char* enter) {
  if (rating) at.at_most = rating->likely.si();
  if (!rating && at.value) at.enter = enter;
}

std::vector<FigureAt> line_pressure(const Facts& facts) {
  std::vector<FigureAt> out;
  for (const site::Line& line : facts.site.lines) {
    FigureAt one = shutoff(facts, line.id.text, line.where, {line.from.text, line.to.text});
    rate(one, line.pipe.rating, "enter rating of the line");
    out.push_back(std::move(one));
  }
  return out;
}

std::vector<FigureAt> riser_pressure(const Facts& facts) {
  std::vector<FigureAt> out;
  each_inlet_of(facts.site, [&](const std::string& id, const site::Inlet& inlet, const site::Dispenser&) {
    if (!inlet.riser) return;
    FigureAt one = shutoff(facts, id, inlet.riser->where, {id});
    rate(one, inlet.riser->rating, "enter rating of the riser");
    out.push_back(std::move(one));
  });
  return out;
}

std::vector<FigureAt> shear_valve_pressure(const Facts& facts) {
  std::vector<FigureAt> out;
  each_inlet_of(facts.site, [&](const std::string& id, const site::Inlet& inlet, const site::Dispenser&) {
    if (!inlet.shear_valve) return;
    FigureAt one = shutoff(facts, id, inlet.shear_valve->where, {id});
    rate(one, inlet.shear_valve->rating, "enter rating of the shear valve");
    out.push_back(std::move(one));
  });
  return out;
}

/// The lowest rating of whip and curb hose; empty where one is not entered.
std::optional<double> hose_rating(const site::Hose& hose) {
  std::optional<double> out;
  for (const auto* pipe : {&hose.whip, &hose.curb}) {
    if (!*pipe) continue;
    if (!(*pipe)->rating) return std::nullopt;
    const double one = (*pipe)->rating->likely.si();
    out = std::min(out.value_or(one), one);
  }
  return out;
}

std::vector<FigureAt> hose_pressure(const Facts& facts) {
  std::vector<FigureAt> out;
  each_hose_of(facts.site, [&](const site::Hose& hose, const site::Dispenser&) {
    FigureAt one = shutoff(facts, hose.id.text, hose.where, {"nozzle of " + hose.id.text});
    if (draws_on_unknown(facts, hose)) {
      one.value.reset();
      one.enter = enter_shutoff;
    }
    one.at_most = hose_rating(hose);
    if (!one.at_most && one.value) one.enter = "enter rating of whip and curb of the hose";
    out.push_back(std::move(one));
  });
  return out;
}

/// At a pump's discharge; its limit is what it is marked for, else that of the standard.
/// \source [ul_79b, scope]
std::vector<FigureAt> pump_pressure(const Facts& facts) {
  std::vector<FigureAt> out;
  for (const site::Pump& pump : facts.site.pumps) {
    FigureAt one = shutoff(facts, pump.id.text, pump.where, {pump.id.text});
    one.at_most = pump.rating ? pump.rating->likely.si() : to_si(50.0, "psi");
    out.push_back(std::move(one));
  }
  return out;
}

}  // namespace

std::vector<Figure> pressure_figures() {
  const QuantityKind* const pressure = &GaugePressure::kind();
  constexpr auto amount = FigureKind::amount;
  constexpr auto fuel = Measured::fuel;
  return {
      {"pump-pressure", "pressure at a pump's discharge without flow", amount, pressure, "Pa", fuel, pump_pressure},
      {"line-pressure", "pressure in a line without flow", amount, pressure, "Pa", fuel, line_pressure},
      {"riser-pressure", "pressure in a riser without flow", amount, pressure, "Pa", fuel, riser_pressure},
      {"shear-valve-pressure", "pressure at a shear valve without flow", amount, pressure, "Pa", fuel,
       shear_valve_pressure},
      {"hose-pressure", "pressure in a hose without flow", amount, pressure, "Pa", fuel, hose_pressure},
  };
}

}  // namespace forecourse::checks
