#include "forecourse/report/flotation/flotation_view.h"

#include <algorithm>
#include <cmath>

namespace forecourse::report {
namespace {

using studies::BodyTold;
using studies::FlotationState;
using studies::TankFlotation;

std::string factor_text(const std::optional<double>& factor, Glyphs glyphs) {
  return number(factor.value_or(NAN), 2, glyphs);
}

std::string level_words(double level, site::Display display, Glyphs glyphs) {
  return level > 0.0 ? with_unit(Measure::length, display, level, glyphs) + " below grade" : "at grade";
}

std::string contents_words(const FlotationState& state, site::Display display, Glyphs glyphs) {
  return state.filled > 0.0 ? "with " + with_unit(Measure::volume, display, state.filled, glyphs) + " in it" : "empty";
}

std::string factor_sentence(const TankFlotation& tank, const FlotationState& state, site::Display display,
                            Glyphs glyphs) {
  const std::string head = "Tank " + tank.tank + ", " + state_words(state, display, glyphs) + ": ";
  if (!state.factors.hold_down) return head + "no water reaches it.";
  std::string out = head + "factor " + factor_text(state.factors.hold_down, glyphs) + " (hold-down over buoyant force)";
  if (state.without_deadmen) out += ", without deadmen " + factor_text(state.without_deadmen, glyphs);
  if (tank.factor_wanted) return out + "; wanted " + factor_text(tank.factor_wanted, glyphs) + ".";
  return out + "; no factor wanted is entered, so that it is for information.";
}

std::string missing_sentence(const FlotationState& state, site::Display display, Glyphs glyphs) {
  if (!state.missing_weight) return {};
  if (*state.missing_weight <= 0.0) {
    return "It is held by " + with_unit(Measure::force, display, -*state.missing_weight, glyphs) +
           " more than the factor wanted asks.";
  }
  std::string out =
      "To the factor wanted " + with_unit(Measure::force, display, *state.missing_weight, glyphs) + " are missing";
  if (!state.missing_contents) return out + "; what ballast would be is not known.";
  out += ": " + with_unit(Measure::volume, display, *state.missing_contents, glyphs) +
         (state.filled > 0.0 ? " more of what is in it" : " of ballast in it");
  return out + (state.contents_fit.value_or(false) ? "." : ", more than it holds.");
}

std::string lifting_sentence(const TankFlotation& tank, site::Display display, Glyphs glyphs) {
  if (!tank.lifts_at) return "Finished and empty, it is held down at every level of the water up to grade.";
  return "Finished and empty, it lifts when the water stands higher than " +
         level_words(*tank.lifts_at, display, glyphs) + ".";
}

std::string open_hole_sentence(const TankFlotation& tank, site::Display display, Glyphs glyphs) {
  const studies::OpenHole& hole = tank.open_hole;
  if (!hole.lifts_at) return "In the open hole the empty tank is heavier than the water it displaces.";
  std::string out = "In the open hole, before slab and backfill, the empty tank lifts with " +
                    with_unit(Measure::length, display, *hole.lifts_at, glyphs) + " of water about it";
  if (!hole.ballast) return out + ".";
  if (!hole.ballast_fit.value_or(false)) return out + "; no filling keeps it down with water over its crown.";
  return out + "; " + with_unit(Measure::volume, display, *hole.ballast, glyphs) +
         " of ballast in it keep it down with water over its crown.";
}

std::string strap_sentence(const TankFlotation& tank, const FlotationState& state, site::Display display,
                           Glyphs glyphs) {
  if (!state.deadman_pull) return {};
  std::string out = "The deadmen take a pull of " + with_unit(Measure::force, display, *state.deadman_pull, glyphs);
  if (state.strap_pull) out += ", each strap " + with_unit(Measure::force, display, *state.strap_pull, glyphs);
  if (!tank.strap_load) return out + "; whether the straps take it is not determined: enter their working load.";
  return out + "; the working load of a strap is " + with_unit(Measure::force, display, *tank.strap_load, glyphs) + ".";
}

std::string counted(const BodyTold& body, bool up, site::Display display, Glyphs glyphs) {
  const double lift = body.weight - body.submerged_weight;
  if (up) return body.lifted ? number(Measure::force, display, lift, glyphs) : number(NAN, 0, glyphs);
  return number(Measure::force, display, body.lifted ? body.weight : body.submerged_weight, glyphs);
}

double shown_length(double meters, site::Display display) { return shown_value(Measure::length, display, meters); }

constexpr double highest_factor = 4.0;  // of the charts

}  // namespace

const std::vector<FactorWords>& factor_words() {
  static const std::vector<FactorWords> words{
      {"hold-down over buoyant force",
       "weight in air of tank, contents and sumps, with the submerged weight of all else, over the weight of the water "
       "that tank and sumps displace"},
      {"all weights over all water displaced",
       "all weights in air, soil under water saturated, over the weight of the water that all of it displaces"},
      {"submerged weights over the empty room",
       "all submerged weights, over the weight of the water that the empty room in tank and sumps displaces"}};
  return words;
}

const FlotationState* shown_state(const TankFlotation& tank) {
  if (tank.filled) return &*tank.filled;
  if (tank.empty) return &*tank.empty;
  return tank.worst ? &*tank.worst : nullptr;
}

std::string state_words(const FlotationState& state, site::Display display, Glyphs glyphs) {
  return contents_words(state, display, glyphs) + ", water " + level_words(state.water_level, display, glyphs);
}

std::vector<std::string> flotation_answer(const TankFlotation& tank, site::Display display, Glyphs glyphs) {
  if (!tank.problems.empty()) {
    std::vector<std::string> out{"Tank " + tank.tank + ": not determined."};
    for (const std::string& problem : tank.problems) out.push_back("Missing: " + problem + ".");
    return out;
  }
  std::vector<std::string> out;
  const auto say = [&](std::string sentence) {
    if (!sentence.empty()) out.push_back(std::move(sentence));
  };
  if (!tank.water_level) {
    say("Tank " + tank.tank +
        ": the level of the ground water is not entered; the figures are with water at grade, the worst.");
  }
  if (tank.empty) say(factor_sentence(tank, *tank.empty, display, glyphs));
  if (tank.filled) say(factor_sentence(tank, *tank.filled, display, glyphs));
  const bool worst_told = tank.water_level && *tank.water_level == 0.0;
  if (tank.worst && !worst_told) say(factor_sentence(tank, *tank.worst, display, glyphs));
  const FlotationState& shown = *shown_state(tank);
  say(missing_sentence(shown, display, glyphs));
  say(strap_sentence(tank, tank.empty ? *tank.empty : *tank.worst, display, glyphs));
  say(lifting_sentence(tank, display, glyphs));
  say(open_hole_sentence(tank, display, glyphs));
  return out;
}

std::string flotation_in_short(const studies::FlotationResult& result) {
  std::string out;
  for (const TankFlotation& tank : result.tanks) {
    const FlotationState* state = tank.empty ? &*tank.empty : tank.worst ? &*tank.worst : nullptr;
    out += (out.empty() ? "" : " ") + std::string("Tank ") + tank.tank + ", empty";
    if (state == nullptr || !state->factors.hold_down) {
      out += state == nullptr ? ": not determined." : ": no water reaches it.";
      continue;
    }
    out += (tank.empty ? "" : ", water at grade") + std::string(": factor ") +
           factor_text(state->factors.hold_down, Glyphs::ascii) + " (hold-down over buoyant force)" +
           (tank.factor_wanted ? ", wanted " + factor_text(tank.factor_wanted, Glyphs::ascii) : "") + ".";
  }
  return out;
}

WordTable factor_table(const TankFlotation& tank, Glyphs glyphs) {
  WordTable table{
      {"Empty", "Filled", "Empty, water at grade", "Factor", "Definition"}, {true, true, true, false, false}, {}};
  const auto factor = [&](const std::optional<FlotationState>& state,
                          std::optional<double> studies::FactorsTold::*which) {
    return factor_text(state ? state->factors.*which : std::nullopt, glyphs);
  };
  using studies::FactorsTold;
  const std::vector<std::optional<double> FactorsTold::*> kinds{&FactorsTold::hold_down, &FactorsTold::total,
                                                                &FactorsTold::submerged};
  for (std::size_t i = 0; i < kinds.size(); ++i) {
    table.rows.push_back({factor(tank.empty, kinds[i]), factor(tank.filled, kinds[i]), factor(tank.worst, kinds[i]),
                          factor_words()[i].name, factor_words()[i].definition});
  }
  return table;
}

WordTable balance_table(const FlotationState& state, site::Display display, Glyphs glyphs) {
  const auto head = [&](const char* words, Measure measure) {
    return std::string(words) + ", " + unit_label(measure, display, glyphs);
  };
  WordTable table{
      {"Part", head("Volume", Measure::solid_volume), head("Below water", Measure::solid_volume),
       head("Weight in air", Measure::force), head("Holds down", Measure::force), head("Lifts", Measure::force)},
      {false, true, true, true, true, true},
      {}};
  for (const BodyTold& body : state.bodies) {
    table.rows.push_back({body.name, number(Measure::solid_volume, display, body.volume, glyphs),
                          number(Measure::solid_volume, display, body.submerged, glyphs),
                          number(Measure::force, display, body.weight, glyphs), counted(body, false, display, glyphs),
                          counted(body, true, display, glyphs)});
  }
  table.rows.push_back({"sum", "", "", "", number(Measure::force, display, state.hold_down_force, glyphs),
                        number(Measure::force, display, state.buoyant_force, glyphs)});
  return table;
}

std::vector<std::string> flotation_reserves(const TankFlotation& tank) {
  std::vector<std::string> out;
  for (const std::string& left : tank.left_out) out.push_back("Not counted: " + left + ".");
  for (const std::string& assumed : tank.assumed) {
    std::string sentence = assumed;
    if (sentence.back() != '.') sentence += ".";
    out.push_back("Taken for granted: " + sentence);
  }
  return out;
}

svg::CurveChart level_chart(const TankFlotation& tank, site::Display display, const std::string& id) {
  svg::CurveChart chart;
  chart.id = id;
  chart.title = "Factor against the level of the water, tank " + tank.tank;
  chart.description = "How the factor of hold-down over buoyant force falls as the ground water rises to grade.";
  chart.x_axis = "water below grade, " + unit_label(Measure::length, display);
  chart.y_axis = "hold-down factor";
  chart.highest = highest_factor;
  svg::Curve empty{tank.filled ? "empty" : "", {}, {}, 0}, filled{"filled", {}, {}, 1};
  for (const studies::FactorAtLevel& point : tank.by_level) {
    empty.x.push_back(shown_length(point.water_level, display));
    empty.y.push_back(point.empty.value_or(NAN));
    filled.x.push_back(empty.x.back());
    filled.y.push_back(point.filled.value_or(NAN));
  }
  chart.curves.push_back(std::move(empty));
  if (tank.filled) chart.curves.push_back(std::move(filled));
  chart.limits.push_back({1.0, "floats below 1", true});
  if (tank.factor_wanted) chart.limits.push_back({*tank.factor_wanted, "wanted", false});
  if (tank.water_level) chart.marks.push_back({shown_length(*tank.water_level, display), "as asked", false});
  return chart;
}

svg::CurveChart fill_chart(const TankFlotation& tank, site::Display display, const std::string& id) {
  svg::CurveChart chart;
  chart.id = id;
  chart.title = "Factor against what is in it, tank " + tank.tank;
  chart.description = "How the factor of hold-down over buoyant force rises with the volume in the tank.";
  chart.x_axis = "in the tank, " + unit_label(Measure::volume, display) + "; water " +
                 level_words(tank.by_fill_level, display, Glyphs::unicode);
  chart.y_axis = "hold-down factor";
  svg::Curve curve;
  for (const studies::FactorAtFill& point : tank.by_fill) {
    curve.x.push_back(shown_value(Measure::volume, display, point.filled));
    curve.y.push_back(point.factor);
  }
  chart.curves.push_back(std::move(curve));
  chart.limits.push_back({1.0, "floats below 1", true});
  if (tank.factor_wanted) chart.limits.push_back({*tank.factor_wanted, "wanted", false});
  return chart;
}

svg::BuriedTankDrawing tank_drawing(const TankFlotation& tank, site::Display display, const std::string& id) {
  const studies::FlotationSection& section = tank.section;
  svg::BuriedTankDrawing out;
  out.id = id;
  out.title = "Section across tank " + tank.tank;
  out.description = "To scale: the tank in the ground, what lies over it, the soil that counts, and the ground water.";
  out.shows = {0, "tank." + tank.tank};
  out.crown = section.crown;
  out.diameter = section.diameter;
  out.soil_counts = section.soil_counts;
  out.prism_base = section.prism_base;
  out.prism_half_width = section.prism_half_width;
  out.prism_half_top = section.prism_half_top;
  for (const studies::SectionPiece& piece : section.pieces) {
    out.pieces.push_back({piece.name == "sump" ? svg::BuriedPiece::Kind::sump : svg::BuriedPiece::Kind::concrete,
                          piece.left, piece.right, piece.top, piece.bottom});
  }
  std::stable_partition(out.pieces.begin(), out.pieces.end(),
                        [](const svg::BuriedPiece& p) { return p.kind == svg::BuriedPiece::Kind::concrete; });
  out.water = tank.water_level;
  out.water_name = tank.water_level ? "water " + level_words(*tank.water_level, display, Glyphs::unicode)
                                    : "level of the ground water not entered";
  const FlotationState* state = shown_state(tank);
  out.tank_names = {"Tank " + tank.tank};
  if (state != nullptr) {
    out.tank_names.push_back("lifts " + with_unit(Measure::force, display, state->buoyant_force));
    out.tank_names.push_back("held " + with_unit(Measure::force, display, state->hold_down_force));
  }
  out.depth_name = "underside " + with_unit(Measure::length, display, section.crown + section.diameter);
  return out;
}

}  // namespace forecourse::report
