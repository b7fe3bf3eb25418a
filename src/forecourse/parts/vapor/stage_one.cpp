#include "forecourse/parts/vapor/stage_one.h"

#include <array>
#include <cmath>

#include "forecourse/base/constants.h"

namespace forecourse::parts {

ThroughputTier throughput_tier(double per_month) {
  if (per_month < cubic_meters_from_gallons(10000.0)) return ThroughputTier::below_10000;
  return per_month < cubic_meters_from_gallons(100000.0) ? ThroughputTier::from_10000 : ThroughputTier::from_100000;
}

StaticTestConstant static_test_constant(int nozzles) {
  struct Row {
    int up_to;
    StaticTestConstant constant;
  };
  constexpr std::array<Row, 4> rows{
      {{6, {500.887, true}}, {12, {531.614, false}}, {18, {562.455, true}}, {24, {593.412, true}}}};
  for (const Row& row : rows) {
    if (nozzles <= row.up_to) return row.constant;
  }
  return {624.483, true};
}

double static_test_target(const StaticTest& test) {
  const double begun = pascal_from_inches_of_water(2.0);
  return begun * std::exp(-cubic_meters_from_gallons(static_test_constant(test.nozzles).gallons) / test.ullage);
}

double stage_one_efficiency(const EfficiencyTest& test) {
  const double standard = kelvin_from_fahrenheit(70.0);  // as the source fixes it
  const double at_standard = test.vented * standard / test.vapor_temperature * test.barometer / standard_atmosphere;
  return 1.0 - at_standard / test.loaded;
}

}  // namespace forecourse::parts
