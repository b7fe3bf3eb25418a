#include <algorithm>
#include <cmath>

#include "forecourse/base/unit_text.h"
#include "forecourse/lesson/numbers/flow_pick.h"
#include "forecourse/lesson/questions/kinds/all.h"
#include "forecourse/lesson/questions/make/choke.h"
#include "forecourse/lesson/questions/make/draft.h"
#include "forecourse/lesson/questions/make/known.h"
#include "forecourse/lesson/questions/make/law.h"
#include "forecourse/site/places.h"

namespace forecourse::lesson {
namespace {

constexpr const char* no_flow = "flow at no hose is determined: see the flow study for what to enter";
constexpr const char* one_hose = "fewer than two hoses of a product flow at this station";

Asked hose_flow_alone(const Ground& ground, Chance& chance) {
  const auto some = some_hose(ground, chance);
  if (!some) return left_out(no_flow);
  const studies::HoseFlow* one = hose_in(some->result.states[0], some->known.hose->id.text);
  Question draft;
  draft.at = some->known.hose->id.text;
  draft.asks = {"Hose " + draft.at + " is the only one open. How much does it give?", {}};
  draft.explains = {
      one->at_limit ? "Its limiter holds it there; without it, it would give more."
                    : "The pump's curve meets what line, dispenser and hose take: {} where the hose begins.",
      one->at_limit ? std::vector<Amount>{} : std::vector<Amount>{{one->pressure_gauge, Quantity::pressure}}};
  draft.follows = balance_at(*one);
  draft.rests_on = illustrative_of(some->result.defaults);
  for (std::size_t i = 0; ground.studied.flow && i < ground.studied.flow->hoses.size(); ++i) {
    const studies::HoseSummary& told = ground.studied.flow->hoses[i];
    if (told.id == draft.at && told.alone && told.alone->flow == some->alone) {
      draft.proof = {{"flow"}, "/result/hoses/" + std::to_string(i) + "/alone_flow_m3_per_s"};
    }
  }
  return estimate(std::move(draft), {some->alone, Quantity::flow}, 0.15);
}

Asked flow_all_open(const Ground& ground, Chance& chance) {
  const auto some = some_hose(ground, chance, 2);
  if (!some) return left_out(one_hose);
  const auto pumps = pumps_of(ground.site, some->known.product);
  const double count = static_cast<double>(some->hoses);
  std::vector<Slip> slips{{some->alone, "What it gives alone: as if the others cost nothing."},
                          {some->alone / count, "Its flow alone divided by the hoses."}};
  if (pumps.size() == 1 && run_out(*pumps.front())) {
    slips.push_back({*run_out(*pumps.front()) / count, "The pump's greatest flow divided by the hoses."});
  }
  slips.push_back({to_si(10.0, "gal/min"), "The 10 gpm a rule allows, taken for what flows."});
  std::vector<std::string> beside;
  for (const site::Hose& hose : some->known.dispenser->hoses) {
    if (hose.product.text == some->known.product) beside.push_back(hose.id.text);
  }
  if (beside.size() < some->hoses) {
    const studies::FlowResult result = flows(ground.site, {beside});
    if (const auto flow = flow_at(result.states[0], some->known.hose->id.text)) {
      slips.push_back({*flow, "What it gives with the hoses of its own dispenser alone open."});
    }
  }
  Question draft;
  draft.at = some->known.hose->id.text;
  draft.asks = {
      "All {} hoses of " + some->known.product + " are open. Alone, " + draft.at + " gives {}. What does it give now?",
      {{count, Quantity::count}, {some->alone, Quantity::flow}}};
  draft.explains = {"More flow costs pressure in the pump and in the line; the hoses share what is left, not the flow.",
                    {}};
  draft.follows = balance_at(*hose_in(some->result.states[1], draft.at));
  draft.rests_on = illustrative_of(some->result.defaults);
  return choose_value(std::move(draft), {some->all, Quantity::flow}, slips, chance);
}

Asked pressure_at_hose(const Ground& ground, Chance& chance) {
  const auto some = some_hose(ground, chance);
  if (!some) return left_out(no_flow);
  const std::string& hose = some->known.hose->id.text;
  const studies::SystemFlow* system = system_of(some->result.states[0], hose);
  const studies::HoseFlow* one = hose_in(some->result.states[0], hose);
  const site::Inlet* inlet = inlet_of(some->known);
  if (inlet == nullptr || (!inlet->elevation && !some->known.dispenser->elevation) || system->pumps.empty() ||
      !(one->pressure_gauge > 0.0)) {
    return left_out("the height of dispenser " + some->known.dispenser->id.text + " is not entered: enter elevation");
  }
  const studies::PumpDuty& pump = system->pumps.front();
  Question draft;
  draft.at = hose;
  draft.asks = {
      "Hose " + hose +
          " flows alone, {}; its pump adds {}. What does a gauge show inside the dispenser, where the hose's own "
          "parts begin?",
      {{some->alone, Quantity::flow}, {pump.pressure_rise, Quantity::pressure}}};
  draft.explains = {
      "Line, riser, valve and filter took their part before, and the height from the fuel in the tank its own.", {}};
  draft.follows = {"What the pump adds, less what the way and the height take before: {} − {} = {}",
                   {{pump.pressure_rise, Quantity::pressure},
                    {pump.pressure_rise - one->pressure_gauge, Quantity::pressure},
                    {one->pressure_gauge, Quantity::pressure}}};
  draft.rests_on = illustrative_of(some->result.defaults);
  const std::string place = site::place_name(*some->known.dispenser, *inlet);
  std::vector<Slip> slips{{pump.pressure_rise, "The pump's pressure taken for the hose's."}};
  const auto under =
      std::find_if(system->places.begin(), system->places.end(), [&](const auto& at) { return at.id == place; });
  if (under != system->places.end()) {
    slips.push_back(
        {under->pressure_gauge, "What the line shows under the dispenser, before riser, valve and filter."});
  }
  if (const auto rest = place_at_rest(ground, place); rest && rest->told->shutoff_gauge) {
    slips.push_back({*rest->told->shutoff_gauge, "What the line shows there with every hose shut."});
  }
  double lift = 0.0;
  for (const studies::BudgetRow& row : one->budget) lift += row.part == "lift" ? row.loss : 0.0;
  slips.push_back({one->pressure_gauge + lift, "The losses alone, without the height over the fuel in the tank."});
  slips.push_back({one->pressure_gauge - lift, "The height taken off twice."});
  return choose_value(std::move(draft), {one->pressure_gauge, Quantity::pressure}, slips, chance);
}

Asked one_hose_shuts(const Ground& ground, Chance& chance) {
  const auto some = some_hose(ground, chance, 3);
  if (!some) return left_out("fewer than three hoses of a product flow at this station");
  const std::string& hose = some->known.hose->id.text;
  std::vector<std::string> left = some->result.states[1].open_set.hoses;
  std::vector<std::string> others;
  for (const std::string& id : left) {
    if (id != hose) others.push_back(id);
  }
  const std::string shut = others[chance.index(others.size())];
  left.erase(std::find(left.begin(), left.end(), shut));
  const studies::FlowResult result = flows(ground.site, {left});
  const std::optional<double> now = flow_at(result.states[0], hose);
  if (!now) return left_out(no_flow);
  const double count = static_cast<double>(some->hoses);
  Question draft;
  draft.at = hose;
  draft.asks = {"All {} hoses of " + some->known.product + " are open and " + hose + " gives {}. Then " + shut +
                    " is shut. What does " + hose + " give now?",
                {{count, Quantity::count}, {some->all, Quantity::flow}}};
  draft.explains = {"The pump's pressure rises a little with less flow; alone the hose gives {}.",
                    {{some->alone, Quantity::flow}}};
  draft.follows = balance_at(*hose_in(result.states[0], hose));
  draft.rests_on = illustrative_of(result.defaults);
  return choose_value(
      std::move(draft), {*now, Quantity::flow},
      {{some->all, "As before: as if the hoses knew nothing of each other."},
       {some->all * count / (count - 1.0), "The flow of the one that was shut shared out among the others."},
       {some->alone, "As if it were alone."},
       {2.0 * some->all, "All of the other's flow goes to this hose."},
       {some->all * (count - 1.0) / count, "Less, in proportion to the hoses."}},
      chance, 0.04);
}

/// Each open hose with its flow.
std::vector<Ranked> by_flow(const studies::FlowState& state) {
  std::vector<Ranked> items;
  for (const std::string& id : state.open_set.hoses) {
    if (const auto flow = flow_at(state, id)) {
      items.push_back({{"hose " + id, {}}, -*flow, Amount{*flow, Quantity::flow}});
    }
  }
  return items;
}

Asked order_hoses(const Ground& ground, Chance& chance) {
  const auto some = some_hose(ground, chance, 3);
  if (!some) return left_out("fewer than three hoses of a product flow at this station");
  Question draft;
  draft.at = some->known.product;
  draft.asks = {
      "All {} hoses of " + some->known.product + " are open. Put these in order, the one that gives most first.",
      {{static_cast<double>(some->hoses), Quantity::count}}};
  draft.explains = {
      "What lies further along the line has less pressure; hoses at one inlet give alike where their parts are alike.",
      {}};
  draft.rests_on = illustrative_of(some->result.defaults);
  return in_order(std::move(draft), by_flow(some->result.states[1]), 0.006 * some->all, 3, 4);
}

Asked order_losses(const Ground& ground, Chance& chance) {
  const auto some = some_hose(ground, chance);
  if (!some) return left_out(no_flow);
  const studies::HoseFlow* one = hose_in(some->result.states[1], some->known.hose->id.text);
  std::vector<Ranked> items;
  double sum = 0.0;
  for (const studies::BudgetRow& row : one->budget) {
    if (row.loss <= 0.0 || row.part == "lift" || row.part == "limiter") continue;
    sum += row.loss;
    const std::string words = row.part + " of " + row.owner;
    items.push_back({{words, {}}, -row.loss, Amount{row.loss, Quantity::pressure}});
  }
  Question draft;
  draft.at = some->known.hose->id.text;
  draft.asks = {"All hoses of " + some->known.product + " are open, and {} flow at " + draft.at +
                    ". Put these parts of its way in order, the one that takes most pressure first.",
                {{some->all, Quantity::flow}}};
  draft.explains = {"Together the parts of the way take {}.", {{sum, Quantity::pressure}}};
  draft.rests_on = illustrative_of(some->result.defaults);
  return in_order(std::move(draft), std::move(items), 0.02 * sum, 3, 5);
}

Asked fueling_time(const Ground& ground, Chance& chance) {
  const auto some = some_hose(ground, chance, 2);
  if (!some) return left_out(one_hose);
  const bool entered = ground.site.operations && ground.site.operations->sale;
  const double sale = entered ? ground.site.operations->sale->likely.si() : to_si(12.0, "gal");
  const auto pumps = pumps_of(ground.site, some->known.product);
  std::vector<Slip> slips{{sale / some->alone, "As if no other hose were open."},
                          {sale / to_si(10.0, "gal/min"), "At the 10 gpm a rule allows."}};
  if (pumps.size() == 1 && run_out(*pumps.front())) {
    slips.push_back({sale * static_cast<double>(some->hoses) / *run_out(*pumps.front()),
                     "By the pump's greatest flow divided by the hoses."});
  }
  slips.push_back({sale * static_cast<double>(some->hoses) / some->alone, "By its flow alone, divided by the hoses."});
  Question draft;
  draft.at = some->known.hose->id.text;
  draft.asks = {"All hoses of " + some->known.product + " are open, and " + draft.at +
                    " gives {}. How long does a sale of {} flow?",
                {{some->all, Quantity::flow}, {sale, Quantity::volume}}};
  draft.explains = {"Alone it would flow {}.", {{sale / some->alone, Quantity::time}}};
  draft.follows = {"Volume by flow: {} / {} = {}",
                   {{sale, Quantity::volume}, {some->all, Quantity::flow}, {sale / some->all, Quantity::time}}};
  draft.rests_on = illustrative_of(some->result.defaults);
  return choose_value(std::move(draft), {sale / some->all, Quantity::time}, slips, chance);
}

/// What gauges and a hose show when something is wrong in the piping.
struct Readings {
  double flow = 0.0;  ///< [m3/s]
  double pump = 0.0;  ///< [Pa] gauge at the pump's discharge
  double sump = 0.0;  ///< [Pa] gauge where the line comes to the dispenser
};

std::optional<Readings> read(const site::Site& site, const KnownHose& known, const std::vector<std::string>& open,
                             const std::string& place) {
  const studies::FlowResult result = flows(site, {open});
  const studies::SystemFlow* system = system_of(result.states[0], known.hose->id.text);
  const auto flow = flow_at(result.states[0], known.hose->id.text);
  if (system == nullptr || system->pumps.size() != 1 || !flow) return std::nullopt;
  const auto at = std::find_if(system->places.begin(), system->places.end(),
                               [&](const studies::PlacePressure& one) { return one.id == place; });
  if (at == system->places.end() || !std::isfinite(at->pressure_gauge)) return std::nullopt;
  return Readings{*flow, system->pumps.front().discharge_pressure_gauge, at->pressure_gauge};
}

Asked pump_or_line(const Ground& ground, Chance& chance) {
  const auto some = some_hose(ground, chance);
  if (!some) return left_out(no_flow);
  const site::Inlet* inlet = inlet_of(some->known);
  if (inlet == nullptr) return left_out("hose " + some->known.hose->id.text + " has no inlet: enter it");
  const std::string place = site::place_name(*some->known.dispenser, *inlet);
  struct Cause {
    std::string words;
    std::string why;
    Choke choke;
  };
  const char* behind_why = "Then both gauges show more, and the hose gives less.";
  const Cause behind = inlet->filter
                           ? Cause{"the filter of " + place, behind_why, choke_of_filter(some->known)}
                           : Cause{"what hangs at " + some->known.hose->id.text + ": its nozzle, hose or swivel",
                                   behind_why, choke_of_hose(some->known)};
  std::vector<Cause> causes{{"the pump", "A weak pump shows less pressure everywhere.", choke_of_pump(some->known)},
                            {"the line between pump and dispenser",
                             "Then the pump shows more pressure and the dispenser less.", choke_of_trunk(some->known)},
                            behind};
  chance.shuffle(causes);
  const Cause truth = causes.front();
  site::Site changed = ground.site;
  const std::vector<std::string>& open = some->result.states[1].open_set.hoses;
  const auto usual = read(ground.site, some->known, open, place);
  const auto seen = truth.choke(changed) ? read(changed, some->known, open, place) : std::nullopt;
  if (!usual || !seen || seen->flow > 0.92 * usual->flow) {
    return left_out("a fault of pump, line or filter does not show at " + some->known.hose->id.text +
                    ": it takes one pump, and a flow that no limiter holds");
  }
  const double step = to_si(0.3, "psi", Datum::difference);
  if (std::abs(seen->pump - usual->pump) < step || std::abs(seen->sump - usual->sump) < step) {
    return left_out("a fault of pump, line or filter moves the gauges too little at " + place);
  }
  Question draft;
  draft.at = place;
  draft.asks = {"With all hoses of " + some->known.product + " open, " + some->known.hose->id.text +
                    " should give {} with {} at the pump and {} in the "
                    "line at " +
                    place + ". It gives {} with {} and {}. Which part is at fault?",
                {{usual->flow, Quantity::flow},
                 {usual->pump, Quantity::pressure},
                 {usual->sump, Quantity::pressure},
                 {seen->flow, Quantity::flow},
                 {seen->pump, Quantity::pressure},
                 {seen->sump, Quantity::pressure}}};
  draft.explains = {"Pressure rises before what holds the flow back, and falls behind it.", {}};
  draft.follows = {"Against what they should show, {} at the pump and {} at the dispenser",
                   {{seen->pump - usual->pump, Quantity::pressure}, {seen->sump - usual->sump, Quantity::pressure}}};
  std::vector<Option> wrong;
  for (std::size_t i = 1; i < causes.size(); ++i) wrong.push_back({{causes[i].words, {}}, false, causes[i].why});
  return choose_words(std::move(draft), {truth.words, {}}, wrong, chance);
}

}  // namespace

std::vector<QuestionKind> nozzle_questions() {
  return {
      {"hose-flow-alone", Form::estimate, 1, "nozzle", hose_flow_alone},
      {"flow-all-open", Form::choice, 1, "nozzle", flow_all_open},
      {"pressure-at-hose", Form::choice, 2, "nozzle", pressure_at_hose},
      {"one-hose-shuts", Form::choice, 2, "nozzle", one_hose_shuts},
      {"order-losses", Form::order, 3, "nozzle", order_losses},
      {"pump-or-line", Form::fault, 3, "nozzle", pump_or_line},
      {"fueling-time", Form::choice, 1, "vehicle", fueling_time},
      {"order-hoses", Form::order, 2, "vehicle", order_hoses},
  };
}

}  // namespace forecourse::lesson
