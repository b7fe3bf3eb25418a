#include "forecourse/studies/flow/flow_cap.h"

#include <algorithm>

#include "forecourse/base/flow_coefficient.h"
#include "forecourse/site/rules/is_under.h"

namespace forecourse::studies {

std::optional<FlowCap> flow_cap(const site::Site& site, const std::string& product) {
  const auto found = std::find_if(site.products.begin(), site.products.end(),
                                  [&](const site::Product& p) { return p.id.text == product; });
  if (!site::is_under(site, "us-federal") || found == site.products.end() || found->kind.text.rfind("gasoline", 0) != 0)
    return std::nullopt;
  return FlowCap{10.0 * flow_coefficients::us_gallon / 60.0, "40 CFR 1090.1550(b)"};
}

}  // namespace forecourse::studies
