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
};

/// The same cut through island, slab and sump at each moment: line and riser with the shear groove, fuel in the sump,
/// the pool on the slab, the range of the jet's height over the broken end as a whisker, the level of the tank below.
/// Beside each other on a wide page, under each other on a narrow one. Not to scale.
[[nodiscard]] std::string draw(const SpillScene& scene);

}  // namespace forecourse::report::svg
