#include <algorithm>
#include <cmath>

#include "forecourse/base/constants.h"
#include "forecourse/base/unit_text.h"
#include "forecourse/lesson/questions/kinds/all.h"
#include "forecourse/lesson/questions/make/draft.h"
#include "forecourse/lesson/questions/make/known.h"

namespace forecourse::lesson {
namespace {

Asked vapor_kept(const Ground& ground, Chance& chance) {
  if (!ground.studied.vapor) return left_out("no tank is entered");
  const studies::ProductVapor* product = pick(those(ground.studied.vapor->products,
                                                    [](const studies::ProductVapor& one) {
                                                      return one.gasoline && one.throughput && one.with_stage_one &&
                                                             one.without_stage_one &&
                                                             *one.without_stage_one > *one.with_stage_one;
                                                    }),
                                              chance);
  if (product == nullptr)
    return left_out("what is sold in a month of a gasoline is not entered: enter operations.throughput");
  const double kept = *product->without_stage_one - *product->with_stage_one;
  Question draft;
  draft.at = product->product;
  draft.asks = {"{} of " + product->product +
                    " are sold in a month. Without vapor return at the drop, {} of it are lost as vapor in all. "
                    "How much of that does a vapor return keep?",
                {{*product->throughput, Quantity::volume}, {*product->without_stage_one, Quantity::mass}}};
  draft.explains = {"{} are lost all the same, elsewhere than at the drop.",
                    {{*product->with_stage_one, Quantity::mass}}};
  draft.follows = {"What is lost without, less what is lost with it: {} − {} = {}",
                   {{*product->without_stage_one, Quantity::mass},
                    {*product->with_stage_one, Quantity::mass},
                    {kept, Quantity::mass}}};
  return choose_value(std::move(draft), {kept, Quantity::mass},
                      {{*product->without_stage_one, "All of it: as if the drop were the only loss."},
                       {*product->with_stage_one, "What is lost all the same, not what is kept."},
                       {12.0 * kept, "In a year, not in a month."}},
                      chance);
}

Asked vent_as_head(const Ground& ground, Chance& chance) {
  struct Known {
    const site::Tank* tank;
    double opens;
    double density;
    std::optional<double> vacuum;
  };
  std::vector<Known> some;
  for (const site::Tank& tank : ground.site.tanks) {
    const auto density = density_of(ground, tank.product.text);
    for (const site::Vent& vent : tank.vents) {
      if (density && vent.valve && vent.valve->opens_at)
        some.push_back(
            {&tank, vent.valve->opens_at->likely.si(), *density,
             vent.valve->vacuum_opens_at ? std::optional(vent.valve->vacuum_opens_at->likely.si()) : std::nullopt});
    }
  }
  if (some.empty())
    return left_out("no vent of a tank has a valve with its setting: enter valve = { opens_at = \"3 inH2O\" }");
  const Known& known = some[chance.index(some.size())];
  const double head = known.opens / (known.density * standard_gravity);
  const double as_psi = to_si(from_si(known.opens, "inH2O"), "psi", Datum::difference);
  Question draft;
  draft.at = known.tank->id.text;
  draft.asks = {"The vent of " + draft.at +
                    " opens at {}. How high over the fuel in the tank does that pressure push fuel up the open drop "
                    "tube?",
                {{known.opens, Quantity::ullage_pressure}}};
  draft.explains = {
      "A pressure in inches of water is as many inches of water, and more of a lighter fuel. What is open below "
      "the fuel must stand higher than that.",
      {}};
  const double weight = known.density * standard_gravity;
  const double in_water = known.opens / (water_density_at_60_fahrenheit * standard_gravity);
  draft.follows = {"Height of water, by the density of the fuel over that of water: {} / {} = {}",
                   {{in_water, Quantity::bore},
                    {known.density / water_density_at_60_fahrenheit, Quantity::share},
                    {head, Quantity::bore}}};
  return choose_value(
      std::move(draft), {head, Quantity::bore},
      {{in_water, "A head of water taken for one of fuel."},
       {as_psi / weight, "Inches of water taken for psi."},
       {head * known.density / water_density_at_60_fahrenheit * known.density / water_density_at_60_fahrenheit,
        "Multiplied by the fuel's lightness instead of divided."},
       {known.vacuum.value_or(0.0) / weight, "The setting for vacuum, not for pressure."}},
      chance, 0.1);
}

}  // namespace

std::vector<QuestionKind> vapor_questions() {
  return {
      {"vapor-kept", Form::choice, 2, "vapor-return", vapor_kept},
      {"vent-as-head", Form::choice, 2, "vent", vent_as_head},
  };
}

}  // namespace forecourse::lesson
