#include "forecourse/site/drawn_length.h"

#include <cmath>

#include "forecourse/site/places.h"

namespace forecourse::site {

std::optional<DefaultUsed> drawn_length(const Site& site, const Line& line) {
  if (line.pipe.length) return std::nullopt;
  const auto from = position_at(site, line.from.text);
  const auto to = position_at(site, line.to.text);
  if (!from || !to) return std::nullopt;
  return DefaultUsed{"length of line " + line.id.text,
                     std::hypot(to->x.si() - from->x.si(), to->y.si() - from->y.si()),
                     "m",
                     DefaultStatus::computed,
                     "straight distance on the plan",
                     {}};
}

}  // namespace forecourse::site
