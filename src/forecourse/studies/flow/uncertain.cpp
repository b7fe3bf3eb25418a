#include "forecourse/studies/flow/uncertain.h"

#include "forecourse/site/uncertain_values.h"

namespace forecourse::studies {

std::vector<SourceSpan> uncertain_in_flow(const site::Site& site) {
  std::vector<SourceSpan> out;
  for (const site::UncertainValue& value : site::uncertain_values(site)) {
    if (site::can_move_flow(value)) out.push_back(value.where);
  }
  return out;
}

}  // namespace forecourse::studies
