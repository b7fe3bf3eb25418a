#include <algorithm>

#include "forecourse/base/unit_text.h"
#include "forecourse/checks/figures/each_part.h"

namespace forecourse::checks {
namespace {

/// Of dispensers that are entered as accessible: each that has `access`.
template <class Read>
std::vector<FigureAt> each_place(const Facts& facts, Read read) {
  std::vector<FigureAt> out;
  for (const site::Dispenser& one : facts.site.dispensers) {
    if (one.access) out.push_back(read(one.id.text, *one.access));
  }
  return out;
}

template <class Q, site::Maybe<Q> site::AccessPlace::*Member>
std::vector<FigureAt> measured(const Facts& facts) {
  return each_place(facts, [](const std::string& id, const site::AccessPlace& place) {
    return entered_amount(id, place.where, place.*Member, "enter all sizes of access at the dispenser");
  });
}

std::vector<FigureAt> existing_curb(const Facts& facts) {
  return each_place(facts, [](const std::string& id, const site::AccessPlace& place) {
    return entered_fact(id, place.where, place.existing_curb, "enter existing_curb of access at the dispenser");
  });
}

/// Whether all that is operated at a place is in reach from the side.
/// \source [ada_2010, 308.3.1]
std::optional<bool> in_reach(const site::AccessPlace& place) {
  if (!place.highest || !place.lowest || !place.reach_over || !place.existing_curb) return std::nullopt;
  const double rounding = 1e-9;
  const double high = to_si(*place.existing_curb ? 54.0 : 48.0, "in");
  return place.highest->likely.si() <= high + rounding && place.lowest->likely.si() >= to_si(15.0, "in") - rounding &&
         place.reach_over->likely.si() <= to_si(10.0, "in") + rounding;
}

bool sells(const site::Hose& hose, const site::Product& product) {
  return hose.product == product.id || std::any_of(hose.blend.begin(), hose.blend.end(),
                                                   [&](const auto& share) { return share.product == product.id; });
}

/// Of each product that is sold: whether somebody in a wheelchair can fuel it at one place at least.
std::vector<FigureAt> product_in_reach(const Facts& facts) {
  std::vector<FigureAt> out;
  for (const site::Product& product : facts.site.products) {
    bool sold = false;
    bool open = false;
    bool reached = false;
    for (const site::Dispenser& one : facts.site.dispensers) {
      if (std::none_of(one.hoses.begin(), one.hoses.end(), [&](const auto& hose) { return sells(hose, product); })) {
        continue;
      }
      sold = true;
      const std::optional<bool> reach = one.access ? in_reach(*one.access) : std::nullopt;
      open = open || !reach;
      reached = reached || reach.value_or(false);
    }
    if (!sold) continue;
    out.push_back(entered_fact(product.id.text, product.where, reached || !open ? site::Fact(reached) : std::nullopt,
                               "enter access of the dispensers that sell it"));
  }
  return out;
}

}  // namespace

std::vector<Figure> access_figures() {
  using site::AccessPlace;
  return {
      amount_figure<Length>("access-highest", "highest part to operate, above the way of the vehicles", "m",
                            measured<Length, &AccessPlace::highest>),
      amount_figure<Length>("access-lowest", "lowest part to operate, above the way of the vehicles", "m",
                            measured<Length, &AccessPlace::lowest>),
      amount_figure<Length>("access-reach-over", "depth of what is reached over", "m",
                            measured<Length, &AccessPlace::reach_over>),
      amount_figure<Length>("access-floor-length", "length of the clear floor", "m",
                            measured<Length, &AccessPlace::floor_length>),
      amount_figure<Length>("access-floor-width", "width of the clear floor", "m",
                            measured<Length, &AccessPlace::floor_width>),
      amount_figure<Ratio>("access-slope", "slope of the clear floor", "share", measured<Ratio, &AccessPlace::slope>),
      fact_figure("access-existing-curb", "a curb that was there before", existing_curb),
      fact_figure("product-in-reach", "a place where a wheelchair user fuels it", product_in_reach),
  };
}

}  // namespace forecourse::checks
