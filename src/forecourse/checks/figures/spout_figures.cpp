#include "forecourse/checks/figures/each_part.h"

namespace forecourse::checks {
namespace {

std::optional<bool> delivers_gasoline(const site::Site& site, const site::Hose& hose) {
  if (hose.blend.empty()) return is_gasoline(product_of(site, hose.product));
  return any_is(hose.blend,
                [&](const site::BlendShare& share) { return is_gasoline(product_of(site, share.product)); });
}

std::vector<FigureAt> each_spout(const Facts& facts, site::Maybe<Length> site::Spout::*size, const char* enter) {
  return each_hose(facts, [&](const site::Dispenser&, const site::Hose& hose) {
    const std::optional<bool> gasoline = delivers_gasoline(facts.site, hose);
    FigureAt out = entered_amount(hose.id.text, hose.spout ? hose.spout->where : hose.where,
                                  hose.spout ? (*hose.spout).*size : std::nullopt, enter);
    if (!gasoline) {
      out.value.reset();
      out.enter = "enter kind of the product";
    } else if (!*gasoline) {
      out.exempt = "it delivers no gasoline";
    }
    return out;
  });
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
