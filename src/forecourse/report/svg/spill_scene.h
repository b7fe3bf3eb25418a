#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/report/svg/text.h"

namespace forecourse::report::svg {

/// The scene of a spill at one moment.
struct SpillMoment {
  std::string time;               ///< "0.10 s"
  std::string words;              ///< what happened
  std::optional<double> in_sump;  ///< share of the sump's volume that is full [1]; empty: no sump
  double pool = 0.0;              ///< radius of the pool over the greatest of all moments [1]
  std::string pool_text;          ///< "12 gal on the slab"
  std::string sump_text;
  double jet_low = 0.0;   ///< least height of the jet over the greatest of all moments [1]
  double jet_high = 0.0;  ///< greatest height, likewise; 0: no jet
  std::string jet_text;
  std::string flow_text;
  bool standing = false;  ///< the dispenser stands
};

struct SpillScene {
  std::string id;  ///< unique in the page
  double width = wide;
  std::string title;
  std::string description;
  std::vector<SpillMoment> moments;  ///< up to four
  bool level = false;                ///< the liquid in the tank stands below the groove; drawn dashed
  std::string tone = "regular";      ///< of the product: "regular", "premium" or "diesel"
};

/// The same cut through island, slab and sump at each moment: line and riser with the shear groove, fuel in the sump,
/// the pool on the slab, the range of the jet's height over the broken end as a whisker, the level of the tank below.
/// Beside each other on a wide page, under each other on a narrow one. Not to scale.
[[nodiscard]] std::string draw(const SpillScene& scene);

/// What a full scale of the moving things stands for. Empty: the scene has no such thing.
struct SpillFull {
  std::optional<double> sump;  ///< [m3] to the brim
  std::optional<double> pool;  ///< [m3] on the slab, at its widest
  std::optional<double> jet;   ///< [m] greatest height
  std::optional<double> flow;  ///< [m3/s] escaping, once it is steady
};

/// The cut once, without words, before anything has happened, for a page that moves it by itself. The root says what
/// the full scales stand for: `data-full-sump-m3`, `data-full-pool-m3`, `data-full-jet-m`, `data-full-flow-m3-per-s`.
/// What moves has `data-move` and what its full scale is in pixels, `data-full`:
///
///     data-move   element  at a moment of the trace
///     sump        <rect>   share s = sump_m3 / full: height = s data-full, y = data-foot - height
///     pool        <rect>   share p = sqrt(slab_m3 / full): width = 2 p data-full, x = data-middle - p data-full
///     flow        <path>   share q = escaping / full, 1 at most: stroke-width = q data-full; q = 0: display="none"
///     jet         <g>      display="none" where jet_high_m is null; else its four <line>, l = jet_low_m / full and
///                          h = jet_high_m / full, in this order: from the foot to l (y2), from l (y1) to h (y2),
///                          a level stroke at l (y1 and y2), one at h; each y = data-foot - share data-full
///     dispenser   <g>      display="none" once it is down
///     tank-level  <line>   the liquid in the tank, below the opening; it stands
///
/// Only what the scene has is there.
[[nodiscard]] std::string draw_moving(const SpillScene& scene, const SpillFull& full);

}  // namespace forecourse::report::svg
