#include <algorithm>

#include "forecourse/checks/figures/figure.h"

namespace forecourse::checks {
namespace {

bool is_gasoline(const site::Site& site, const std::string& product) {
  return std::any_of(site.products.begin(), site.products.end(), [&](const site::Product& one) {
    return one.id.text == product && one.kind.text.starts_with("gasoline");
  });
}

bool delivers_gasoline(const site::Site& site, const site::Hose& hose) {
  return is_gasoline(site, hose.product.text) ||
         std::any_of(hose.blend.begin(), hose.blend.end(),
                     [&](const site::BlendShare& share) { return is_gasoline(site, share.product.text); });
}

std::vector<FigureAt> each_spout(const Facts& facts, site::Maybe<Length> site::Spout::*size, const char* enter) {
  std::vector<FigureAt> out;
  for (const site::Dispenser& dispenser : facts.site.dispensers) {
    for (const site::Hose& hose : dispenser.hoses) {
      out.push_back(entered_amount(hose.id.text, hose.spout ? hose.spout->where : hose.where,
                                   hose.spout ? (*hose.spout).*size : std::nullopt, enter));
      if (!delivers_gasoline(facts.site, hose)) out.back().exempt = "it delivers no gasoline";
    }
  }
  return out;
}

std::vector<FigureAt> diameter(const Facts& facts) {
  return each_spout(facts, &site::Spout::diameter, "enter spout of the hose, with diameter");
}

std::vector<FigureAt> straight(const Facts& facts) {
  return each_spout(facts, &site::Spout::straight, "enter spout of the hose, with straight");
}

std::vector<FigureAt> spring(const Facts& facts) {
  return each_spout(facts, &site::Spout::spring, "enter spout of the hose, with spring");
}

}  // namespace

std::vector<Figure> spout_figures() {
  return {
      length_figure("spout-diameter", "outside diameter of a gasoline spout at its tip", diameter),
      length_figure("spout-straight", "length of the straight part of a gasoline spout", straight),
      length_figure("spout-spring", "distance from the tip of a gasoline spout to where its spring ends", spring),
  };
}

}  // namespace forecourse::checks
