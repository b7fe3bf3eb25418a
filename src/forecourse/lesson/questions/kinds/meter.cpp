#include <algorithm>
#include <cmath>

#include "forecourse/base/unit_text.h"
#include "forecourse/lesson/questions/kinds/all.h"
#include "forecourse/lesson/questions/make/choke.h"
#include "forecourse/lesson/questions/make/draft.h"
#include "forecourse/lesson/questions/make/known.h"
#include "forecourse/site/places.h"
#include "forecourse/studies/ledger/months.h"

namespace forecourse::lesson {
namespace {

double filter_loss(const studies::FlowState& state, const std::string& hose) {
  const studies::HoseFlow* one = hose_in(state, hose);
  double loss = 0.0;
  for (const studies::BudgetRow& row : one != nullptr ? one->budget : std::vector<studies::BudgetRow>{}) {
    if (row.part == "filter") loss += row.loss;
  }
  return loss;
}

std::string filter_words(const std::string& place, const std::string& hose, const std::string& other) {
  std::string out = "The filter of " + place;
  out.append(" serves ").append(hose).append(" and ").append(other).append(". With ").append(hose);
  return out + " alone it takes {}. What does it take with both?";
}

Asked filter_with_two_hoses(const Ground& ground, Chance& chance) {
  std::vector<KnownHose> all = plain_hoses(ground.site);
  chance.shuffle(all);
  for (const KnownHose& one : all) {
    const site::Inlet* inlet = inlet_of(one);
    const KnownHose* other = nullptr;
    for (const KnownHose& next : all) {
      if (next.dispenser == one.dispenser && next.product == one.product && next.hose != one.hose) other = &next;
    }
    if (inlet == nullptr || !inlet->filter || other == nullptr) continue;
    const std::string& hose = one.hose->id.text;
    const studies::FlowResult result = flows(ground.site, {{hose}, {hose, other->hose->id.text}});
    const double alone = filter_loss(result.states[0], hose);
    const double both = filter_loss(result.states[1], hose);
    if (!(alone > 0.0) || !(both > 0.0)) continue;
    Question draft;
    draft.at = site::place_name(*one.dispenser, *inlet);
    draft.asks = {filter_words(draft.at, hose, other->hose->id.text), {{alone, Quantity::pressure}}};
    draft.explains = {"Its loss grows with the square of what passes, and each hose gives a little less than alone.",
                      {}};
    draft.rests_on = illustrative_of(result.defaults);
    const double one_flow = flow_at(result.states[0], hose).value_or(0.0);
    const double both_flow =
        flow_at(result.states[1], hose).value_or(0.0) + flow_at(result.states[1], other->hose->id.text).value_or(0.0);
    const double squared = alone * (both_flow / one_flow) * (both_flow / one_flow);
    if (std::abs(squared - both) < 1e-6 * both) {  // not where its loss has a part that grows with the flow alone
      draft.follows = {"With the square of the flow: {} × ({} / {}) ^ 2 = {}",
                       {{alone, Quantity::pressure},
                        {both_flow, Quantity::flow},
                        {one_flow, Quantity::flow},
                        {both, Quantity::pressure}}};
    }
    return choose_value(std::move(draft), {both, Quantity::pressure},
                        {{4.0 * alone, "As if each hose went on giving what it gives alone."},
                         {2.0 * alone, "In proportion to the flow, not to its square."},
                         {alone, "As with one hose: as if each had a filter of its own."},
                         {0.5 * alone, "Shared out over the hoses."}},
                        chance);
  }
  return left_out("no filter serves two hoses: enter the filter of an inlet");
}

/// What a reading of a slow hose can come from.
struct Cause {
  std::string words;
  std::string why;
  Choke choke;
};

/// Whether the first hose gives less than it should by far, and all flow as they should.
bool shows(const std::vector<Amount>& usual, const std::vector<Amount>& seen) {
  const bool flow = std::all_of(usual.begin(), usual.end(), [](const Amount& one) { return one.value > 0.0; });
  return flow && seen[0].value > 0.0 && seen[0].value <= 0.85 * usual[0].value;
}

Asked slow_hose(const Ground& ground, Chance& chance) {
  std::vector<KnownHose> all = plain_hoses(ground.site);
  chance.shuffle(all);
  for (const KnownHose& one : all) {
    const KnownHose* beside = nullptr;
    const KnownHose* away = nullptr;
    for (const KnownHose& other : all) {
      if (other.product != one.product || other.hose == one.hose) continue;
      (other.dispenser == one.dispenser ? beside : away) = &other;
    }
    if (beside == nullptr || away == nullptr || !inlet_of(one)->filter) continue;
    const std::string place = site::place_name(*one.dispenser, *inlet_of(one));
    std::vector<Cause> causes{
        {"what hangs at " + one.hose->id.text + ": its nozzle, hose or swivel", "Then only this hose would be slow.",
         choke_of_hose(one)},
        {"the filter of " + place, "Then both hoses of that inlet would be slow, and no other.", choke_of_filter(one)},
        {"the pump of " + one.product, "Then every hose of the product would be slow.", choke_of_pump(one)}};
    chance.shuffle(causes);
    const Cause truth = causes.front();
    const std::vector<std::vector<std::string>> sets{
        {one.hose->id.text}, {beside->hose->id.text}, {away->hose->id.text}};
    const auto read = [&](const site::Site& site) {
      const studies::FlowResult result = flows(site, sets);
      std::vector<Amount> out;
      for (std::size_t i = 0; i < sets.size(); ++i) {
        out.push_back({flow_at(result.states[i], sets[i].front()).value_or(0.0), Quantity::flow});
      }
      return out;
    };
    site::Site changed = ground.site;
    if (!truth.choke(changed)) continue;
    const std::vector<Amount> usual = read(ground.site);
    const std::vector<Amount> seen = read(changed);
    if (!shows(usual, seen)) continue;
    Question draft;
    draft.at = place;
    draft.asks = {"Alone, hose " + one.hose->id.text + " should give {}, " + beside->hose->id.text +
                      " beside it {} and " + away->hose->id.text +
                      " at another dispenser {}. They give {}, {} and {}. Which part is at fault?",
                  usual};
    draft.asks.values.insert(draft.asks.values.end(), seen.begin(), seen.end());
    draft.explains = {"Whatever all slow hoses share, and no good one, is at fault.", {}};
    draft.follows = {"Of what they should give they have left {}, {} and {}", {}};
    for (std::size_t i = 0; i < seen.size(); ++i) {
      draft.follows.values.push_back({seen[i].value / usual[i].value, Quantity::share});
    }
    std::vector<Option> wrong;
    for (std::size_t i = 1; i < causes.size(); ++i) wrong.push_back({{causes[i].words, {}}, false, causes[i].why});
    return choose_words(std::move(draft), {truth.words, {}}, wrong, chance);
  }
  return left_out(
      "a fault shows at no hose: it takes two hoses at an inlet with a filter, a third at another dispenser, and "
      "flows that no limiter holds");
}

double sold_in_a_month(const site::Site& site) {
  double sum = 0.0;
  if (!site.operations) return sum;
  for (const site::Throughput& one : site.operations->throughput) {
    if (one.per_month) sum += one.per_month->likely.si();
  }
  return sum;
}

Asked meter_gives_away(const Ground& ground, Chance& chance) {
  const double sold = sold_in_a_month(ground.site);
  if (!(sold > 0.0)) return left_out("what is sold in a month is not entered: enter operations.throughput");
  const double error = 0.001 * static_cast<double>(2 + chance.index(4));
  const double least = [&] {
    double out = sold;
    for (const site::Throughput& one : ground.site.operations->throughput) {
      if (one.per_month) out = std::min(out, one.per_month->likely.si());
    }
    return out;
  }();
  Question draft;
  draft.asks = {
      "{} are sold here in a month, of all products. Every meter gives {} more than it shows. How much is that in a "
      "year?",
      {{sold, Quantity::volume}, {error, Quantity::share}}};
  draft.explains = {"{} a month, twelve times.", {{error * sold, Quantity::volume}}};
  draft.follows = {"What is sold, by the error, by the months: {} × {} × 12 = {}",
                   {{sold, Quantity::volume}, {error, Quantity::share}, {12.0 * error * sold, Quantity::volume}}};
  return choose_value(std::move(draft), {12.0 * error * sold, Quantity::volume},
                      {{error * sold, "In a month, not in a year."},
                       {52.0 * error * sold, "The month's sale taken for a week's."},
                       {12.0 * error * least, "Of the product that sells least, not of all."},
                       {12.0 * 0.01 * sold, "At the 1.0 % of the monthly limit, which is another rule."}},
                      chance);
}

const site::Throughput* some_sold(const Ground& ground, Chance& chance) {
  if (!ground.site.operations) return nullptr;
  return pick(those(ground.site.operations->throughput,
                    [](const site::Throughput& one) { return one.per_month && one.per_month->likely.si() > 0.0; }),
              chance);
}

Asked monthly_limit(const Ground& ground, Chance& chance) {
  if (!is_federal(ground.site)) return left_out(not_federal);
  const site::Throughput* sold = some_sold(ground, chance);
  if (sold == nullptr) return left_out("what is sold in a month is not entered: enter operations.throughput");
  const double throughput = sold->per_month->likely.si();
  const double fixed = studies::monthly_limit(0.0);
  Question draft;
  draft.at = sold->product.text;
  draft.asks = {"{} of " + draft.at +
                    " were sold in a month. By how much may the stock differ from the book before it must "
                    "be looked into?",
                {{throughput, Quantity::volume}}};
  draft.explains = {"1.0 % of what was sold, and {} besides, by 40 CFR 280.43(a).", {{fixed, Quantity::volume}}};
  draft.follows = {"1.0 % of what was sold, and the fixed part, 40 CFR 280.43(a): 0.01 × {} + {} = {}",
                   {{throughput, Quantity::volume},
                    {fixed, Quantity::volume},
                    {studies::monthly_limit(throughput), Quantity::volume}}};
  return choose_value(std::move(draft), {studies::monthly_limit(throughput), Quantity::volume},
                      {{0.01 * throughput, "1.0 % alone, without the 130 gal."},
                       {fixed, "The 130 gal alone, without the 1.0 %."},
                       {0.005 * throughput + fixed, "0.5 %, by another rule for meters."},
                       {0.01 * sold_in_a_month(ground.site) + fixed, "Of all products together."}},
                      chance);
}

/// What makes a month short by itself.
struct Shortage {
  std::string words;
  double amount = 0.0;  ///< [m3]
  Phrase law;           ///< without what it comes to
};

Asked short_month(const Ground& ground, Chance& chance) {
  const site::Throughput* sold = some_sold(ground, chance);
  if (sold == nullptr) return left_out("what is sold in a month is not entered: enter operations.throughput");
  const double throughput = sold->per_month->likely.si();
  const double month = to_si(30.0, "d");
  std::vector<Shortage> causes{
      {"its meters give 0.3 % more than they show",
       0.003 * throughput,
       {"0.003 × {}", {{throughput, Quantity::volume}}}},
      {"its tank or line leaks 0.2 gph all month, 30 days",
       to_si(0.2, "gal/h") * month,
       {"{} × {}", {{to_si(0.2, "gal/h"), Quantity::leak}, {month, Quantity::time}}}},
      {"its line leaks 3 gph for one day of 24 hours",
       to_si(3.0, "gal/h") * to_si(24.0, "h"),
       {"{} × {}", {{to_si(3.0, "gal/h"), Quantity::leak}, {to_si(24.0, "h"), Quantity::time}}}}};
  if (ground.studied.vapor) {
    for (const studies::StockChange& change : ground.studied.vapor->care.stock) {
      const site::Tank* tank = tank_of(ground.site, change.tank);
      if (tank != nullptr && tank->product.text == sold->product.text && change.factor && *change.factor < 1.0) {
        causes.push_back({"every load came as warm as that of the delivery entered",
                          (1.0 - *change.factor) * throughput,
                          {"{} × {}", {{1.0 - *change.factor, Quantity::share}, {throughput, Quantity::volume}}}});
        break;
      }
    }
  }
  chance.shuffle(causes);
  const Shortage truth = causes.front();
  std::vector<Option> wrong;
  std::vector<double> told{truth.amount};
  Phrase others{"The others make", {}};
  for (const Shortage& one : causes) {
    const bool apart = std::all_of(told.begin(), told.end(), [&](double amount) {
      return std::abs(one.amount - amount) > 0.35 * std::max(one.amount, amount);
    });
    if (!apart) continue;
    told.push_back(one.amount);
    wrong.push_back({{one.words, {}}, false, "That alone makes another shortage."});
    others.words += others.values.empty() ? " {}" : ", {}";
    others.values.push_back({one.amount, Quantity::volume});
  }
  Question draft;
  draft.at = sold->product.text;
  draft.asks = {"{} of " + draft.at +
                    " were sold in a month of 30 days, and the book is short by {}. One cause makes all of it. Which?",
                {{throughput, Quantity::volume}, {truth.amount, Quantity::volume}}};
  draft.explains = {
      "It is {} of what was sold. A cause that fits is not yet a proof: it takes a second reading, and a duty "
      "to report does not wait for it.",
      {{truth.amount / throughput, Quantity::share}}};
  draft.follows = {others.words + "; this one: " + truth.law.words + " = {}", std::move(others.values)};
  draft.follows.values.insert(draft.follows.values.end(), truth.law.values.begin(), truth.law.values.end());
  draft.follows.values.push_back({truth.amount, Quantity::volume});
  return choose_words(std::move(draft), {truth.words, {}}, wrong, chance);
}

Asked volume_when_cooled(const Ground& ground, Chance& chance) {
  if (!ground.studied.vapor) return left_out("no tank is entered");
  const studies::StockChange* change = pick(those(ground.studied.vapor->care.stock,
                                                  [](const studies::StockChange& one) {
                                                    return one.change && one.delivered && one.delivered_at &&
                                                           one.stored_at &&
                                                           std::abs(*one.delivered_at - *one.stored_at) > 2.0;
                                                  }),
                                            chance);
  if (change == nullptr) return left_out("no load comes at another temperature than the tank's: enter its temperature");
  const double lost = std::abs(*change->change);
  const double difference = std::abs(*change->delivered_at - *change->stored_at);
  Question draft;
  draft.at = change->tank;
  draft.asks = {"{} come at {} into tank " + change->tank +
                    " at {}. By how much does their volume change until they are as the tank?",
                {{*change->delivered, Quantity::volume},
                 {*change->delivered_at, Quantity::temperature},
                 {*change->stored_at, Quantity::temperature}}};
  draft.explains = {"It becomes {} of what was bought. Nothing leaked.", {{*change->factor, Quantity::share}}};
  const double by = *change->change / *change->delivered;
  draft.follows = {"Its volume, by what the table of petroleum measurement tells for both temperatures: {} × {} = {}",
                   {{*change->delivered, Quantity::volume}, {std::abs(by), Quantity::share}, {lost, Quantity::volume}}};
  return choose_value(std::move(draft), {lost, Quantity::volume},
                      {{1.8 * lost, "Degrees Fahrenheit with an expansion for degrees Celsius."},
                       {2.1e-4 * difference * *change->delivered, "The expansion of water."},
                       {0.01 * *change->delivered, "1 %, by a rule of thumb."},
                       {0.01 * difference / to_si(15.0, "degF", Datum::difference) * *change->delivered,
                        "1 % for each 15 °F, a rule of thumb for gasoline alone."}},
                      chance, 0.08);
}

}  // namespace

std::vector<QuestionKind> meter_questions() {
  return {
      {"filter-with-two-hoses", Form::choice, 2, "filter", filter_with_two_hoses},
      {"slow-hose", Form::fault, 2, "filter", slow_hose},
      {"meter-gives-away", Form::choice, 1, "meter", meter_gives_away},
      {"monthly-limit", Form::choice, 1, "meter", monthly_limit},
      {"short-month", Form::fault, 3, "meter", short_month},
      {"volume-when-cooled", Form::choice, 2, "price", volume_when_cooled},
  };
}

}  // namespace forecourse::lesson
