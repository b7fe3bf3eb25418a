#include <algorithm>
#include <cmath>

#include "forecourse/base/constants.h"
#include "forecourse/lesson/questions/kinds/all.h"
#include "forecourse/lesson/questions/make/draft.h"
#include "forecourse/lesson/questions/make/known.h"
#include "forecourse/lesson/questions/make/law.h"

namespace forecourse::lesson {
namespace {

Asked pressure_at_pump(const Ground& ground, Chance& chance) {
  const auto some = some_hose(ground, chance, 2);
  if (!some) return left_out("fewer than two hoses of a product flow at this station");
  const std::vector<const site::Pump*> pumps = pumps_of(ground.site, some->known.product);
  if (pumps.size() != 1 || !shutoff_rise(*pumps.front()) || !pumps.front()->discharge_elevation) {
    return left_out("pump of " + some->known.product + ": enter shutoff and discharge_elevation, of one pump");
  }
  const std::string& hose = some->known.hose->id.text;
  const studies::SystemFlow* open = system_of(some->result.states[1], hose);
  const studies::SystemFlow* alone = system_of(some->result.states[0], hose);
  if (open == nullptr || open->pumps.empty() || alone == nullptr) return left_out("flow is not determined");
  const studies::PumpDuty& duty = open->pumps.front();
  const double height = duty.pressure_rise - duty.discharge_pressure_gauge;
  Question draft;
  draft.at = duty.id;
  draft.asks = {"Every hose of " + some->known.product +
                    " flows, {} in all. What does a gauge at the discharge of pump " + duty.id + " show?",
                {{open->total_flow, Quantity::flow}}};
  draft.explains = {"The pump adds {} at that flow; the height of the gauge over the fuel takes {} of it.",
                    {{duty.pressure_rise, Quantity::pressure}, {height, Quantity::pressure}}};
  draft.follows = {"What the pump adds, less the height of the gauge over the fuel: {} − {} = {}",
                   {{duty.pressure_rise, Quantity::pressure},
                    {height, Quantity::pressure},
                    {duty.discharge_pressure_gauge, Quantity::pressure}}};
  draft.rests_on = illustrative_of(some->result.defaults);
  return choose_value(
      std::move(draft), {duty.discharge_pressure_gauge, Quantity::pressure},
      {{*shutoff_rise(*pumps.front()) - height, "What it shows with every hose shut."},
       {hose_in(some->result.states[1], hose)->pressure_gauge, "The pressure at the hose taken for the pump's."},
       {duty.pressure_rise, "What the pump adds, without the height of the gauge over the fuel."},
       {duty.pressure_rise + height, "The height of the gauge added instead of taken off."},
       {*shutoff_rise(*pumps.front()) / static_cast<double>(some->hoses),
        "Shutoff divided by the hoses: pressure is not shared out."}},
      chance, 0.03);
}

/// A place where a line that stands still may leak, and what the gauge at the pump then comes to rest at.
struct RestingLeak {
  std::string words;
  double gauge = 0.0;  ///< [Pa]
};

std::vector<RestingLeak> resting_leaks(const Ground& ground, const site::Pump& pump, const std::string& product,
                                       double weight, double decayed) {
  const double gauge = pump.discharge_elevation->likely.si();
  std::vector<RestingLeak> out{{"the check valve of pump " + pump.id.text, decayed}};
  const auto add = [&](const std::string& words, const site::Maybe<Length>& elevation) {
    // Fuel from the tank would run after through the check valve to a leak that lies below its surface.
    if (elevation && weight * (elevation->likely.si() - gauge) > decayed) {
      out.push_back({words, weight * (elevation->likely.si() - gauge)});
    }
  };
  for (const site::Dispenser& dispenser : ground.site.dispensers) {
    for (const site::Inlet& inlet : dispenser.inlets) {
      if (inlet.product.text != product) continue;
      if (inlet.shear_valve) add("the shear groove at " + dispenser.id.text, inlet.shear_valve->groove_elevation);
      add("the foot of the riser at " + dispenser.id.text, inlet.line_elevation);
    }
    for (const site::Hose& hose : dispenser.hoses) {
      if (hose.product.text == product) add("the nozzle of hose " + hose.id.text, hose.outlet_elevation);
    }
  }
  return out;
}

Asked resting_pressure(const Ground& ground, Chance& chance) {
  if (!ground.studied.flow) return left_out("no hose is entered");
  std::vector<KnownHose> all = plain_hoses(ground.site);
  chance.shuffle(all);
  for (const KnownHose& one : all) {
    const auto pumps = pumps_of(ground.site, one.product);
    const std::optional<double> density = density_of(ground, one.product);
    if (pumps.size() != 1 || !pumps.front()->discharge_elevation || !density) continue;
    for (const studies::LineAtRest& line : ground.studied.flow->lines_at_rest) {
      const auto place = std::find_if(line.places.begin(), line.places.end(), [&](const studies::RestPlace& at) {
        return at.id == pumps.front()->id.text && at.decayed_gauge;
      });
      if (line.product != one.product || place == line.places.end()) continue;
      const double weight = *density * standard_gravity;
      std::vector<RestingLeak> leaks =
          resting_leaks(ground, *pumps.front(), one.product, weight, *place->decayed_gauge);
      chance.shuffle(leaks);
      const RestingLeak truth = leaks.front();
      std::vector<Option> wrong;
      std::vector<double> told{truth.gauge};
      Phrase follows{"A leak at " + truth.words + " lets it rest at {}", {{truth.gauge, Quantity::pressure}}};
      for (const RestingLeak& leak : leaks) {
        const bool apart = std::all_of(told.begin(), told.end(),
                                       [&](double gauge) { return std::abs(gauge - leak.gauge) > 0.3 * weight; });
        if (!apart) continue;
        told.push_back(leak.gauge);
        if (told.size() <= 4) {
          follows.words += ", at " + leak.words + " at {}";
          follows.values.push_back({leak.gauge, Quantity::pressure});
        }
        wrong.push_back({{leak.words, {}}, false, "A leak there lets the gauge fall to another height of fuel."});
      }
      Question draft;
      draft.at = pumps.front()->id.text;
      draft.asks = {"Pump " + draft.at + " has stopped and every hose of " + one.product +
                        " is shut. The gauge at its discharge falls to {} and stays there. Where does the line leak?",
                    {{truth.gauge, Quantity::pressure}}};
      draft.explains = {"The line empties until the fuel stands as high as the leak: {} above the gauge.",
                        {{truth.gauge / weight, Quantity::length}}};
      draft.follows = std::move(follows);
      return choose_words(std::move(draft), {truth.words, {}}, wrong, chance);
    }
  }
  return left_out("heights of pump and dispensers are not entered: enter discharge_elevation, groove_elevation");
}

Asked tank_sump_holds(const Ground& ground, Chance& chance) {
  if (!ground.studied.containment) return left_out("no sump is entered");
  const studies::ContainedSump* sump = pick(
      those(ground.studied.containment->sumps,
            [](const studies::ContainedSump& one) { return one.of_tank && one.problem.empty() && one.brim > 0.0; }),
      chance);
  const site::Tank* tank = sump != nullptr ? tank_of(ground.site, sump->owner) : nullptr;
  if (tank == nullptr || !tank->sump || !tank->sump->diameter || !tank->sump->depth) {
    return left_out("no tank sump is entered as round: enter sump = { kind = \"round\", diameter, depth }");
  }
  const double diameter = tank->sump->diameter->likely.si();
  const double depth = tank->sump->depth->likely.si();
  const double parts = tank->sump->parts_share ? tank->sump->parts_share->likely.si() : 0.0;
  Question draft;
  draft.at = sump->owner;
  draft.asks = {"The sump on tank " + sump->owner +
                    " is round, {} across and {} deep; its parts take {} of the room. "
                    "How much does it hold to the brim?",
                {{diameter, Quantity::bore}, {depth, Quantity::bore}, {parts, Quantity::share}}};
  draft.explains = {"Area times depth, less the parts. It holds that much only while its seals are tight.", {}};
  draft.follows = {"Area of a circle, by the depth, by the share that is left: π / 4 × {} × {} × {} × (1 − {}) = {}",
                   {{diameter, Quantity::bore},
                    {diameter, Quantity::bore},
                    {depth, Quantity::bore},
                    {parts, Quantity::share},
                    {sump->brim, Quantity::volume}}};
  draft.proof = {{"containment"},
                 "/result/sumps/" + std::to_string(index_of(ground.studied.containment->sumps, sump)) + "/brim_m3"};
  return choose_value(std::move(draft), {sump->brim, Quantity::volume},
                      {{4.0 * sump->brim, "The diameter taken for the radius."},
                       {sump->brim / (1.0 - parts), "Without what the parts take."},
                       {diameter * diameter * depth * (1.0 - parts), "As a box of that width."},
                       {sump->brim * parts, "What the parts take, not what is left."}},
                      chance);
}

Asked leak_at_line_pressure(const Ground& ground, Chance& chance) {
  struct Known {
    const studies::DetectorTold* detector;
    const studies::CatchTold* caught;
  };
  std::vector<Known> some;
  if (ground.studied.line_test) {
    for (const studies::LineTest& line : ground.studied.line_test->lines) {
      for (const studies::DetectorTold& detector : line.detectors) {
        for (const studies::CatchTold& caught : detector.catches) {
          if (detector.detects && detector.at && caught.held) some.push_back({&detector, &caught});
        }
      }
    }
  }
  if (some.empty()) {
    return left_out(
        "no leak detector is entered with what it detects, on a line that a check valve holds: enter "
        "leak_detector = { detects, at } and check_valve");
  }
  const Known& known = some[chance.index(some.size())];
  const double ratio = known.caught->pressure / *known.detector->at;
  const double absolute = (known.caught->pressure + standard_atmosphere) / (*known.detector->at + standard_atmosphere);
  const double rate = *known.detector->detects;
  Question draft;
  draft.at = known.detector->pump;
  draft.asks = {"The leak detector of pump " + known.detector->pump +
                    " finds {} at {}. The line stands at {}: what does "
                    "the same sharp hole pass there?",
                {{rate, Quantity::leak},
                 {*known.detector->at, Quantity::pressure},
                 {known.caught->pressure, Quantity::pressure}}};
  draft.explains = {"A sharp hole passes with the root of the pressure; a narrow crack would pass {}.",
                    {{known.caught->laminar, Quantity::leak}}};
  draft.follows = {"A sharp hole passes with the root of the pressure: {} × √({} / {}) = {}",
                   {{rate, Quantity::leak},
                    {known.caught->pressure, Quantity::pressure},
                    {*known.detector->at, Quantity::pressure},
                    {known.caught->rate, Quantity::leak}}};
  return choose_value(std::move(draft), {known.caught->rate, Quantity::leak},
                      {{rate, "A detector's figure holds at its own pressure alone."},
                       {rate * ratio, "In proportion to pressure, as of a narrow crack."},
                       {rate * std::sqrt(absolute), "Absolute pressures taken for gauge pressures."},
                       {rate * ratio * ratio, "The square of the pressure taken for its root."},
                       {rate / std::sqrt(ratio), "Upside down: more pressure passes more."}},
                      chance);
}

}  // namespace

std::vector<QuestionKind> pump_questions() {
  return {
      {"pressure-at-pump", Form::choice, 2, "pump", pressure_at_pump},
      {"resting-pressure", Form::fault, 3, "pump", resting_pressure},
      {"tank-sump-holds", Form::choice, 1, "tank-sump", tank_sump_holds},
      {"leak-at-line-pressure", Form::choice, 2, "leak-detector", leak_at_line_pressure},
  };
}

}  // namespace forecourse::lesson
