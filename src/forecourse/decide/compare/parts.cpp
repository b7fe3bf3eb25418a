#include "forecourse/decide/compare/parts.h"

#include <algorithm>

#include "forecourse/site/places.h"

namespace forecourse::decide {
namespace {

template <class Parts>
void add(std::vector<OnePart>& out, const char* kind, const Parts& parts) {
  for (const auto& part : parts) out.push_back({kind, part.id.text});
}

}  // namespace

std::vector<OnePart> parts_of(const site::Site& site) {
  std::vector<OnePart> out;
  add(out, "product", site.products);
  add(out, "tank", site.tanks);
  add(out, "pump", site.pumps);
  add(out, "line", site.lines);
  add(out, "branch", site.branches);
  add(out, "dispenser", site.dispensers);
  for (const site::Dispenser& dispenser : site.dispensers) {
    for (const site::Inlet& inlet : dispenser.inlets) out.push_back({"inlet", site::place_name(dispenser, inlet)});
    add(out, "hose", dispenser.hoses);
  }
  return out;
}

std::vector<OnePart> parts_only_in(const site::Site& site, const site::Site& other) {
  const std::vector<OnePart> others = parts_of(other);
  std::vector<OnePart> out = parts_of(site);
  std::erase_if(out, [&](const OnePart& p) { return std::find(others.begin(), others.end(), p) != others.end(); });
  return out;
}

}  // namespace forecourse::decide
