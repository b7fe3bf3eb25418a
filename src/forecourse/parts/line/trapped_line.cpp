#include "forecourse/parts/line/trapped_line.h"

namespace forecourse::parts {

double thin_line_yield(double bulk_modulus, double bore, double wall, double modulus) {
  return 1.0 / bulk_modulus + bore / (wall * modulus);
}

double closed_line_yield(double bulk_modulus, double bore, double wall, double modulus, double poisson_ratio) {
  return 1.0 / bulk_modulus + bore / (2.0 * modulus * wall) * (2.5 - 2.0 * poisson_ratio);
}

double pressure_per_degree(double fuel_expansion, double line_expansion, double yield) {
  return (fuel_expansion - line_expansion) / yield;
}

}  // namespace forecourse::parts
