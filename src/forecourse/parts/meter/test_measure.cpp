#include "forecourse/parts/meter/test_measure.h"

#include "forecourse/base/api_units.h"

namespace forecourse::parts {

double mild_steel_measure_expansion() { return per_kelvin_from_per_fahrenheit(0.0000186); }
double stainless_measure_expansion() { return per_kelvin_from_per_fahrenheit(0.0000265); }

}  // namespace forecourse::parts
