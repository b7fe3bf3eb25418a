#include "forecourse/checks/figures/figure.h"

namespace forecourse::checks {

std::vector<Figure> equipment_figures() { return {}; }

}  // namespace forecourse::checks
