#include "forecourse/checks/figures/figure.h"

namespace forecourse::checks {
namespace {

template <class Read>
std::vector<FigureAt> each_hose(const Facts& facts, Read read) {
  std::vector<FigureAt> out;
  for (const site::Dispenser& dispenser : facts.site.dispensers) {
    for (const site::Hose& hose : dispenser.hoses) out.push_back(read(hose));
  }
  return out;
}

std::vector<FigureAt> hose_length(const Facts& facts) {
  return each_hose(facts, [](const site::Hose& hose) {
    FigureAt out;
    out.subject = hose.id.text;
    out.where = hose.where;
    double length = 0.0;
    bool known = hose.curb.has_value();
    for (const auto* part : {&hose.whip, &hose.curb}) {
      if (!*part) continue;
      known = known && (*part)->length;
      if ((*part)->length) length += (*part)->length->likely.si();
    }
    if (known) {
      out.value = length;
    } else {
      out.enter = "enter the length of whip and curb of the hose";
    }
    return out;
  });
}

std::vector<FigureAt> breakaway_fitted(const Facts& facts) {
  return each_hose(facts, [](const site::Hose& hose) {
    FigureAt out;
    out.subject = hose.id.text;
    out.where = hose.where;
    // With a lumped loss the parts of a hose are not listed.
    if (hose.breakaway || hose.parting || !hose.loss) {
      out.fact = hose.breakaway || hose.parting;
    } else {
      out.enter = "enter breakaway of the hose; its parts are not listed one by one";
    }
    return out;
  });
}

/// Whether both ends of a parted breakaway shut.
std::vector<FigureAt> breakaway_retains(const Facts& facts) {
  return each_hose(facts, [](const site::Hose& hose) {
    FigureAt out;
    out.subject = hose.id.text;
    out.where = hose.parting ? hose.parting->where : hose.where;
    if (hose.parting && hose.parting->poppet) {
      out.fact = hose.parting->poppet->value == site::Poppet::double_poppet;
    } else {
      out.enter = "enter parting = { poppet = ... } of the hose";
    }
    return out;
  });
}

}  // namespace

std::vector<Figure> hose_figures() {
  return {
      {"hose-length", "length of a hose, whip and curb together", FigureKind::amount, &Length::kind(), "m",
       Measured::fuel, hose_length},
      {"breakaway-fitted", "a breakaway on the hose", FigureKind::fact, nullptr, "", Measured::fuel, breakaway_fitted},
      {"breakaway-retains", "both ends of the parted breakaway shut", FigureKind::fact, nullptr, "", Measured::fuel,
       breakaway_retains},
  };
}

}  // namespace forecourse::checks
