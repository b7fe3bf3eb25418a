#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "forecourse/base/constants.h"
#include "forecourse/base/unit_text.h"
#include "forecourse/lesson/questions/kinds/all.h"
#include "forecourse/lesson/questions/make/draft.h"
#include "forecourse/lesson/questions/make/known.h"
#include "forecourse/lesson/questions/make/law.h"
#include "forecourse/site/places.h"

namespace forecourse::lesson {
namespace {

constexpr double stop_after = 60.0;  // [s] the pump is stopped in the questions

/// A dispenser that was struck without its shear valve acting.
struct Blow {
  const site::Dispenser* dispenser = nullptr;
  studies::IncidentResult result;
};

/// One with a single product inlet first, since all its ends run out together.
std::optional<Blow> some_blow(const Ground& ground, Chance& chance) {
  std::vector<const site::Dispenser*> all = those(ground.site.dispensers, [](const site::Dispenser& one) {
    return !one.inlets.empty() && std::all_of(one.inlets.begin(), one.inlets.end(),
                                              [](const site::Inlet& inlet) { return inlet.shear_valve.has_value(); });
  });
  chance.shuffle(all);
  std::stable_sort(all.begin(), all.end(), [](const site::Dispenser* one, const site::Dispenser* other) {
    return one->inlets.size() < other->inlets.size();
  });
  for (const site::Dispenser* one : all) {
    Blow blow{one, struck(ground.site, one->id.text, stop_after, {studies::Barrier::shear_valve})};
    const bool known = blow.result.problem.empty() && !blow.result.open_ends.empty() && !blow.result.runs.empty() &&
                       blow.result.open_ends.front().steady_flow > 0.0 && blow.result.open_ends.front().pump_runs;
    if (known) return blow;
  }
  return std::nullopt;
}

/// The command that tells the same blow.
std::vector<std::string> command_of(const site::Dispenser& dispenser) {
  return {"incident",  "struck", "--at",      dispenser.id.text, "--open",    "none",
          "--stop-at", "60 s",   "--without", "shear-valve",     "--without", "sump-sensor"};
}

constexpr const char* no_blow =
    "no dispenser whose inlets all have a shear valve can be struck here: enter shear_valve = { groove_elevation } and "
    "the "
    "riser";

/// Flow out of a sharp hole as wide as the riser at the pressure of shut hoses [m3/s]; empty: its bore is not entered.
std::optional<double> as_of_a_hole(const Ground& ground, const site::Dispenser& dispenser,
                                   const studies::OpenEnd& end) {
  constexpr double sharp = 0.61;  // common practice, no source: discharge coefficient of a sharp hole
  const std::optional<double> density = density_of(ground, end.product);
  for (const site::Inlet& inlet : dispenser.inlets) {
    if (inlet.product.text != end.product || !inlet.riser || !inlet.riser->bore || !density) continue;
    if (!(end.shutoff_at_opening > 0.0)) continue;
    const double bore = inlet.riser->bore->likely.si();
    return sharp * 0.25 * std::numbers::pi * bore * bore * std::sqrt(2.0 * end.shutoff_at_opening / *density);
  }
  return std::nullopt;
}

/// What stands in the lines of a product [m3].
double line_volume_of(const Ground& ground, const std::string& product) {
  double out = 0.0;
  if (!ground.studied.flow) return out;
  for (const studies::LineAtRest& line : ground.studied.flow->lines_at_rest) {
    if (line.product == product) out += line.line_volume;
  }
  return out;
}

Asked struck_flow(const Ground& ground, Chance& chance) {
  const auto blow = some_blow(ground, chance);
  if (!blow) return left_out(no_blow);
  const studies::OpenEnd& end = blow->result.open_ends.front();
  const std::vector<KnownHose> hoses = hoses_of(ground.site, end.product);
  std::vector<Slip> slips;
  if (!hoses.empty()) {
    std::vector<std::string> ids;
    ids.reserve(hoses.size());
    for (const KnownHose& one : hoses) ids.push_back(one.hose->id.text);
    const studies::FlowResult result = flows(ground.site, {{ids.front()}, ids});
    if (const auto alone = flow_at(result.states[0], ids.front())) {
      slips.push_back({*alone, "What a hose gives: the broken riser has no hose, meter or nozzle behind it."});
    }
    const studies::SystemFlow* open = system_of(result.states[1], ids.front());
    if (open != nullptr) slips.push_back({open->total_flow, "What all hoses give together."});
  }
  const auto pumps = pumps_of(ground.site, end.product);
  if (pumps.size() == 1 && run_out(*pumps.front())) {
    slips.push_back({*run_out(*pumps.front()), "What the pump gives against nothing at all, read off its curve."});
  }
  if (const auto hole = as_of_a_hole(ground, *blow->dispenser, end)) {
    slips.push_back({*hole, "As out of a sharp hole at the pressure of shut hoses: that pressure does not stay."});
  }
  slips.push_back({to_si(10.0, "gal/min"), "The 10 gpm that a rule allows at a nozzle."});
  Question draft;
  draft.at = blow->dispenser->id.text;
  draft.caution = escape_caution;
  draft.asks = {"A car carries dispenser " + draft.at + " away, its shear valve does not shut, and the pump of " +
                    end.product + " runs on; no other hose is open. How much flows out of the riser?",
                {}};
  draft.explains = {"Pump, line and riser alone hold it back: {} in 45 s.",
                    {{end.in_45_seconds.value_or(45.0 * end.steady_flow), Quantity::volume}}};
  draft.proof = {command_of(*blow->dispenser), "/result/open_ends/0/steady_flow_m3_per_s"};
  draft.rests_on = illustrative_of(blow->result.defaults);
  return choose_value(std::move(draft), {end.steady_flow, Quantity::flow}, slips, chance);
}

Asked struck_unanchored(const Ground& ground, Chance& chance) {
  const auto blow = some_blow(ground, chance);
  if (!blow) return left_out(no_blow);
  const std::string& id = blow->dispenser->id.text;
  const studies::IncidentResult works = struck(ground.site, id, stop_after, {});
  const double lost = blow->result.runs.front().escaped;
  const double first = blow->result.open_ends.front().steady_flow;
  std::vector<Slip> slips;
  if (!works.runs.empty())
    slips.push_back({works.runs.front().escaped, "What is lost when the valve is held fast and shuts."});
  slips.push_back({to_si(10.0, "gal/min") * stop_after, "A nozzle's 10 gpm: it is the riser that is open."});
  double standing = 0.0;
  for (const studies::OpenEnd& end : blow->result.open_ends) standing += line_volume_of(ground, end.product);
  if (standing > 0.0) {
    slips.push_back({lost + standing, "All that stands in the line besides: it runs out only where it lies higher."});
  }
  if (blow->result.open_ends.size() > 1) {
    slips.push_back({first * stop_after, "Out of one riser alone: each product has its own."});
  }
  slips.push_back({first * 0.5 * stop_after, "Half the time: as if the flow fell off evenly."});
  Question draft;
  draft.at = id;
  draft.caution = escape_caution;
  draft.asks = {"The shear valves under " + id +
                    " are not anchored: struck, they go with the dispenser and do not shut. Nothing "
                    "stops the pumps before {} have passed. How much has run out in the end?",
                {{stop_after, Quantity::time}}};
  draft.explains = {
      "{} flow from the first riser until the pump stops. With the valves held fast it is {}.",
      {{first, Quantity::flow}, {works.runs.empty() ? 0.0 : works.runs.front().escaped, Quantity::volume}}};
  double steady = 0.0;
  for (const studies::OpenEnd& end : blow->result.open_ends) steady += end.steady_flow;
  if (lost > steady * stop_after) {
    draft.follows = {"Steady flow of all risers by the time, and what the start and the end add: {} × {} + {} = {}",
                     {{steady, Quantity::flow},
                      {stop_after, Quantity::time},
                      {lost - steady * stop_after, Quantity::volume},
                      {lost, Quantity::volume}}};
  }
  draft.proof = {command_of(*blow->dispenser), "/result/runs/0/escaped_m3"};
  draft.rests_on = illustrative_of(blow->result.inputs);
  return choose_value(std::move(draft), {lost, Quantity::volume}, slips, chance, 0.08);
}

Asked order_by_loss(const Ground& ground, Chance& chance) {
  const auto blow = some_blow(ground, chance);
  if (!blow) return left_out(no_blow);
  const std::string& id = blow->dispenser->id.text;
  std::vector<Ranked> items{{{"the valves do not shut, pumps stop after {}", {{stop_after, Quantity::time}}},
                             blow->result.runs.front().escaped,
                             Amount{blow->result.runs.front().escaped, Quantity::volume}}};
  const auto add = [&](const Phrase& words, double stop, const std::vector<studies::Barrier>& without) {
    const studies::IncidentResult result = struck(ground.site, id, stop, without);
    if (!result.problem.empty() || result.runs.empty()) return;
    const double escaped = result.runs.front().escaped;
    items.push_back({words, escaped, Amount{escaped, Quantity::volume}});
  };
  add({"the valves shut, pumps stop after {}", {{3.0 * stop_after, Quantity::time}}}, 3.0 * stop_after, {});
  add({"the valves shut but none has an upper poppet, pumps stop after {}", {{stop_after, Quantity::time}}}, stop_after,
      {studies::Barrier::upper_poppet});
  add({"the valves do not shut, pumps stop after {}", {{0.25 * stop_after, Quantity::time}}}, 0.25 * stop_after,
      {studies::Barrier::shear_valve});
  Question draft;
  draft.at = id;
  draft.caution = escape_caution;
  draft.asks = {"Dispenser " + id +
                    " is struck and nothing else stops the pumps. Put these in order, by what runs out: least first.",
                {}};
  draft.explains = {
      "The lower poppet counts most, then the time to the stop; the upper one keeps what stands in the dispenser.", {}};
  draft.rests_on = illustrative_of(blow->result.inputs);
  return in_order(std::move(draft), std::move(items), 0.05 * blow->result.runs.front().escaped * 0.02, 3);
}

Asked upper_poppet_keeps(const Ground& ground, Chance& chance) {
  std::vector<std::pair<const site::Dispenser*, const site::Inlet*>> some;
  for (const site::Dispenser& dispenser : ground.site.dispensers) {
    for (const site::Inlet& inlet : dispenser.inlets) {
      if (inlet.shear_valve && inlet.liquid_above && inlet.drains) some.emplace_back(&dispenser, &inlet);
    }
  }
  if (some.empty()) {
    return left_out("what stands above a shear groove is not entered: enter liquid_above and drains of an inlet");
  }
  const auto& taken = some[chance.index(some.size())];
  const double above = taken.second->liquid_above->likely.si();
  const double share = taken.second->drains->likely.si();
  Question draft;
  draft.at = site::place_name(*taken.first, *taken.second);
  draft.asks = {"{} of fuel stand above the groove of " + draft.at +
                    ", and {} of it can drain when the dispenser lies on its side. "
                    "How much does an upper poppet keep in?",
                {{above, Quantity::volume}, {share, Quantity::share}}};
  draft.explains = {"What can drain, and no more: the line below is the lower poppet's.", {}};
  draft.follows = {"What stands above, by the share that can drain: {} × {} = {}",
                   {{above, Quantity::volume}, {share, Quantity::share}, {above * share, Quantity::volume}}};
  double all = 0.0;
  for (const site::Inlet& inlet : taken.first->inlets) {
    if (inlet.liquid_above && inlet.drains) all += inlet.liquid_above->likely.si() * inlet.drains->likely.si();
  }
  double hanging = 0.0;  // what stands in the hoses of the product
  for (const site::Hose& hose : taken.first->hoses) {
    if (hose.product.text != taken.second->product.text) continue;
    for (const std::optional<site::Pipe>* pipe : {&hose.whip, &hose.curb}) {
      if (!*pipe || !(*pipe)->length || !(*pipe)->bore) continue;
      const double bore = (*pipe)->bore->likely.si();
      hanging += 0.25 * std::numbers::pi * bore * bore * (*pipe)->length->likely.si();
    }
  }
  return choose_value(std::move(draft), {above * share, Quantity::volume},
                      {{above, "All of it, also what stays in meter and pipes."},
                       {above * (1.0 - share), "What stays in anyway."},
                       {all, "What drains of every product of the dispenser: each valve keeps its own."},
                       {above * share + hanging, "What stands in the hoses besides, which breakaway and nozzle hold."},
                       {0.5 * above, "Half of what stands above, by a rule of thumb."}},
                      chance);
}

Asked hole_or_crack(const Ground& ground, Chance& chance) {
  std::vector<std::pair<std::string, double>> some;
  if (ground.studied.flow) {
    for (const studies::LineAtRest& line : ground.studied.flow->lines_at_rest) {
      for (const studies::RestPlace& place : line.places) {
        if (is_inlet(ground.site, place.id) &&
            place.shutoff_gauge.value_or(0.0) > 1.6 * to_si(10.0, "psi", Datum::gauge)) {
          some.emplace_back(place.id, *place.shutoff_gauge);
        }
      }
    }
  }
  if (some.empty())
    return left_out("no place's pressure against shut hoses is known: enter heights and the pump's shutoff");
  const auto& place = some[chance.index(some.size())];
  const double low = to_si(10.0, "psi", Datum::gauge);
  const double rate = to_si(1.0 + static_cast<double>(chance.index(20)) / 10.0, "gal/h");
  struct Cause {
    const char* words;
    double exponent;
    const char* why;
  };
  std::vector<Cause> causes{
      {"a round hole of fixed size", 0.5, "A sharp hole passes with the root of the pressure."},
      {"a crack so narrow that the flow in it is laminar", 1.0, "A narrow crack passes in proportion to the pressure."},
      {"something that line pressure does not drive", 0.0, "The rate would not change with the pressure."},
      {"a crack that the pressure opens further", 1.6, "A gap that opens grows faster than the pressure."}};
  chance.shuffle(causes);
  const Cause truth = causes.front();
  std::vector<Option> wrong;
  for (std::size_t i = 1; i < causes.size(); ++i) wrong.push_back({{causes[i].words, {}}, false, causes[i].why});
  const double seen = rate * std::pow(place.second / low, truth.exponent);
  Question draft;
  draft.at = place.first;
  draft.asks = {
      "At " + place.first + " {} drip at {}, and {} at {}, the pump's pressure against shut hoses. What leaks?",
      {{rate, Quantity::leak}, {low, Quantity::pressure}, {seen, Quantity::leak}, {place.second, Quantity::pressure}}};
  draft.explains = {truth.why, {}};
  draft.follows = {
      "The ratio of the leaks is that of the pressures to the power of " + fmt::format("{:.1f}", truth.exponent) +
          ": {} / {} = ({} / {}) ^ " + fmt::format("{:.1f}", truth.exponent),
      {{seen, Quantity::leak}, {rate, Quantity::leak}, {place.second, Quantity::pressure}, {low, Quantity::pressure}}};
  return choose_words(std::move(draft), {truth.words, {}}, wrong, chance);
}

Asked link_time(const Ground& ground, Chance& chance) {
  std::vector<const site::Dispenser*> all = those(ground.site.dispensers, [](const site::Dispenser& one) {
    return !one.inlets.empty() && one.inlets.front().shear_valve && one.inlets.front().shear_valve->fusible_link &&
           one.inlets.front().shear_valve->response_index;
  });
  const site::Dispenser* dispenser = pick(all, chance);
  if (dispenser == nullptr) {
    return left_out(
        "no fusible link is entered with its response: enter shear_valve = { fusible_link, response_index }");
  }
  const site::ShearValve& valve = *dispenser->inlets.front().shear_valve;
  const double gas = to_si(500.0, "degC", Datum::thermometer);
  const double start = to_si(15.0, "degC", Datum::thermometer);
  const double speed = 2.0;
  studies::IncidentOptions options = brief(studies::IncidentKind::sump_fire, dispenser->id.text);
  site::FireRequest fire;
  const auto entered = [](auto value) { return site::Entered<decltype(value)>{value, value, value, {}}; };
  fire.gas_temperature = entered(Temperature::from_si(gas));
  fire.start_temperature = entered(Temperature::from_si(start));
  fire.gas_speed = entered(Velocity::from_si(speed));
  options.request.fire = fire;
  options.request.open_area =
      entered(Area::from_si(to_si(0.02, "in2")));  // of the leak that feeds it; the link is as quick
  const studies::IncidentResult result = studies::study_incident(ground.site, options);
  if (!result.fire || !result.fire->link_parts_at || !(*result.fire->link_parts_at > 0.0)) {
    return left_out("when the link of " + dispenser->id.text +
                    " parts is not determined: " + (result.fire ? result.fire->link_reason : result.problem));
  }
  const double parts = *result.fire->link_parts_at;
  const double index = valve.response_index->likely;
  const double rated = valve.fusible_link->likely.si();
  const double constant = index / std::sqrt(speed);
  Question draft;
  draft.at = dispenser->id.text;
  draft.caution = escape_caution;
  draft.asks = {"A sump fire under " + draft.at +
                    " blows gas of {} past the fusible link at {}. The link starts at {} and parts at {}; "
                    "its time constant in that gas is {}. When does it part?",
                {{gas, Quantity::temperature},
                 {speed, Quantity::velocity},
                 {start, Quantity::temperature},
                 {rated, Quantity::temperature},
                 {constant, Quantity::time}}};
  draft.explains = {"It needs {} of the way to the gas. Until then fuel goes on feeding the fire.",
                    {{(rated - start) / (gas - start), Quantity::share}}};
  draft.follows = {"It warms the slower the less is left to the gas: {} × ln({} / {}) = {}",
                   {{constant, Quantity::time},
                    {gas - start, Quantity::temperature_difference},
                    {gas - rated, Quantity::temperature_difference},
                    {parts, Quantity::time}}};
  return choose_value(std::move(draft), {parts, Quantity::time},
                      {{constant, "One whole time constant."},
                       {constant * rated / gas, "By ratio of absolute temperatures."},
                       {parts * std::sqrt(speed), "As if the gas passed at 1 m/s."},
                       {parts / std::sqrt(speed), "The speed of the gas taken twice."},
                       {3.0 * constant, "Three time constants: when it is as hot as the gas."}},
                      chance, 0.08);
}

}  // namespace

std::vector<QuestionKind> shear_questions() {
  return {
      {"struck-flow", Form::choice, 2, "shear-groove", struck_flow},
      {"struck-unanchored", Form::choice, 3, "shear-anchor", struck_unanchored},
      {"order-by-loss", Form::order, 2, "shear-poppets", order_by_loss},
      {"upper-poppet-keeps", Form::choice, 1, "shear-poppets", upper_poppet_keeps},
      {"hole-or-crack", Form::fault, 2, "shear-crack", hole_or_crack},
      {"link-time", Form::choice, 3, "shear-link", link_time},
  };
}

}  // namespace forecourse::lesson
