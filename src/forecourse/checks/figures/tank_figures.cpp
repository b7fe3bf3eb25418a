#include "forecourse/checks/figures/figure.h"

namespace forecourse::checks {

std::vector<Figure> tank_figures() { return {}; }

}  // namespace forecourse::checks
