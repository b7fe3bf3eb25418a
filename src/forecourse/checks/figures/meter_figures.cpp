#include <algorithm>
#include <optional>
#include <set>

#include "forecourse/checks/figures/each_part.h"
#include "forecourse/checks/figures/figure.h"
#include "forecourse/checks/figures/hose_flow.h"
#include "forecourse/checks/rules/period.h"

namespace forecourse::checks {
namespace {

/// The meter of a hose: its own, else that of the inlet of its product. Null where neither is listed.
const site::Part* meter_of(const site::Hose& hose, const site::Dispenser& dispenser) {
  if (hose.meter) return &*hose.meter;
  for (const site::Inlet& inlet : dispenser.inlets) {
    if (inlet.meter && inlet.product == hose.product) return &*inlet.meter;
  }
  return nullptr;
}

template <class Read>
std::vector<FigureAt> each_meter(const Facts& facts, Read read) {
  std::vector<FigureAt> out;
  each_hose_of(facts.site, [&](const site::Hose& hose, const site::Dispenser& dispenser) {
    if (const site::Part* meter = meter_of(hose, dispenser)) out.push_back(read(hose, *meter));
  });
  return out;
}

std::vector<FigureAt> meter_class(const Facts& facts) {
  return each_meter(facts, [](const site::Hose& hose, const site::Part& meter) {
    FigureAt out;
    out.subject = hose.id.text;
    out.where = meter.where;
    if (meter.accuracy_class) {
      out.value = meter.accuracy_class->likely;
    } else {
      out.enter = "enter accuracy_class of the meter, as it is marked";
    }
    return out;
  });
}

/// The later of what the site file and the records tell.
std::vector<FigureAt> meter_proved(const Facts& facts) {
  return each_meter(facts, [&](const site::Hose& hose, const site::Part& meter) {
    std::optional<site::Date> last = meter.tested;
    if (facts.records != nullptr) {
      for (const site::records::Proving& one : facts.records->provings) {
        if (one.hose == hose.id && (!last || days_between(*last, one.at.day) > 0)) last = one.at.day;
      }
    }
    return entered_day(hose.id.text, meter.where, last, "enter tested of the meter");
  });
}

}  // namespace

std::vector<Figure> meter_figures() {
  const QuantityKind* const flow = &VolumeFlow::kind();
  constexpr auto amount = FigureKind::amount;
  constexpr auto fuel = Measured::fuel;
  return {
      {"hose-flow-alone", "flow of a hose while no other is open", amount, flow, "m3/s", fuel,
       hose_flow<HoseFlowState::alone>},
      {"hose-flow-one-each", "flow of a hose with one open at each dispenser", amount, flow, "m3/s", fuel,
       hose_flow<HoseFlowState::one_each>},
      {"hose-flow-all-open", "flow of a hose with all open", amount, flow, "m3/s", fuel,
       hose_flow<HoseFlowState::all_open>},
      {"hose-flow-most", "the largest flow of a hose", amount, flow, "m3/s", fuel, hose_flow<HoseFlowState::most>},
      {"hose-flow-least", "the smallest flow of a hose", amount, flow, "m3/s", fuel, hose_flow<HoseFlowState::least>},
      {"meter-class", "accuracy class of a meter", amount, nullptr, "", fuel, meter_class},
      {"meter-proved", "last proving of a meter", FigureKind::day, nullptr, "", Measured::age, meter_proved},
  };
}

}  // namespace forecourse::checks
