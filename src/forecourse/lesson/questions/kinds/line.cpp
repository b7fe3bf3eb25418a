#include <algorithm>
#include <cmath>
#include <numbers>

#include "forecourse/base/constants.h"
#include "forecourse/base/unit_text.h"
#include "forecourse/lesson/numbers/flow_pick.h"
#include "forecourse/lesson/questions/kinds/all.h"
#include "forecourse/lesson/questions/make/draft.h"
#include "forecourse/lesson/questions/make/known.h"
#include "forecourse/lesson/questions/make/law.h"

namespace forecourse::lesson {
namespace {

/// False: where its interstice is said to drain is not where it falls to.
bool drains_one_way(const site::Site& site, const studies::DrainBack& drain) {
  for (const site::Line& line : site.lines) {
    if (line.id.text != drain.line || !line.interstice || line.interstice->drains_to.empty()) continue;
    const std::string& place = line.interstice->drains_to.text;
    return place == drain.sump || place == drain.to;
  }
  return true;
}

Asked where_drains(const Ground& ground, Chance& chance) {
  if (!ground.studied.containment) return left_out("no sump is entered");
  const studies::DrainBack* line =
      pick(those(ground.studied.containment->lines,
                 [&](const studies::DrainBack& one) {
                   return one.double_wall && !one.sump.empty() && drains_one_way(ground.site, one);
                 }),
           chance);
  if (line == nullptr) {
    return left_out(
        "no double-walled line falls to a sump, as its interstice is said to drain: enter fall, or the heights of its "
        "ends");
  }
  std::vector<Option> wrong{
      {{"nowhere: it stays between the walls", {}},
       false,
       "The space between the walls is open into a sump, so that a sensor can tell."},
      {{"in the ground beside the line", {}}, false, "That is what the outer wall is there to prevent."}};
  for (const studies::ContainedSump& sump : ground.studied.containment->sumps) {
    if (sump.owner == line->sump) continue;
    wrong.insert(wrong.begin(), {{"in the sump of " + sump.owner, {}}, false, "The line does not drain to that sump."});
  }
  Question draft;
  draft.at = line->line;
  draft.asks = {
      "The inner wall of line " + line->line + " leaks, the outer one is tight. Where does the fuel come to light?",
      {}};
  draft.explains = {"It runs " + line->words + ".", {}};
  return choose_words(std::move(draft), {"in the sump of " + line->sump, {}}, wrong, chance);
}

const studies::LineAtRest* some_line(const Ground& ground, Chance& chance) {
  if (!ground.studied.flow) return nullptr;
  return pick(those(ground.studied.flow->lines_at_rest,
                    [](const studies::LineAtRest& one) { return one.reason.empty() && one.line_volume > 0.0; }),
              chance);
}

Asked line_volume(const Ground& ground, Chance& chance) {
  const studies::LineAtRest* line = some_line(ground, chance);
  if (line == nullptr) return left_out("no line has both length and bore: enter them");
  double largest = 0.0;
  double risers = 0.0;
  for (const studies::RestStretch& one : line->stretches) {
    if (one.behind_dispenser) continue;
    largest = std::max(largest, one.volume);
    if (one.part == "riser") risers += one.volume;
  }
  Question draft;
  draft.at = line->product;
  draft.asks = {"How much fuel is in the line of " + line->product +
                    ", from the pump to every dispenser, risers included? Its longest run holds {}.",
                {{largest, Quantity::volume}}};
  draft.explains = {
      "Bore squared times length, run by run. That is what warms, cools, and what a break can lose "
      "though the pump stands.",
      {}};
  draft.follows = {"Lines and risers: {} + {} = {}",
                   {{line->line_volume - risers, Quantity::volume},
                    {risers, Quantity::volume},
                    {line->line_volume, Quantity::volume}}};
  draft.proof = {{"flow"},
                 "/result/lines_at_rest/" + std::to_string(index_of(ground.studied.flow->lines_at_rest, line)) +
                     "/line_volume_m3"};
  return choose_value(std::move(draft), {line->line_volume, Quantity::volume},
                      {{largest, "Its longest run alone."},
                       {4.0 * line->line_volume, "The diameter taken for the radius."},
                       {0.25 * line->line_volume, "The radius taken for the bore."},
                       {line->line_volume - risers, "Without the risers."}},
                      chance);
}

Asked shutoff_at_dispenser(const Ground& ground, Chance& chance) {
  const studies::LineAtRest* line = some_line(ground, chance);
  if (line == nullptr) return left_out("no line has both length and bore: enter them");
  const auto pumps = pumps_of(ground.site, line->product);
  const std::optional<double> density = density_of(ground, line->product);
  if (pumps.size() != 1 || !shutoff_rise(*pumps.front()) || !density) {
    return left_out("pump of " + line->product + ": enter its curve by shutoff");
  }
  const studies::RestPlace* place =
      pick(those(line->places,
                 [&](const studies::RestPlace& one) {
                   return one.shutoff_gauge && one.elevation && one.decayed_gauge && is_inlet(ground.site, one.id);
                 }),
           chance);
  if (place == nullptr) return left_out("no height of a dispenser's line is entered: enter line_elevation");
  const double rise = *shutoff_rise(*pumps.front());
  const double height = -*place->decayed_gauge / (*density * standard_gravity);
  Question draft;
  draft.at = place->id;
  draft.asks = {"Pump " + pumps.front()->id.text +
                    " runs against shut hoses and adds {}. What does a gauge in the line at " + place->id +
                    " show, {} above the fuel in the tank?",
                {{rise, Quantity::pressure}, {height, Quantity::length}}};
  draft.explains = {"The fuel's own weight over that height takes {}.",
                    {{rise - *place->shutoff_gauge, Quantity::pressure}}};
  draft.follows = {"What the pump adds, less the weight of the fuel over that height: {} − {} = {}",
                   {{rise, Quantity::pressure},
                    {rise - *place->shutoff_gauge, Quantity::pressure},
                    {*place->shutoff_gauge, Quantity::pressure}}};
  draft.proof = {{"flow"},
                 "/result/lines_at_rest/" + std::to_string(index_of(ground.studied.flow->lines_at_rest, line)) +
                     "/places/" + std::to_string(index_of(line->places, place)) + "/shutoff_pressure_gauge_pa"};
  const auto running = place_in_flow(ground, place->id);
  return choose_value(
      std::move(draft), {*place->shutoff_gauge, Quantity::pressure},
      {{rise, "What the pump adds, as if the gauge stood at the fuel's surface."},
       {rise + *density * standard_gravity * height, "The height added instead of taken off."},
       {rise - water_density_at_60_fahrenheit * standard_gravity * height, "A head of water taken for one of fuel."},
       {*place->shutoff_gauge + standard_atmosphere, "An absolute pressure taken for what a gauge shows."},
       {running ? running->told->pressure_gauge : 0.0, "What it shows with hoses open."}},
      chance, 0.012);
}

Asked thermal_leak(const Ground& ground, Chance& chance) {
  const double warmer = to_si(18.0, "degF", Datum::difference);
  const double constant = to_si(1.5, "h");
  studies::LineTestOptions options;
  options.warmer = studies::Between{warmer, warmer};
  options.time_constant = constant;
  const studies::LineTestResult told = studies::study_line_test(ground.site, options);
  const studies::LineTest* line = pick(those(told.lines,
                                             [](const studies::LineTest& one) {
                                               return one.problem.empty() && one.thermal.problem.empty() &&
                                                      one.thermal.at_start.value_or(0.0) > 0.0 && one.volume > 0.0;
                                             }),
                                       chance);
  if (line == nullptr)
    return left_out("no line has its volume and its fuel's expansion: enter length, bore and density");
  const double net = line->thermal.fuel_expansion - line->thermal.line_expansion;
  const double rate = *line->thermal.at_start;
  Question draft;
  draft.at = line->product;
  draft.asks = {
      "Fuel {} warmer than the ground has just come into the line of " + line->product +
          ", which holds {}. It will shrink by {} of its volume as it cools, with a time constant of {}. What "
          "leak does that look like at first?",
      {{warmer, Quantity::temperature_difference},
       {line->volume, Quantity::volume},
       {net * warmer, Quantity::share},
       {constant, Quantity::time}}};
  draft.explains = {
      "A tight line seems to leak as much as it shrinks. A test right after a delivery tells nothing; it "
      "takes {} until the rate is small.",
      {{line->thermal.wait, Quantity::time}}};
  draft.follows = {"The shrinking of all of it, by the time constant: {} × {} / {} = {}",
                   {{line->volume, Quantity::volume},
                    {net * warmer, Quantity::share},
                    {constant, Quantity::time},
                    {rate, Quantity::leak}}};
  const double degrees = from_si(warmer, "degF", Datum::difference) / warmer;
  return choose_value(std::move(draft), {rate, Quantity::leak},
                      {{rate * degrees, "Degrees Fahrenheit taken with an expansion for degrees Celsius."},
                       {rate * constant / to_si(1.0, "h"), "All of the shrinking within an hour."},
                       {rate * constant / to_si(24.0, "h"), "All of the shrinking spread over a day."},
                       {0.5 * rate, "The mean on the way taken for the rate at first."}},
                      chance);
}

Asked velocity_in_trunk(const Ground& ground, Chance& chance) {
  const auto some = some_hose(ground, chance, 2);
  if (!some) return left_out("fewer than two hoses of a product flow at this station");
  const studies::SystemFlow* open = system_of(some->result.states[1], some->known.hose->id.text);
  if (open == nullptr) return left_out("flow is not determined");
  const studies::LineFlow* line =
      pick(those(open->lines,
                 [&](const studies::LineFlow& one) { return one.velocity > 0.0 && one.flow > 1.5 * some->all; }),
           chance);
  if (line == nullptr) return left_out("no line carries the flow of more than one hose");
  const double area = line->flow / line->velocity;
  Question draft;
  draft.at = line->id;
  draft.asks = {"Every hose of " + some->known.product + " flows. Line " + line->id +
                    ", {} inside, carries {}. How fast does the fuel move in it?",
                {{2.0 * std::sqrt(area / std::numbers::pi), Quantity::bore}, {line->flow, Quantity::flow}}};
  draft.explains = {"Flow over area. The loss grows with its square.", {}};
  const double bore = 2.0 * std::sqrt(area / std::numbers::pi);
  draft.follows = {"Flow over the area of the bore: {} / (π / 4 × {} × {}) = {}",
                   {{line->flow, Quantity::flow},
                    {bore, Quantity::bore},
                    {bore, Quantity::bore},
                    {line->velocity, Quantity::velocity}}};
  draft.rests_on = illustrative_of(some->result.defaults);
  return choose_value(std::move(draft), {line->velocity, Quantity::velocity},
                      {{0.25 * line->velocity, "The diameter taken for the radius."},
                       {some->all / area, "One hose's flow, not that of all behind it."},
                       {4.0 * line->velocity, "The radius taken for the diameter."},
                       {0.25 * std::numbers::pi * line->velocity, "A square pipe."}},
                      chance);
}

Asked bigger_trunk(const Ground& ground, Chance& chance) {
  const auto some = some_hose(ground, chance, 2);
  if (!some) return left_out("fewer than two hoses of a product flow at this station");
  const std::string& hose = some->known.hose->id.text;
  const studies::SystemFlow* open = system_of(some->result.states[1], hose);
  site::Site changed = ground.site;
  for (site::Line& line : changed.lines) {
    const bool of_it = open != nullptr && std::any_of(open->lines.begin(), open->lines.end(),
                                                      [&](const auto& one) { return one.id == line.id.text; });
    if (!of_it) continue;
    if (!line.pipe.bore) return left_out("line " + line.id.text + ": enter its bore");
    const Length wider = Length::from_si(1.5 * line.pipe.bore->likely.si());
    line.pipe.bore = site::Entered<Length>{wider, wider, wider, line.pipe.bore->where};
  }
  const studies::FlowResult result = flows(changed, {some->result.states[1].open_set.hoses});
  const std::optional<double> wider = flow_at(result.states[0], hose);
  if (!wider) return left_out("flow is not determined");
  Question draft;
  draft.at = hose;
  draft.asks = {"With every hose of " + some->known.product + " open, " + hose +
                    " gives {}. Every line of it is laid half as wide again. What does it give then?",
                {{some->all, Quantity::flow}}};
  draft.explains = {
      "Most of the pressure is lost in the dispenser and its hose; a line can give back only what it took.", {}};
  draft.follows = balance_at(*hose_in(result.states[0], hose));
  draft.rests_on = illustrative_of(result.defaults);
  return choose_value(std::move(draft), {*wider, Quantity::flow},
                      {{2.25 * some->all, "In proportion to the area of the line."},
                       {1.5 * some->all, "In proportion to its bore."},
                       {some->all, "As before: as if the line took nothing."},
                       {std::pow(1.5, 2.5) * some->all, "As if the line took all of the pressure."}},
                      chance, 0.04);
}

}  // namespace

std::vector<QuestionKind> line_questions() {
  return {
      {"where-drains", Form::choice, 1, "double-wall", where_drains},
      {"line-volume", Form::choice, 1, "line", line_volume},
      {"shutoff-at-dispenser", Form::choice, 2, "line", shutoff_at_dispenser},
      {"thermal-leak", Form::choice, 3, "line", thermal_leak},
      {"velocity-in-trunk", Form::choice, 2, "line", velocity_in_trunk},
      {"bigger-trunk", Form::choice, 3, "line", bigger_trunk},
  };
}

}  // namespace forecourse::lesson
