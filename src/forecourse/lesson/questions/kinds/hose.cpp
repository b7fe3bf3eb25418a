#include <algorithm>
#include <cmath>
#include <numbers>

#include "forecourse/base/unit_text.h"
#include "forecourse/lesson/questions/kinds/all.h"
#include "forecourse/lesson/questions/make/draft.h"
#include "forecourse/lesson/questions/make/known.h"

namespace forecourse::lesson {
namespace {

template <class Q>
site::Entered<Q> entered(double si) {
  const Q value = Q::from_si(si);
  return {value, value, value, {}};
}

studies::IncidentResult drives_off(const site::Site& site, const std::string& hose, double acceleration, double slack,
                                   double angle) {
  studies::IncidentOptions options = brief(studies::IncidentKind::drive_off, hose);
  site::Vehicle vehicle;
  vehicle.acceleration = entered<Acceleration>(acceleration);
  vehicle.slack = entered<Length>(slack);
  vehicle.angle = entered<Angle>(angle);
  options.request.vehicle = vehicle;
  return studies::study_incident(site, options);
}

Asked hose_comes_tight(const Ground& ground, Chance& chance) {
  std::vector<KnownHose> all = plain_hoses(ground.site);
  chance.shuffle(all);
  const double distance = to_si(6.0, "ft");
  const double acceleration = 1.5;
  for (const KnownHose& one : all) {
    if (!one.hose->curb || !one.hose->curb->length || !one.hose->breakaway) continue;
    double length = one.hose->curb->length->likely.si();
    if (one.hose->whip && one.hose->whip->length) length += one.hose->whip->length->likely.si();
    const double slack = length - distance;
    if (slack < to_si(1.0, "ft")) continue;
    const studies::IncidentResult result = drives_off(ground.site, one.hose->id.text, acceleration, slack, 0.0);
    if (!result.drive_off || !(result.drive_off->tight_at > 0.0)) continue;
    Question draft;
    draft.at = one.hose->id.text;
    draft.caution = escape_caution;
    draft.asks = {"Hose " + draft.at +
                      " is {} long with its whip hose, and {} of it are used up between dispenser and car. The car "
                      "sets off with the nozzle in it and is {} fast after {}. When is the hose tight?",
                  {{length, Quantity::length},
                   {distance, Quantity::length},
                   {2.0 * acceleration, Quantity::velocity},
                   {2.0, Quantity::time}}};
    draft.explains = {"{} of slack at a steady gain of speed; it is then {} fast. Nobody can stop it by hand.",
                      {{slack, Quantity::length}, {result.drive_off->speed_then, Quantity::velocity}}};
    draft.follows = {"Steady gain of speed, twice the way by the gain, and the root of it: √(2 × {} × {} / {}) = {}",
                     {{slack, Quantity::length},
                      {2.0, Quantity::time},
                      {2.0 * acceleration, Quantity::velocity},
                      {result.drive_off->tight_at, Quantity::time}}};
    return choose_value(
        std::move(draft), {result.drive_off->tight_at, Quantity::time},
        {{slack / (2.0 * acceleration), "As if it rolled at its later speed from the start."},
         {std::sqrt(slack / acceleration), "The half of the way forgotten: a car that gains speed covers half."},
         {2.0 * slack / acceleration, "The root forgotten."},
         {std::sqrt(2.0 * length / acceleration), "The whole hose, without what is used up."}},
        chance);
  }
  return left_out("no hose with a breakaway is longer than 7 ft: enter curb = { length }, breakaway");
}

Asked breakaway_pull(const Ground& ground, Chance& chance) {
  std::vector<KnownHose> all = plain_hoses(ground.site);
  chance.shuffle(all);
  const double angle = 40.0 * std::numbers::pi / 180.0;
  for (const KnownHose& one : all) {
    if (!one.hose->breakaway || !one.hose->parting || !one.hose->parting->pull || !one.hose->parting->friction)
      continue;
    const studies::IncidentResult result = drives_off(ground.site, one.hose->id.text, 1.5, 1.0, angle);
    if (!result.drive_off || !result.drive_off->separation_force) continue;
    const double straight = one.hose->parting->pull->likely.si();
    const double friction = one.hose->parting->friction->likely;
    const double askew = result.drive_off->angle;
    const double pull = result.drive_off->separation_force->likely;
    Question draft;
    draft.at = one.hose->id.text;
    draft.caution = escape_caution;
    draft.asks = {"The breakaway of " + draft.at +
                      " parts at {} along its axis; its halves slide with a friction of {}. The hose pulls "
                      "at {} off that axis. What must it pull?",
                  {{straight, Quantity::force}, {friction, Quantity::share}, {askew, Quantity::angle}}};
    draft.explains = {
        "Only the part along the axis parts it, and the part across jams it. A whip hose that is long enough "
        "lets it turn into the pull.",
        {}};
    draft.follows = {
        "The pull along the axis, less the friction of the pull across: {} / (cos({}) − {} × sin({})) = {}",
        {{straight, Quantity::force},
         {askew, Quantity::angle},
         {friction, Quantity::share},
         {askew, Quantity::angle},
         {pull, Quantity::force}}};
    draft.rests_on = illustrative_of(result.inputs);
    return choose_value(std::move(draft), {pull, Quantity::force},
                        {{straight, "As along its axis."},
                         {straight * std::cos(askew), "Less: multiplied by the cosine instead of divided."},
                         {straight / std::cos(askew), "Without the friction of its halves."},
                         {straight / std::sin(askew), "The sine taken for the cosine."},
                         {straight / std::cos(askew) * (1.0 + friction),
                          "The friction put on top as a share, not taken of the pull across."}},
                        chance);
  }
  return left_out("no breakaway is entered with its pull and friction: enter parting = { pull, friction }");
}

/// The way to a hose, by part: what each takes, rises and lift aside.
std::vector<std::pair<std::string, double>> losses_to(const studies::FlowState& state, const std::string& hose) {
  std::vector<std::pair<std::string, double>> out;
  const studies::HoseFlow* one = hose_in(state, hose);
  if (one == nullptr) return out;
  for (const studies::BudgetRow& row : one->budget) {
    if (row.loss <= 0.0 || row.part == "lift" || row.part == "pump") continue;
    const auto same = std::find_if(out.begin(), out.end(), [&](const auto& other) { return other.first == row.part; });
    if (same == out.end()) {
      out.emplace_back(row.part, row.loss);
    } else {
      same->second += row.loss;
    }
  }
  return out;
}

Asked curb_hose_share(const Ground& ground, Chance& chance) {
  const auto some = some_hose(ground, chance);
  if (!some) return left_out("no hose flows at this station");
  const std::string& hose = some->known.hose->id.text;
  const auto losses = losses_to(some->result.states[0], hose);
  double sum = 0.0;
  double curb = 0.0;
  double line = 0.0;
  double hanging = 0.0;  // what hangs at the dispenser
  double meter = 0.0;
  double filter = 0.0;
  for (const auto& row : losses) {
    sum += row.second;
    if (row.first == "curb hose") curb = row.second;
    if (row.first == "line") line = row.second;
    if (row.first == "meter") meter = row.second;
    if (row.first == "filter") filter = row.second;
    for (const char* part : {"whip hose", "breakaway", "curb hose", "swivel", "nozzle"}) {
      if (row.first == part) hanging += row.second;
    }
  }
  if (!(curb > 0.0)) return left_out("hose " + hose + " has no curb hose of its own: enter curb = { length, bore }");
  Question draft;
  draft.at = hose;
  draft.asks = {
      "Hose " + hose +
          " flows alone, {}. Of what all parts from the pump to the nozzle take, which share does its curb hose take?",
      {{some->alone, Quantity::flow}}};
  draft.explains = {"{} of {} in all; the height takes its part besides.",
                    {{curb, Quantity::pressure}, {sum, Quantity::pressure}}};
  draft.follows = {"Its loss, of the losses of all parts: {} / {} = {}",
                   {{curb, Quantity::pressure}, {sum, Quantity::pressure}, {curb / sum, Quantity::share}}};
  draft.rests_on = illustrative_of(some->result.defaults);
  return choose_value(std::move(draft), {curb / sum, Quantity::share},
                      {{1.0 / static_cast<double>(losses.size()), "An even share for each kind of part."},
                       {line / sum, "What the line takes: the longest part is not the one that takes most."},
                       {hanging / sum, "What whip hose, breakaway, swivel and nozzle take with it."},
                       {meter / sum, "What the meter takes."},
                       {filter / sum, "What the filter takes."}},
                      chance, 0.1);
}

Asked order_course(const Ground& ground, Chance& chance) {
  const auto some = some_hose(ground, chance);
  if (!some) return left_out("no hose flows at this station");
  const studies::HoseFlow* one = hose_in(some->result.states[0], some->known.hose->id.text);
  std::vector<Ranked> items;
  for (const studies::BudgetRow& row : one->budget) {
    if (row.part == "lift" || row.part == "limiter") continue;
    const bool told =
        std::any_of(items.begin(), items.end(), [&](const Ranked& item) { return item.words.words == row.part; });
    if (!told) items.push_back({{row.part, {}}, static_cast<double>(items.size())});
  }
  if (items.size() < 4) return left_out("fewer than four parts are entered on the way to a hose");
  // Some of them by chance, so that it is not always the first and the last.
  while (items.size() > 6) items.erase(items.begin() + static_cast<std::ptrdiff_t>(chance.index(items.size())));
  Question draft;
  draft.at = some->known.hose->id.text;
  draft.asks = {
      "Fuel comes from the tank to the vehicle at hose " + draft.at + ". In which order does it pass these parts?", {}};
  draft.explains = {"The course from the tank to the vehicle, as it is entered for this hose.", {}};
  return in_order(std::move(draft), std::move(items), 0.5, 4, 6);
}

}  // namespace

std::vector<QuestionKind> hose_questions() {
  return {
      {"hose-comes-tight", Form::choice, 2, "whip-hose", hose_comes_tight},
      {"breakaway-pull", Form::choice, 3, "breakaway", breakaway_pull},
      {"curb-hose-share", Form::choice, 2, "curb-hose", curb_hose_share},
      {"order-course", Form::order, 1, "swivel", order_course},
  };
}

}  // namespace forecourse::lesson
