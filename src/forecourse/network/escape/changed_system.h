#pragma once

#include "forecourse/network/piping_system.h"

namespace forecourse::network {

/// The system as fuel runs through it by gravity: every pump stands, its own loss that entered for it, else none. No
/// pump lets fuel run back.
/// \pre the system has a graph
[[nodiscard]] PipingSystem standing_system(const PipingSystem& system);

/// Whether every pump's loss while it stands is entered.
[[nodiscard]] bool standing_loss_known(const PipingSystem& system);

/// The system with one more place, the last, inside a run: both parts of the run lead to it.
/// \param along share of the run's length from its `from` [1]
/// \pre the system has a graph
[[nodiscard]] PipingSystem split_system(const PipingSystem& system, std::size_t run, double along);

/// A part of a run's length.
[[nodiscard]] Element shortened(Element element, double share);

}  // namespace forecourse::network
