#include <algorithm>

#include "forecourse/checks/figures/each_part.h"
#include "forecourse/checks/figures/tested.h"

namespace forecourse::checks {
namespace {

std::vector<FigureAt> installed(const Facts& facts) {
  return each_tank_not_above_ground(facts, [](const site::Tank& tank) {
    return entered_day(tank.id.text, tank.where, tank.installed, "enter installed of the tank");
  });
}

std::vector<FigureAt> double_wall(const Facts& facts) {
  return each_tank_not_above_ground(facts, [](const site::Tank& tank) {
    return entered_fact(tank.id.text, tank.where, tank.double_wall, "enter double_wall of the tank");
  });
}

const studies::TankTold* told_of(const Facts& facts, const site::Tank& tank) {
  if (facts.tank == nullptr) return nullptr;
  const auto& all = facts.tank->tanks;
  const auto found = std::find_if(all.begin(), all.end(), [&](const auto& one) { return one.id == tank.id.text; });
  return found == all.end() || !found->problem.empty() ? nullptr : &*found;
}

/// As entered, else by the shape.
std::vector<FigureAt> capacity(const Facts& facts) {
  return each_tank_not_above_ground(facts, [&](const site::Tank& tank) {
    FigureAt out = entered_amount(tank.id.text, tank.where, tank.capacity, "enter capacity of the tank");
    const studies::TankTold* told = told_of(facts, tank);
    if (!out.value && told != nullptr) out.value = told->capacity;
    return out;
  });
}

// Products

constexpr double most_ethanol = 0.10;    ///< \source [cfr_280, 280.32(b)]
constexpr double most_biodiesel = 0.20;  ///< \source [cfr_280, 280.32(b)]

/// Whether a product has more of either than the rule lets pass: by its shares as entered, else as its kind is called.
std::optional<bool> is_high_blend(const site::Product& product) {
  if (product.ethanol && product.ethanol->likely.si() > most_ethanol) return true;
  if (product.biodiesel && product.biodiesel->likely.si() > most_biodiesel) return true;
  if (product.ethanol && product.biodiesel) return false;
  const std::string& kind = product.kind.text;
  const auto is_one_of = [&](std::initializer_list<const char*> words) {
    return std::find(words.begin(), words.end(), kind) != words.end();
  };
  const bool of_gasoline = is_one_of({"gasoline-e0", "gasoline-e5", "gasoline-e10"});
  if (of_gasoline || is_one_of({"diesel-b0", "diesel-b5", "diesel-b7", "diesel-b20"})) return false;
  const bool by_shares = product.ethanol.has_value();
  if (!by_shares && is_one_of({"gasoline-e15", "e85", "ethanol"})) return true;
  return std::nullopt;
}

std::vector<std::string> products_of(const site::Tank& tank) {
  if (tank.compartments.empty()) return {tank.product.text};
  std::vector<std::string> out;
  for (const site::Compartment& one : tank.compartments) out.push_back(one.product.text);
  return out;
}

/// Whether a tank holds more ethanol or biodiesel than the rule lets pass; empty where that is not known.
std::optional<bool> holds_high_blend(const Facts& facts, const site::Tank& tank) {
  bool known = true;
  for (const std::string& id : products_of(tank)) {
    const auto& all = facts.site.products;
    const auto found = std::find_if(all.begin(), all.end(), [&](const auto& one) { return one.id.text == id; });
    const std::optional<bool> high = found == all.end() ? std::nullopt : is_high_blend(*found);
    if (high.value_or(false)) return true;
    known = known && high;
  }
  return known ? std::optional(false) : std::nullopt;
}

std::vector<FigureAt> high_blend(const Facts& facts) {
  return each_tank_not_above_ground(facts, [&](const site::Tank& tank) {
    return entered_fact(tank.id.text, tank.where, holds_high_blend(facts, tank),
                        "enter ethanol and biodiesel of the product");
  });
}

std::vector<FigureAt> compatible(const Facts& facts) {
  return each_tank_not_above_ground(facts, [](const site::Tank& tank) {
    return entered_fact(tank.id.text, tank.where, tank.compatible, "enter compatible of the tank");
  });
}

/// Of a tank that was changed over to its product.
std::vector<FigureAt> notice(const Facts& facts) {
  std::vector<FigureAt> out;
  for (const site::Tank& tank : facts.site.tanks) {
    if (!tank.changed) continue;
    FigureAt one;
    one.subject = tank.id.text;
    one.where = tank.changed->where;
    if (tank.notified && days_between(*tank.notified, facts.today) < 0) {
      one.enter = "correct notified of the tank, which is yet to come; else give the notice";
    } else if (tank.notified) {
      one.value = seconds_of_days(days_between(*tank.notified, *tank.changed));
    } else {
      one.enter = "enter notified of the tank";
    }
    if (is_above_ground(tank)) one.exempt = above_ground;
    out.push_back(std::move(one));
  }
  return out;
}

// Lining and protection, of the tanks that have them

template <class Has, class Read>
std::vector<FigureAt> each_with(const Facts& facts, Has has, Read read) {
  std::vector<FigureAt> out;
  for (const site::Tank& tank : facts.site.tanks) {
    if (!has(tank)) continue;
    out.push_back(read(tank));
    if (is_above_ground(tank)) out.back().exempt = above_ground;
  }
  return out;
}

std::vector<FigureAt> lined(const Facts& facts) {
  return each_with(
      facts, [](const site::Tank& tank) { return tank.lined || tank.inspected_inside; },
      [](const site::Tank& tank) {
        return entered_day(tank.id.text, tank.where, tank.lined, "enter lined of the tank");
      });
}

std::vector<FigureAt> inspected_inside(const Facts& facts) {
  return each_with(
      facts, [](const site::Tank& tank) { return tank.lined.has_value(); },
      [&](const site::Tank& tank) {
        return last_looked(facts, tank.id.text, tank.where, tank.inspected_inside, {"inside", {tank.id.text}, true},
                           "enter inspected_inside of the tank");
      });
}

bool is_protected(const site::Tank& tank) { return tank.protection.has_value(); }

template <const char* word>
std::vector<FigureAt> sound_by(const Facts& facts) {
  return each_with(facts, is_protected, [](const site::Tank& tank) {
    const site::Name& by = tank.protection->sound_by;
    return entered_fact(tank.id.text, tank.protection->where,
                        by.empty() ? std::nullopt : std::optional(by.text == word),
                        "enter sound_by of the tank's protection");
  });
}
constexpr char by_inspection[] = "inspection";
constexpr char by_tests[] = "tests";

/// Its limit is a day short of ten years: the rule says less than ten.
std::vector<FigureAt> age_at_protection(const Facts& facts) {
  return each_with(facts, is_protected, [](const site::Tank& tank) {
    FigureAt out;
    out.subject = tank.id.text;
    out.where = tank.protection->where;
    if (tank.installed && tank.protection->since) {
      out.value = seconds_of_days(days_between(*tank.installed, *tank.protection->since));
      out.at_most = seconds_of_days(days_between(*tank.installed, later(*tank.installed, {10, 0, 0})) - 1);
    } else {
      out.enter = "enter installed of the tank and since of its protection";
    }
    return out;
  });
}

/// From three to six months, counted by the calendar.
std::vector<FigureAt> second_test(const Facts& facts) {
  return each_with(facts, is_protected, [](const site::Tank& tank) {
    const site::Protection& protection = *tank.protection;
    FigureAt out;
    out.subject = tank.id.text;
    out.where = protection.where;
    if (protection.since && protection.tightness_test) {
      const auto days_after = [&](const site::Date& day) {
        return seconds_of_days(days_between(*protection.since, day));
      };
      out.value = days_after(*protection.tightness_test);
      out.at_least = days_after(later(*protection.since, {0, 3, 0}));
      out.at_most = days_after(later(*protection.since, {0, 6, 0}));
    } else {
      out.enter = "enter since and tightness_test of the tank's protection";
    }
    return out;
  });
}

}  // namespace

std::vector<Figure> tank_figures() {
  return {
      day_figure("tank-installed", "day on which a tank was installed", installed),
      fact_figure("tank-double-wall", "two walls of a tank", double_wall),
      {"tank-capacity", "capacity of a tank", FigureKind::amount, &Volume::kind(), "m3", Measured::fuel, capacity},
      fact_figure("tank-high-blend", "more than 10 % ethanol or 20 % biodiesel in a tank", high_blend),
      fact_figure("tank-compatible", "proof that the tank's system is compatible with what it holds", compatible),
      time_figure("tank-change-notice", "time from notice to the authority to the change of a tank's product", notice),
      day_figure("tank-lined", "day on which a tank was lined", lined),
      day_figure("tank-inspected-inside", "last inspection of the inside of a lined tank", inspected_inside),
      fact_figure("protected-tank-inspected", "a tank was inspected inside before it was protected",
                  sound_by<by_inspection>),
      fact_figure("protected-tank-tested", "a tank was tested twice for tightness when it was protected",
                  sound_by<by_tests>),
      time_figure("protected-tank-age", "age of a tank when its protection first ran", age_at_protection),
      time_figure("protected-tank-second-test", "time from the first run of a tank's protection to its tightness test",
                  second_test),
  };
}

}  // namespace forecourse::checks
