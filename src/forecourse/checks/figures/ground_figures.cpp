#include "forecourse/checks/figures/figure.h"

namespace forecourse::checks {

std::vector<Figure> ground_figures() { return {}; }

}  // namespace forecourse::checks
