#include "forecourse/studies/flow/uncertain.h"

#include <cstdint>
#include <iterator>
#include <map>

namespace forecourse::studies {
namespace {

template <class Part>
void mark(std::map<std::uint32_t, bool>& starts, const std::vector<Part>& parts, bool moves_flow) {
  for (const Part& part : parts) starts[part.where.begin] = moves_flow;
}

/// Where each part of the file begins, and whether its values can move a flow.
std::map<std::uint32_t, bool> starts_of(const site::Site& site) {
  std::map<std::uint32_t, bool> starts;
  mark(starts, site.products, true);
  mark(starts, site.tanks, true);
  mark(starts, site.pumps, true);
  mark(starts, site.lines, true);
  mark(starts, site.branches, true);
  mark(starts, site.dispensers, true);
  mark(starts, site.controls, true);
  mark(starts, site.emergency_stops, false);
  mark(starts, site.interlocks, false);
  mark(starts, site.deliveries, false);
  if (site.operations) starts[site.operations->where.begin] = false;
  if (site.flow.where.end > 0) starts[site.flow.where.begin] = false;
  return starts;
}

}  // namespace

std::vector<SourceSpan> uncertain_in_flow(const site::Site& site) {
  const std::map<std::uint32_t, bool> starts = starts_of(site);
  std::vector<SourceSpan> out;
  for (const SourceSpan& value : site.uncertain) {
    auto part = starts.upper_bound(value.begin);
    const bool before_all = part == starts.begin();
    if (before_all || std::prev(part)->second) out.push_back(value);
  }
  return out;
}

}  // namespace forecourse::studies
