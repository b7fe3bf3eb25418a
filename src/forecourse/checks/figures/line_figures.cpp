#include "forecourse/checks/figures/figure.h"

namespace forecourse::checks {

std::vector<Figure> line_figures() { return {}; }

}  // namespace forecourse::checks
