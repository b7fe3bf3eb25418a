#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "forecourse/network/piping_system.h"

namespace forecourse::network {

/// Where a hose stands in one of its group's systems.
struct HosePart {
  std::size_t system = 0;  ///< of `HoseGroup::systems`
  std::size_t hose = 0;    ///< of that system
};

/// A hose of the station, whole: a blended one draws on several systems.
struct GroupHose {
  std::string id;
  std::string dispenser;
  std::vector<HosePart> parts;
};

/// The hoses whose flows depend on each other: those of one system, or of the systems that blended hoses tie
/// together. A hose is none of them, and never open, if one of its products cannot be computed or has no running pump.
struct HoseGroup {
  std::string id;  ///< ids of the systems: "regular + premium"
  std::vector<const PipingSystem*> systems;
  std::vector<GroupHose> hoses;                 ///< in the order in which the systems list them
  std::vector<std::vector<std::size_t>> equal;  ///< hoses that are interchangeable; each hose once, in order

  [[nodiscard]] const HosePoint& point(const HosePart& part) const { return systems[part.system]->hoses[part.hose]; }
  [[nodiscard]] const Run& run(const HosePart& part) const {
    return systems[part.system]->runs[static_cast<std::size_t>(point(part).run)];
  }
  [[nodiscard]] bool is_blended() const { return systems.size() > 1; }
  /// True if opening one of its hoses can never raise the flow of another, nor a pressure: one system, pumps that do
  /// not change with the state, and no hose that lets liquid in.
  /// \source [rheinboldt_1970, M-functions and network flows]. See docs/theory/worst-states.md.
  [[nodiscard]] bool opening_never_raises() const;
};

/// The groups of a station, of the systems that can be computed and are fed. `network` must outlive them.
[[nodiscard]] std::vector<HoseGroup> hose_groups(const StationNetwork& network);

}  // namespace forecourse::network
