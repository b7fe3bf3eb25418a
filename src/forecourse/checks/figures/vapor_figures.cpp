#include "forecourse/checks/figures/figure.h"

namespace forecourse::checks {
namespace {

/// Of the station: whether the part of the rule for a throughput of 100,000 gal a month and more applies.
std::vector<FigureAt> top_tier(const Facts& facts) {
  FigureAt out;
  out.subject = "station";
  if (facts.site.operations) out.where = facts.site.operations->where;
  if (facts.vapor != nullptr && facts.vapor->tier) {
    out.fact = *facts.vapor->tier == parts::ThroughputTier::from_100000;
  } else {
    out.enter = "enter operations.throughput, the sum of the last 365 days over 12, and kind of each product";
  }
  return {std::move(out)};
}

/// Of a vapor return that is not of the rule's own kind.
std::vector<FigureAt> efficiency(const Facts& facts) {
  std::vector<FigureAt> out;
  for (const site::Tank& tank : facts.site.tanks) {
    if (!tank.vapor_return) continue;
    out.push_back(entered_amount(tank.id.text, tank.vapor_return->where, tank.vapor_return->efficiency,
                                 "enter efficiency of the vapor return"));
  }
  return out;
}

std::vector<FigureAt> alternative(const Facts& facts) {
  std::vector<FigureAt> out;
  for (const site::Tank& tank : facts.site.tanks) {
    if (!tank.vapor_return) continue;
    out.push_back(entered_fact(tank.id.text, tank.vapor_return->where, tank.vapor_return->alternative,
                               "enter alternative of the vapor return"));
  }
  return out;
}

std::vector<FigureAt> each_delivery(const Facts& facts, site::Fact site::Delivery::*fact, const char* enter) {
  std::vector<FigureAt> out;
  for (const site::Delivery& delivery : facts.site.deliveries) {
    out.push_back(
        entered_fact(delivery.id.empty() ? "delivery" : delivery.id.text, delivery.where, delivery.*fact, enter));
  }
  return out;
}

std::vector<FigureAt> proof(const Facts& facts) {
  return each_delivery(facts, &site::Delivery::tightness_proof, "enter tightness_proof of the delivery");
}

std::vector<FigureAt> hoses(const Facts& facts) {
  return each_delivery(facts, &site::Delivery::tight_hoses, "enter tight_hoses of the delivery");
}

}  // namespace

std::vector<Figure> vapor_figures() {
  return {
      fact_figure("vapor-top-tier", "a throughput of gasoline of 100,000 gal a month or more", top_tier),
      fact_figure("vapor-return-alternative", "a vapor return of another kind than the rule lists", alternative),
      {"vapor-return-efficiency", "share of the displaced vapor that goes back to the tanker", FigureKind::amount,
       &Ratio::kind(), "share", Measured::vapor, efficiency},
      fact_figure("tanker-tightness-proof", "the driver carries proof of the tanker's vapor tightness test", proof),
      fact_figure("tanker-tight-hoses", "vapor hoses and couplers of the tanker are tight", hoses),
  };
}

}  // namespace forecourse::checks
