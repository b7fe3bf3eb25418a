#include "forecourse/checks/figures/figure.h"

namespace forecourse::checks {

std::vector<Figure> vapor_figures() { return {}; }

}  // namespace forecourse::checks
