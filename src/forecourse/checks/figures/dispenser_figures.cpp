#include "forecourse/checks/figures/figure.h"
#include "forecourse/site/places.h"

namespace forecourse::checks {
namespace {

template <class Read>
std::vector<FigureAt> each_shear_valve(const Facts& facts, Read read) {
  std::vector<FigureAt> out;
  for (const site::Dispenser& dispenser : facts.site.dispensers) {
    for (const site::Inlet& inlet : dispenser.inlets) {
      if (inlet.shear_valve) out.push_back(read(site::place_name(dispenser, inlet), *inlet.shear_valve));
    }
  }
  return out;
}

/// Inlets are fed by submersible pumps: a suction system is not described by a site file.
std::vector<FigureAt> shear_valve_fitted(const Facts& facts) {
  std::vector<FigureAt> out;
  for (const site::Dispenser& dispenser : facts.site.dispensers) {
    for (const site::Inlet& inlet : dispenser.inlets) {
      FigureAt one;
      one.subject = site::place_name(dispenser, inlet);
      one.where = inlet.where;
      one.fact = inlet.shear_valve.has_value();
      out.push_back(std::move(one));
    }
  }
  return out;
}

std::vector<FigureAt> shear_valve_tested(const Facts& facts) {
  return each_shear_valve(facts, [](std::string id, const site::ShearValve& valve) {
    return entered_day(std::move(id), valve.where, valve.tested, "enter tested of the shear valve");
  });
}

}  // namespace

std::vector<Figure> dispenser_figures() {
  return {
      {"shear-valve-fitted", "a shear valve under the dispenser", FigureKind::fact, nullptr, "", Measured::fuel,
       shear_valve_fitted},
      {"shear-valve-tested", "last trip test of a shear valve", FigureKind::day, nullptr, "", Measured::age,
       shear_valve_tested},
  };
}

}  // namespace forecourse::checks
